"""The words of English that the build put together, each found without reading the whole list.

**Source**: the dictionaries of SCOWL, American and British, and counts from the Google Books Ngrams.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from importlib.resources import files
from typing import Literal

from fairhand.errors import FairhandError
from fairhand.language.sorted_lines import SortedLines

Country = Literal["US", "GB"]
"""Whose spelling."""
LETTERS: Mapping[Country, str] = {"US": "u", "GB": "g"}


@dataclass(frozen=True, slots=True)
class Lexeme:
    """One word of the list."""

    text: str
    countries: str
    """``u`` where American dictionaries have it, ``g`` where British ones do; neither for one that was only counted."""
    kinds: str
    """What it can be: *n*oun, *v*erb or *a*djective; a plural or third person *s*, a past *d*, an -in*g*, an *-ly*, a
    comparison *r* or *t*, a *-ness* ``p``; ``x`` for a word that is not to be offered."""
    weight: int
    """Ten times the logarithm of how often it was counted in some twenty billion words; 0 where it was not."""

    def is_spelled(self, country: Country) -> bool:
        """Whether that country's dictionary has it."""
        return LETTERS[country] in self.countries


def find_word(text: str) -> Lexeme | None:
    """The word exactly as written; None where the list does not have it.

    >>> find_word("colour").countries, find_word("affect").kinds, find_word("Colour")
    ('g', 'v', None)
    """
    return _find(text.replace("’", "'"))


@lru_cache(maxsize=16384)
def _find(text: str) -> Lexeme | None:
    found = _list("words.txt").find(text)
    return Lexeme(text, found[0], found[1], int(found[2])) if found else None


@lru_cache(maxsize=16384)
def weigh_pair(first: str, second: str) -> int:
    """Ten times the logarithm of how often two words in small letters were counted in a row; 0 where seldom or never.

    >>> weigh_pair("their", "own") > weigh_pair("there", "own")
    True
    """
    found = _list("pairs.txt").find(f"{first} {second}")
    return int(found[0]) if found else 0


@lru_cache(maxsize=1)
def spelled_words() -> tuple[str, ...]:
    """Every word that a dictionary has, of either country."""
    return tuple(re.findall(r"^([^\t\n]+)\t[gu]", _list("words.txt").text, re.MULTILINE))


@lru_cache(maxsize=1)
def spelled_sounds() -> tuple[str, ...]:
    """How each of ``spelled_words`` sounds, in the same order (``sounding.sound_of``)."""
    return tuple(re.findall(r"^[^\t\n]+\t[gu][^\n]*\t(.*)$", _list("words.txt").text, re.MULTILINE))


@lru_cache(maxsize=2)
def _list(name: str) -> SortedLines:
    try:
        return SortedLines((files("fairhand") / "built" / "words" / name).read_bytes())
    except OSError:
        message = "the words of English were not built with this installation; install Fairhand again"
        raise FairhandError(message) from None
