"""A place in a paragraph that cites, if the rest of the draft bears it out."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from fairhand.citing.mention import Mention
from fairhand.model.span import Span

Need = Literal["", "habit", "years", "work"]
"""What it takes for a sighting to be a citation: nothing more; that the draft cites by author and page elsewhere, or by
author and year; that the work meant is told by the draft as a whole."""


@dataclass(frozen=True, slots=True)
class Shape:
    """A paragraph as the manuscript has taken it apart; every place is counted from its start."""

    brackets: tuple[tuple[int, int, str], ...]
    """Start, end and kind of the brackets that stand outside quotations."""
    quotations: tuple[Span, ...]
    """Closed quotations."""
    sentences: tuple[Span, ...]
    in_quote: bool = False
    in_note: bool = False


@dataclass(frozen=True, slots=True)
class Sighting:
    """A mention, if the rest of the draft bears it out."""

    mention: Mention
    need: Need = ""
    known: bool = False
    """Whether a source answers to it."""


def sentence_around(sentences: Sequence[Span], span: Span) -> Span:
    """The sentence, or run of sentences, that ``span`` stands in; one that it opens is counted to the one before.

    >>> sentence_around((Span(0, 9), Span(10, 30)), Span(10, 14))
    Span(start=0, end=30)
    """
    first = max(0, bisect_right(sentences, span.start, key=_start) - 1)
    last = max(first, bisect_right(sentences, max(span.end - 1, span.start), key=_start) - 1)
    if not sentences or span.start >= sentences[last].end or span.end <= sentences[first].start:
        return span
    if first and sentences[first].start >= span.start:
        first -= 1
    return Span(min(sentences[first].start, span.start), max(sentences[last].end, span.end))


def _start(span: Span) -> int:
    return span.start
