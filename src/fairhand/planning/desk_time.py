"""Time at the desk: the free hours laid end to end, and the clock's hour of each minute in them."""

from __future__ import annotations

import datetime as dt
from bisect import bisect_left, bisect_right
from collections.abc import Iterable
from dataclasses import dataclass

from fairhand.model.plan import Free


@dataclass(frozen=True, slots=True)
class DeskTime:
    """The sessions at the desk, by the clock and counted through; all in whole minutes."""

    now: int
    """The present hour, in minutes of the clock since 1970."""
    starts: tuple[int, ...]
    """When each session begins, by the clock."""
    ends: tuple[int, ...]
    """When each ends; none overlaps the next."""
    held: tuple[int, ...]
    """How many minutes at the desk there are up to the end of each session."""
    zone: dt.tzinfo | None
    """The zone in which hours are told; None where the writer's hours name none."""

    @property
    def total(self) -> int:
        """All minutes at the desk."""
        return self.held[-1] if self.held else 0

    @property
    def last(self) -> int:
        """The clock's minute at which the free hours end."""
        return self.ends[-1] if self.ends else self.now

    def desk_minute(self, clock: int) -> int:
        """How many minutes at the desk have passed at a minute of the clock."""
        number = bisect_right(self.ends, clock)
        if number == len(self.ends):
            return self.total
        length = self.ends[number] - self.starts[number]
        return self.held[number] - length + max(0, clock - self.starts[number])

    def clock_minute(self, desk: int) -> int:
        """The minute of the clock at which so many minutes at the desk have just passed.

        Before the first and after the last it goes on at the pace of the whole, for hours that only order steps.
        """
        if not 0 < desk <= self.total:
            over = desk if desk <= 0 else desk - self.total
            pace = (self.last - self.now) / self.total if self.total else 1.0
            return (self.now if desk <= 0 else self.last) + round(over * pace)
        number = bisect_left(self.held, desk)
        return self.ends[number] - (self.held[number] - desk)

    def hour(self, clock: int) -> dt.datetime:
        """A minute of the clock as an hour of the day."""
        hour = dt.datetime.fromtimestamp(clock * 60, dt.UTC)
        return hour.replace(tzinfo=None) if self.zone is None else hour.astimezone(self.zone)


def clock_minutes(hour: dt.datetime, *, up: bool = False) -> int:
    """An hour in whole minutes since 1970, rounded down or up; an hour without a zone counts as one of UTC.

    >>> clock_minutes(dt.datetime(1970, 1, 1, 1, 0, 30)), clock_minutes(dt.datetime(1970, 1, 1, 1, 0, 30), up=True)
    (60, 61)
    """
    since = hour.replace(tzinfo=dt.UTC) if hour.tzinfo is None else hour
    seconds = since - dt.datetime(1970, 1, 1, tzinfo=dt.UTC)
    return -(-seconds // dt.timedelta(minutes=1)) if up else seconds // dt.timedelta(minutes=1)


def count_desk_time(
    free: Iterable[Free], now: dt.datetime, longest_minutes: int = 0, pause_minutes: int = 0
) -> DeskTime:
    """The free hours from now on, parted into sessions no longer than is wanted.

    Args:
        free: in any order; where two overlap, the time counts once.
        now: nothing lies before it.
        longest_minutes: no session is longer; 0 for no limit.
        pause_minutes: what is kept free between two sessions that are parted so.

    >>> day = dt.datetime(2031, 3, 3)
    >>> desk = count_desk_time([Free(day.replace(hour=9), day.replace(hour=13))], day, 90, 30)
    >>> [desk.hour(start).hour for start in desk.starts], desk.held
    ([9, 11], (90, 180))
    """
    present = clock_minutes(now, up=True)
    starts: list[int] = []
    ends: list[int] = []
    held: list[int] = []
    past = present
    total = 0
    for begin, close in sorted((clock_minutes(one.start, up=True), clock_minutes(one.end)) for one in free):
        at = max(begin, past)
        while at < close:
            until = min(close, at + longest_minutes) if longest_minutes > 0 else close
            total += until - at
            starts.append(at)
            ends.append(until)
            held.append(total)
            past = until
            at = until + max(0, pause_minutes)
    return DeskTime(present, tuple(starts), tuple(ends), tuple(held), now.tzinfo)
