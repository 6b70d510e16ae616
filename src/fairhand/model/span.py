"""A place in a text."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, order=True)
class Span:
    """A half-open interval of a text, in Unicode code points.

    >>> Span(2, 5).of("a fair hand")
    'fai'
    """

    start: int
    """First code point of the interval, counted from 0."""
    end: int
    """Code point after the last one; never less than ``start``."""

    def of(self, text: str) -> str:
        """The text that stands in the interval."""
        return text[self.start : self.end]

    def shifted(self, by: int) -> Span:
        """The same interval, ``by`` code points further on."""
        return Span(self.start + by, self.end + by)

    def contains(self, other: Span) -> bool:
        """Whether ``other`` lies wholly within this interval."""
        return self.start <= other.start and other.end <= self.end

    def overlaps(self, other: Span) -> bool:
        """Whether the two intervals share at least one code point."""
        return self.start < other.end and other.start < self.end

    def __len__(self) -> int:
        """Length in code points."""
        return self.end - self.start


def line_at(text: str, offset: int) -> int:
    r"""The line of ``text`` that holds code point ``offset``, counted from 1.

    >>> line_at("one\ntwo", 4)
    2
    """
    return text.count("\n", 0, offset) + 1
