"""Words found in a text again, though it was extracted otherwise: other line ends, hyphens, ligatures, blanks.

A place is *sure* where what stands around the words agrees far enough, and no other place agrees nearly as well.

**Source**: W3C Web Annotation Data Model (2017), section 4.2.4: of several places, the one whose surroundings agree.
The measures of agreement are our own, held against published drafts by ``tests/outside/test_remarks_found_again.py``.
"""

from __future__ import annotations

import re
import unicodedata
from array import array
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

from fairhand.language.folding import fold
from fairhand.model.span import Span

_LEFT_OUT = frozenset("-\u2010\u2011\u00ad\ufffe\u200b\ufeff")
"""Hyphens of every kind, and signs that take no room."""
ENOUGH = 24
"""Letters, the words' own included, that must agree for a place to be sure."""
AHEAD = 6
"""Letters by which the surest place must agree better than the next; and so many around words that are not long."""


@dataclass(frozen=True, slots=True)
class Place:
    """Where some words stand, and whether that is sure."""

    span: Span
    sure: bool


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
        agree = count_shared(around[0][::-1], left[::-1]) + count_shared(around[1], right)
        places.append((Span(whole.places[start], whole.places[end - 1] + 1), agree))
    return tuple(places)


def list_whole(text: str, words: str, before: str = "", after: str = "") -> tuple[tuple[Span, int], ...]:
    """The places of :func:`list_again` that begin and end within a word only where the words once did so too.

    >>> [span.start for span, _ in list_whole("The tides and the tide.", "tide")]
    [18]
    """
    found = list_again(text, words, before, after)
    return tuple(one for one in found if _keeps_words(text, one[0], before, after))


def find_surely(text: str, words: str, before: str = "", after: str = "") -> Place | None:
    """Where some words stand as whole words, by what stood around them; None where they do not stand there at all.

    >>> find_surely("The tide ran. The quay fell. The tide fell.", "The tide", "The quay fell. ", " fell.").span
    Span(start=29, end=37)
    """
    return pick_surest(list_whole(text, words, before, after), words, before + after)


def pick_surest(places: Sequence[tuple[Span, int]], words: str, around: str, enough: int = ENOUGH) -> Place | None:
    """Of some places the one around which most agrees, and whether that is enough, and more than around any other.

    Args:
        places: The places, each with how many letters around it agree.
        words: The words.
        around: All that once stood around them; where that was little, no more can agree.
        enough: How many letters must agree, those of the words included.
    """
    if not places:
        return None
    span, best = max(places, key=lambda place: place[1])
    ahead = best - max((agree for other, agree in places if other != span), default=best - AHEAD)
    letters, room = (sum(not letter.isspace() for letter in said) for said in (words, around))
    known = letters >= ENOUGH or best >= min(AHEAD, room)  # short words are known by what stands around them
    holds = letters + best >= min(enough, letters + room)
    return Place(span, sure=known and holds and ahead >= min(AHEAD, room or AHEAD))


def count_shared(one: str, other: str) -> int:
    """How many letters two texts begin alike.

    >>> count_shared("harbour", "harvest")
    3
    """
    return next((n for n, (a, b) in enumerate(zip(one, other, strict=False)) if a != b), min(len(one), len(other)))


def _keeps_words(text: str, span: Span, before: str, after: str) -> bool:
    """Whether a place begins and ends within a word only where the words once did so too."""
    starts_within = span.start > 0 and text[span.start - 1].isalnum() and text[span.start].isalnum()
    ends_within = span.end < len(text) and text[span.end].isalnum() and text[span.end - 1].isalnum()
    return (not starts_within or before[-1:].isalnum()) and (not ends_within or after[:1].isalnum())
