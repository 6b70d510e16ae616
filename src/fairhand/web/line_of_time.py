"""The line of time: where on it the due hours stand, and how high their numbers, so that none covers another."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from fairhand.session.overview import InHand

Anchor = Literal["start", "middle", "end"]

ROW = 20
"""Height of one row of numbers, in pixels."""
APART = 6.0
"""The least distance between two numbers of one row, in per cent of the line."""
ROOM = 25.0
"""The same between two days that are written out, on a narrow screen."""


@dataclass(frozen=True, slots=True)
class Mark:
    """Something that stands on the line."""

    at: float
    """Its place, in per cent of the line from its beginning."""
    says: str
    top: int = 0
    """Where its stroke begins, in pixels from above."""

    @property
    def anchor(self) -> Anchor:
        """How its lettering hangs on it: within the line at both ends."""
        return "start" if self.at < 3 else "end" if self.at > 97 else "middle"


@dataclass(frozen=True, slots=True)
class Line:
    """The line as it is drawn."""

    said: str
    """The same in words."""
    marks: tuple[Mark, ...] = ()
    ticks: tuple[Mark, ...] = ()
    base: int = 0
    """The height of the line itself, in pixels from above."""

    @property
    def height(self) -> int:
        """Of the whole, in pixels."""
        return self.base + 30


def draw_line(papers: Sequence[InHand], now: dt.datetime) -> Line:
    """The due days of some papers on a line that begins today, or with the first that has passed.

    Args:
        papers: In the order of their numbers.
        now: The present hour.
    """
    dated = [(number, paper.on) for number, paper in enumerate(papers, 1) if paper.on is not None]
    if not dated:
        return Line("No paper has a date yet.")
    first = min(now.date(), *(day for _, day in dated))
    last = max(now.date() + dt.timedelta(1), *(day for _, day in dated))
    length = (last - first).days

    def place(day: dt.date) -> float:
        return round(100 * (day - first).days / length, 2)

    rows: list[float] = []
    levels = []
    for _, day in dated:
        at = place(day)
        level = next((n for n, taken in enumerate(rows) if at - taken >= APART), len(rows))
        rows[level : level + 1] = [at]
        levels.append(level)
    base = ROW * (len(rows) + 1)
    marks = tuple(
        Mark(place(day), str(number), base - ROW * level - 12)
        for (number, day), level in zip(dated, levels, strict=True)
    )
    said = "; ".join(f"{number} is due {say_day(day)}" for number, day in dated)
    return Line(f"From {say_day(first)} to {say_day(last)}: {said}.", marks, _ticks(first, last, now.date()), base)


def _ticks(first: dt.date, last: dt.date, today: dt.date) -> tuple[Mark, ...]:
    """Today, and the ends of the line that leave it room."""
    length = (last - first).days
    now = round(100 * (today - first).days / length, 2)
    ends = (Mark(at, say_day(day)) for at, day in ((0.0, first), (100.0, last)) if abs(at - now) >= ROOM)
    return tuple(sorted((Mark(now, "today"), *ends), key=lambda mark: mark.at))


def say_day(day: dt.date) -> str:
    """A day and its month.

    >>> say_day(dt.date(2027, 2, 19))
    '19 February'
    """
    return f"{day.day} {day:%B}"
