"""The line of time: where on it the due hours stand, and how high their numbers, so that none covers another."""

from __future__ import annotations

import datetime as dt
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from fairhand.language.counts import count_of, say_minutes
from fairhand.model.plan import Sitting
from fairhand.session.schedule.overview import InHand

Anchor = Literal["start", "middle", "end"]

ROW = 20
"""Height of one row of numbers, in pixels."""
APART = 6.0
"""The least distance between two numbers of one row, in per cent of the line."""
MINUTES_A_PIXEL = 15
"""How long a stroke is that stands for a day's sittings."""
DEEPEST = 32
"""The longest of them, in pixels."""
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
    days: tuple[Mark, ...] = ()
    """A stroke below the line for each day with sittings, as long as they are; ``top`` is where it ends."""
    base: int = 0
    """The height of the line itself, in pixels from above."""

    @property
    def lettered(self) -> int:
        """The height of the days' names, below every stroke."""
        return max((day.top for day in self.days), default=self.base) + 22

    @property
    def height(self) -> int:
        """Of the whole, in pixels."""
        return self.lettered + 8


def draw_line(papers: Sequence[InHand], now: dt.datetime, sittings: Sequence[Sitting] = ()) -> Line:
    """The due days of some papers on a line that begins today, or with the first that has passed.

    Args:
        papers: In the order of their numbers.
        now: The present hour.
        sittings: What is planned; sittings on days beyond the line are left out.
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
    worked = Counter[dt.date]()
    for one in sittings:
        if first <= one.start.date() <= last:
            worked[one.start.date()] += round((one.end - one.start) / dt.timedelta(minutes=1))
    days = tuple(
        Mark(place(day), say_minutes(minutes), base + min(DEEPEST, max(3, minutes // MINUTES_A_PIXEL)))
        for day, minutes in sorted(worked.items())
    )
    said = "; ".join(f"{number} is due {say_day(day)}" for number, day in dated)
    planned = f" Work is planned on {count_of(len(days), 'day')}." if days else ""
    told = f"From {say_day(first)} to {say_day(last)}: {said}.{planned}"
    return Line(told, marks, _ticks(first, last, now.date()), days, base)


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
