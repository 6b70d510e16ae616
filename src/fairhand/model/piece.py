"""A piece of a source as it is searched: a page, or a part of a long one."""

from __future__ import annotations

from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True)
class Piece:
    """One piece."""

    source: str
    """The entry's id."""
    page: int
    """Which of the source's pages it is on, from 0."""
    label: str
    """That page's label; empty where there are no pages."""
    start: int
    """Where in the page's text it begins."""
    text: str
    """Its words as they stand there."""
    title: str = ""
    """The source's title."""
    number: int = field(default=0, compare=False)
    """Its number in the index; 0 where it is in none."""
