"""Deadlines against the present hour, and the answer that follows from every state; light enough to load at once."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping, Sequence
from typing import Any, Literal

from fairhand.language.counts import count_of
from fairhand.model.finding import Weight
from fairhand.readiness.judgement import CONFIRM, Judgement, State

Answer = Literal["ready", "not ready", "ask"]

END_OF_DAY = dt.time(23, 59)
"""The hour taken where the sheet names none; it is said."""


def due_hour(values: Mapping[str, object], zone: dt.tzinfo | None) -> dt.datetime | None:
    """The hour that a due requirement's values name, the day's end where they name none; None where that is no date.

    >>> due_hour({"on": "2027-02-19"}, None), due_hour({"on": "soon"}, None)
    (datetime.datetime(2027, 2, 19, 23, 59), None)
    """
    at = values.get("at")
    try:
        hour = dt.time.fromisoformat(at) if isinstance(at, str) else END_OF_DAY
        return dt.datetime.combine(dt.date.fromisoformat(str(values.get("on"))), hour, tzinfo=zone)
    except ValueError:
        return None


def judge_hour(values: Mapping[str, object], now: dt.datetime | None) -> Judgement:
    """A due hour, as the requirement's values have it, against ``now``.

    Of a milestone that has passed only the writer can say whether it was kept.
    """
    what = str(values.get("what") or "final").replace("-", " ")
    hour = due_hour(values, now.tzinfo if now else None)
    if hour is None:
        return Judgement(
            "ask", None, "The sheet names no date that could be read. Look it up, and answer with the date."
        )
    named = f"{hour:%A} {hour.day} {hour:%B %Y}, {hour:%H:%M}"
    if not isinstance(values.get("at"), str):
        named += " (the sheet names no hour: the day's end is taken)"
    if now is None:
        return Judgement("met", named, f"Due {named}.")
    left = hour - now
    if left >= dt.timedelta():
        return Judgement("met", named, f"Due {named}: {say_span(left)} from now.")
    if what != "final":
        return Judgement("ask", named, f"The {what} was due {named}. Was it handed in? {CONFIRM}")
    return Judgement(
        "ask", named, f"It was due {named}: {say_span(-left)} ago. If another hour was agreed, answer with it."
    )


def say_span(span: dt.timedelta) -> str:
    """A span of time in its two largest units.

    >>> say_span(dt.timedelta(days=3, hours=4, minutes=9))
    '3 days 4 hours'
    """
    minutes = int(span.total_seconds() // 60)
    days, hours, rest = minutes // 1440, minutes // 60 % 24, minutes % 60
    if days:
        return count_of(days, "day") + (f" {count_of(hours, 'hour')}" if hours else "")
    if hours:
        return count_of(hours, "hour") + (f" {count_of(rest, 'minute')}" if rest else "")
    return count_of(rest, "minute")


def sum_up(binding: Sequence[State], weights: Sequence[Weight], *, has_draft: bool) -> Answer:
    """The answer that follows from the states of what the sheet demands and the weights of what was found.

    >>> sum_up(["met", "ask"], ["query"], has_draft=True)
    'ask'
    """
    if not has_draft or "unmet" in binding or "must" in weights:
        return "not ready"
    return "ask" if "ask" in binding else "ready"


def at_this_hour(told: dict[str, Any], now: dt.datetime | None) -> dict[str, Any]:
    """A verdict that was kept, with its deadlines judged against the present hour again."""
    for requirement in told["requirements"]:
        if requirement["kind"] == "due" and requirement["id"] not in told["answered"]:
            judgement = judge_hour(requirement, now)
            requirement |= {"state": judgement.state, "measured": judgement.measured, "why": judgement.why}
    binding = [r["state"] for r in told["requirements"] if r["force"] == "must"]
    told["verdict"] = sum_up(binding, [f["weight"] for f in told["findings"]], has_draft=told["has_draft"])
    return told
