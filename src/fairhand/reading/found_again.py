"""Words found in a text again, though it was extracted otherwise: other line ends, hyphens, ligatures, blanks.

**Source**: W3C Web Annotation Data Model (2017), section 4.2.4: of several places, the one whose surroundings agree.
"""

from __future__ import annotations

import re
import unicodedata
from array import array
from dataclasses import dataclass
from functools import lru_cache

from fairhand.language.folding import fold
from fairhand.model.span import Span

_LEFT_OUT = frozenset("-\u2010\u2011\u00ad\ufffe\u200b\ufeff")
"""Hyphens of every kind, and signs that take no room."""


@dataclass(frozen=True, slots=True)
class _Squeezed:
    """A text without blanks, hyphens and case."""

    text: str
    places: array[int]
    """Where each of its letters stands in the text itself."""


@lru_cache(maxsize=256)
def _squeeze(text: str) -> _Squeezed:
    letters: list[str] = []
    places = array("L")
    for place, letter in enumerate(text):
        if letter.isspace() or letter in _LEFT_OUT:
            continue
        plain = fold(letter if letter.isascii() else unicodedata.normalize("NFKC", letter))
        letters.append(plain)
        places.extend([place] * len(plain))
    return _Squeezed("".join(letters), places)


def find_again(text: str, words: str, before: str = "", after: str = "") -> Span | None:
    r"""Where some words stand in a text, whatever parts its lines; of several places, where they stood before.

    Args:
        text: The text.
        words: The words.
        before: What stood before them.
        after: What stood after them.

    >>> page = "The moor-\nings were let. The moorings were sold."
    >>> find_again(page, "moorings were").of(page), find_again(page, "the moorings were", after=" sold").start
    ('moor-\nings were', 25)
    """
    places = list_again(text, words, before, after)
    return max(places, key=lambda place: place[1])[0] if places else None


def list_again(text: str, words: str, before: str = "", after: str = "") -> tuple[tuple[Span, int], ...]:
    """Every place where some words stand in a text, each with how many letters around it agree, in order.

    >>> list_again("Tide in, tide out.", "tide", after=" out")
    ((Span(start=0, end=4), 0), (Span(start=9, end=13), 3))
    """
    whole, wanted = _squeeze(text), _squeeze(words).text
    if not wanted:
        return ()
    left, right = _squeeze(before).text, _squeeze(after).text
    places = []
    for found in re.finditer(f"(?={re.escape(wanted)})", whole.text):
        start = found.start()
        end = start + len(wanted)
        around = whole.text[max(0, start - len(left)) : start], whole.text[end : end + len(right)]
        agree = _shared(around[0][::-1], left[::-1]) + _shared(around[1], right)
        places.append((Span(whole.places[start], whole.places[end - 1] + 1), agree))
    return tuple(places)


def _shared(one: str, other: str) -> int:
    """How many letters two texts begin alike."""
    return next((n for n, (a, b) in enumerate(zip(one, other, strict=False)) if a != b), min(len(one), len(other)))
