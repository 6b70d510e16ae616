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
    whole, wanted = _squeeze(text), _squeeze(words).text
    if not wanted:
        return None
    left, right = _squeeze(before).text, _squeeze(after).text
    best: tuple[int, int] | None = None
    for found in re.finditer(f"(?={re.escape(wanted)})", whole.text):
        start = found.start()
        end = start + len(wanted)
        around = whole.text[max(0, start - len(left)) : start], whole.text[end : end + len(right)]
        agree = _shared(around[0][::-1], left[::-1]) + _shared(around[1], right)
        if best is None or agree > best[0]:
            best = agree, start
    if best is None:
        return None
    start = best[1]
    return Span(whole.places[start], whole.places[start + len(wanted) - 1] + 1)


def _shared(one: str, other: str) -> int:
    """How many letters two texts begin alike."""
    return next((n for n, (a, b) in enumerate(zip(one, other, strict=False)) if a != b), min(len(one), len(other)))
