"""Running text that was lifted out of its lines, and the way back to its places in the draft."""

from __future__ import annotations

from bisect import bisect_right
from dataclasses import dataclass

from fairhand.model.span import Span


@dataclass(frozen=True, slots=True)
class Passage:
    """The text of one heading, paragraph or cell without its block's markers, lines joined by line feeds.

    >>> Passage.of_lines([(2, "one"), (8, "two")]).span(4, 7)
    Span(start=8, end=11)
    """

    text: str
    """What stands there, block markers gone."""
    starts: tuple[int, ...]
    """Where each piece begins in ``text``, from 0."""
    places: tuple[int, ...]
    """Where each piece begins in the draft."""

    @classmethod
    def of_lines(cls, lines: list[tuple[int, str]]) -> Passage:
        """The passage made of ``lines``, each with its offset in the draft; pieces that run on unbroken are one."""
        starts: list[int] = []
        places: list[int] = []
        at = 0
        for place, line in lines:
            if not places or place - at != places[-1] - starts[-1]:
                starts.append(at)
                places.append(place)
            at += len(line) + 1
        return cls("\n".join(line for _, line in lines), tuple(starts), tuple(places))

    def place(self, index: int) -> int:
        """The draft offset of the character at ``index``."""
        piece = bisect_right(self.starts, index) - 1
        return self.places[piece] + index - self.starts[piece]

    def index(self, place: int) -> int:
        """The character of ``text`` at a place of the draft; for a place between two lines, the later line's first."""
        piece = bisect_right(self.places, place) - 1
        if piece < 0:
            return 0
        stop = self.starts[piece + 1] if piece + 1 < len(self.starts) else len(self.text)
        return min(self.starts[piece] + place - self.places[piece], stop)

    def span(self, start: int, end: int) -> Span:
        """The draft's interval for the half-open interval of ``text``."""
        first = self.place(start)
        return Span(first, max(first, self.place(end - 1) + 1) if end > start else first)

    @property
    def whole(self) -> Span:
        """The draft's interval from the first to the last character."""
        return self.span(0, len(self.text))
