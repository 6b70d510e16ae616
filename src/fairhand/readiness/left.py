"""What is left before the hour, as values that are told and kept; light enough to load at once."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from fairhand.language.counts import open_with, say_minutes
from fairhand.readiness.deadlines import say_span


@dataclass(frozen=True, slots=True)
class ToDo:
    """One thing that is still to be done."""

    says: str
    minutes: int
    """At the writer's own pace."""
    leaf: str
    """The page of the paper where it is done."""
    holds: tuple[str, ...] = ()
    """What is open in it, in words."""
    wait: str = ""
    """What must pass after it, in words: a night, a reader's days."""
    may_go: bool = False
    """Whether the paper can be handed in without it."""


@dataclass(frozen=True, slots=True)
class Left:
    """All that is left before the hour."""

    todos: tuple[ToDo, ...] = ()
    due: dt.datetime | None = None
    now: dt.datetime | None = None

    @property
    def minutes(self) -> int:
        """The time at the desk that it takes."""
        return sum(one.minutes for one in self.todos)

    def __str__(self) -> str:
        """It in one sentence, as it stands over the list.

        >>> hour = dt.datetime(2027, 2, 19, 16, tzinfo=dt.UTC)
        >>> str(Left((ToDo("read it", 20, "proof"),), hour, hour - dt.timedelta(hours=5)))
        'One thing is left: 20 minutes of work before Friday 19 February, 16:00, 5 hours from now.'
        """
        if not self.todos:
            return "Nothing is left to do."
        things = open_with(len(self.todos), "thing is left", "things are left, in this order")
        told = f"{things}: {say_minutes(self.minutes)} of work"
        if self.due is None:
            return f"{told}; no hour is known by which."
        by = f"{self.due:%A} {self.due.day} {self.due:%B}, {self.due:%H:%M}"
        if self.now is None:
            return f"{told} before {by}."
        if self.now >= self.due:
            return f"{told}; the hour has passed ({by})."
        return f"{told} before {by}, {say_span(self.due - self.now)} from now."


def tell_left(left: Left) -> dict[str, Any]:
    """What is left as plain values, without the present hour."""
    return {
        "due": left.due.isoformat() if left.due else None,
        "todos": [
            {
                "says": one.says,
                "minutes": one.minutes,
                "leaf": one.leaf,
                "holds": list(one.holds),
                "wait": one.wait,
                "may_go": one.may_go,
            }
            for one in left.todos
        ],
    }


def read_told(told: Mapping[str, Any], now: dt.datetime) -> Left:
    """What is left from its plain values, told at an hour.

    >>> left = Left((ToDo("read it", 20, "proof", ("settle the remarks",)),), dt.datetime(2027, 2, 19, tzinfo=dt.UTC))
    >>> read_told(tell_left(left), left.due).todos == left.todos
    True
    """
    due = dt.datetime.fromisoformat(told["due"]).astimezone(now.tzinfo) if told["due"] else None
    return Left(tuple(ToDo(**one | {"holds": tuple(one["holds"])}) for one in told["todos"]), due, now)
