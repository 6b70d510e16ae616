"""The writer's hours: when there is time for the papers, and the free hours that follow."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass

from fairhand.model.plan import Free

DAY = 24 * 60
LONGEST, PAUSE = 90, 10
"""Minutes of the longest sitting and of the pause after it, where the writer says nothing (common practice)."""

Stretch = tuple[int, int]
"""From and to, in minutes after midnight; half-open. One that runs on past midnight ends above 1,440."""


@dataclass(frozen=True, slots=True)
class Hours:
    """When the writer sits down to the papers."""

    week: tuple[tuple[Stretch, ...], ...] = ((), (), (), (), (), (), ())
    """The stretches of each weekday, Monday first."""
    off: tuple[tuple[dt.date, dt.date], ...] = ()
    """Days on which there are none: first and last."""
    longest_minutes: int = LONGEST
    """The longest sitting that is wanted; 0 for no limit."""
    pause_minutes: int = PAUSE
    """What lies between two sittings of one stretch."""
    stated: bool = True
    """Whether the writer has said so, and they are not the ones assumed."""

    @property
    def minutes_a_week(self) -> int:
        """How much there is in a week without days off."""
        return sum(end - start for day in self.week for start, end in day)

    def is_off(self, day: dt.date) -> bool:
        """Whether nothing is done on that day."""
        return any(first <= day <= last for first, last in self.off)


EVENINGS = ((18 * 60, 20 * 60),)
MORNINGS = ((10 * 60, 14 * 60),)
ASSUMED = Hours(week=(*[EVENINGS] * 5, MORNINGS, MORNINGS), stated=False)
"""Eighteen hours a week, where the writer has not said. **Source**: none; it is said to be assumed."""
ASSUMED_WORDS = (
    "Your hours are not set down yet: two each evening from 18:00, and four from 10:00 on Saturdays and Sundays, are"
    " assumed."
)


def list_free_hours(hours: Hours, now: dt.datetime, until: dt.datetime) -> list[Free]:
    """The stretches at the desk from ``now`` to ``until``, in order; hours are the wall clock's, whatever the season.

    Args:
        hours: The writer's hours.
        now: The present hour, in the desk's zone.
        until: The end of what is asked for.

    >>> now = dt.datetime(2027, 2, 8, 18, 30, tzinfo=dt.UTC)
    >>> [free.start.hour for free in list_free_hours(ASSUMED, now, now + dt.timedelta(days=2))]
    [18, 18, 18]
    """
    zone = now.tzinfo or dt.UTC
    begin, end = now.astimezone(dt.UTC), until.astimezone(dt.UTC)
    found: list[Free] = []
    day, last = now.date() - dt.timedelta(1), until.astimezone(zone).date()
    while day <= last:
        for start, stop in () if hours.is_off(day) else hours.week[day.weekday()]:
            # A stretch that begins in the hour that the clock leaves out begins when that hour is over.
            first, past = max(begin, _moment(day, start, zone)), min(end, _moment(day, stop, zone))
            if found:
                first = max(first, found[-1].end.astimezone(dt.UTC))
            if first < past:
                found.append(Free(first.astimezone(zone), past.astimezone(zone)))
        day += dt.timedelta(1)
    return found


def _moment(day: dt.date, minute: int, zone: dt.tzinfo) -> dt.datetime:
    clock = dt.datetime.combine(day, dt.time()) + dt.timedelta(minutes=minute)
    return clock.replace(tzinfo=zone).astimezone(dt.UTC)
