"""A source parted into the pieces that are searched: its pages, long ones (a web page, a chapter) in parts."""

from __future__ import annotations

import re
from collections.abc import Iterator

from fairhand.model.piece import Piece
from fairhand.model.source import SourceText

LONGEST = 4000
"""Code points of a piece: somewhat more than a printed page."""
_BREAKS = (re.compile(r"\n\s*\n"), re.compile(r"(?<=[.!?])\s"), re.compile(r"\s"))
"""Where a long page may be parted, the best first: between paragraphs, sentences, words."""


def part_source(source: SourceText, title: str = "") -> Iterator[Piece]:
    """The pieces of a source in order; pages without a word have none.

    >>> from fairhand.model.source import Page
    >>> text = SourceText("quay", (Page("7", "The quay."), Page("8", " ")), paged=True)
    >>> [(piece.label, piece.text) for piece in part_source(text)]
    [('7', 'The quay.')]
    """
    for number, page in enumerate(source.pages):
        label = (page.label or "") if source.paged else ""
        start = 0
        while start < len(page.text):
            end = _end_of_piece(page.text, start)
            if page.text[start:end].strip():
                yield Piece(source.id, number, label, start, page.text[start:end], title)
            start = end


def _end_of_piece(text: str, start: int) -> int:
    if len(text) - start <= LONGEST:
        return len(text)
    half = start + LONGEST // 2
    for pattern in _BREAKS:
        found = None
        for found in pattern.finditer(text, half, start + LONGEST):  # noqa: B007 - the last one is wanted
            pass
        if found is not None:
            return found.end()
    return start + LONGEST
