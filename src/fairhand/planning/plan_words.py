"""The plan in words: what to do now, when the next sitting is, and what does not fit."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass

from fairhand.language.counts import say_minutes
from fairhand.model.plan import Sitting, WayOut
from fairhand.planning.desk_plan import DeskPlan, Late
from fairhand.planning.hours import ASSUMED_WORDS, Hours

NO_HOURS = "There are no hours to work in: every day is off, or none is set down."
NOTHING_LEFT = "Nothing is left to do on any paper."
NO_PAPER = "No paper is in hand here: begin one from its assignment sheet."


@dataclass(frozen=True, slots=True)
class Now:
    """What to do now."""

    does: str
    """The step, in a few words; or that there is none."""
    step: str = ""
    """Its id; empty where there is nothing to do."""
    paper: str = ""
    """The folder of its paper."""
    title: str = ""
    lasts: str = ""
    """For how long."""
    why: str = ""
    when: str = ""
    """When the plan has it: ``until 19:30``, ``today at 18:00``, ``on Tuesday 9 February at 18:00``."""

    def __str__(self) -> str:
        """One line, for the terminal.

        >>> str(Now("write the draft", "a/draft", "a", "Tides", "45 minutes", "Half is unwritten.", "until 19:30"))
        '“Tides”: write the draft, for 45 minutes, until 19:30. Half is unwritten.'
        """
        if not self.step:
            return self.does
        return f"“{self.title}”: {self.does}, for {self.lasts}, {self.when}. {self.why}".strip()


def say_now(made: DeskPlan) -> Now:
    """What to do now, for how long, and why."""
    first = made.first
    if first is None:
        return Now(NO_HOURS if made.steps else NOTHING_LEFT if made.titles else NO_PAPER)
    step = made.steps[first.step]
    began = max(first.start, made.now)
    minutes = round((first.end.astimezone(dt.UTC) - began.astimezone(dt.UTC)) / dt.timedelta(minutes=1))
    return Now(
        does=step.name,
        step=step.id,
        paper=step.id.partition("/")[0],
        title=made.title_of(step.id),
        lasts=say_minutes(minutes),
        why=step.why,
        when=say_when(first, made.now),
    )


def say_when(sitting: Sitting, now: dt.datetime) -> str:
    """When a sitting is, as seen from an hour.

    >>> now = dt.datetime(2027, 2, 8, 12, tzinfo=dt.UTC)
    >>> say_when(Sitting("a/b", now + dt.timedelta(hours=6), now + dt.timedelta(hours=7)), now)
    'today at 18:00'
    """
    if sitting.start <= now:
        return f"until {sitting.end:%H:%M}"
    days = (sitting.start.date() - now.date()).days
    named = {0: "today", 1: "tomorrow"}.get(days, f"on {say_day(sitting.start.date())}")
    return f"{named} at {sitting.start:%H:%M}"


def say_day(day: dt.date) -> str:
    """A day with its weekday.

    >>> say_day(dt.date(2027, 2, 9))
    'Tuesday 9 February'
    """
    return f"{day:%A} {day.day} {day:%B}"


def say_hour(hour: dt.datetime) -> str:
    """An hour with its day.

    >>> say_hour(dt.datetime(2027, 2, 19, 16, tzinfo=dt.UTC))
    'Friday 19 February, 16:00'
    """
    return f"{say_day(hour.date())}, {hour:%H:%M}"


def say_late(one: Late) -> str:
    """What will not be ready, by how much, and what that costs."""
    if one.ready is None:
        return f"“{one.title}”, due {say_hour(one.due)}, does not fit into your hours."
    told = f"“{one.title}” is due {say_hour(one.due)}, and will be ready {say_hour(one.ready)}."
    return f"{told} {one.working}." if one.working else told


def say_short(minutes: int) -> str:
    """How much time is missing; nothing where it is not time but an order or a wait that does not fit.

    >>> say_short(95)
    'At least 1 hour 35 minutes more are needed before the due hours.'
    """
    return f"At least {say_minutes(minutes)} more are needed before the due hours." if minutes else ""


def say_way(way: WayOut) -> str:
    """A way out, with its price and the hour by which it must be taken."""
    by = f", by {say_hour(way.by)}" if way.by else ""
    return f"{way.does}{by}: {way.price}."


def say_pauses(hours: Hours) -> str:
    """How long sittings are parted.

    >>> say_pauses(Hours(longest_minutes=90, pause_minutes=10))
    'After 90 minutes a pause of 10 is reckoned.'
    """
    if not hours.longest_minutes or not hours.pause_minutes:
        return ""
    return f"After {hours.longest_minutes} minutes a pause of {hours.pause_minutes} is reckoned."


def say_grounds(made: DeskPlan) -> str:
    """What the plan rests on: the pace, the hours where they are assumed, and the pauses."""
    return " ".join(filter(None, (str(made.pace), "" if made.hours.stated else ASSUMED_WORDS, say_pauses(made.hours))))


def say_passed(title: str, due: dt.datetime) -> str:
    """The question whether a paper whose hour has passed was handed in."""
    return f"“{title}” was due {say_hour(due)}. Was it handed in?"
