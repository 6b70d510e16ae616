"""When the paper is due, and how long that is from now."""

from __future__ import annotations

import datetime as dt

from fairhand.model.requirement import Requirement
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.judgement import CONFIRM, Judgement
from fairhand.readiness.naming import count_of

END_OF_DAY = dt.time(23, 59)
"""The hour taken where the sheet names none; it is said."""


def judge(requirement: Requirement, analysis: Analysis) -> Judgement:
    """The due hour against the present one; of a milestone that has passed only the writer can say whether it was kept."""
    on, at = requirement.values.get("on"), requirement.values.get("at")
    what = str(requirement.values.get("what") or "final").replace("-", " ")
    if not isinstance(on, str):
        return Judgement("ask", None, "The sheet names no date that could be read. Look it up, and answer with the date.")
    hour = dt.time.fromisoformat(at) if isinstance(at, str) else END_OF_DAY
    day = dt.date.fromisoformat(on)
    named = f"{day:%A} {day.day} {day:%B %Y}, {hour:%H:%M}"
    if not isinstance(at, str):
        named += " (the sheet names no hour: the day's end is taken)"
    now = analysis.paper.now
    if now is None:
        return Judgement("met", named, f"Due {named}.")
    left = dt.datetime.combine(day, hour, tzinfo=now.tzinfo) - now
    if left >= dt.timedelta():
        return Judgement("met", named, f"Due {named}: {say_span(left)} from now.")
    if what != "final":
        return Judgement("ask", named, f"The {what} was due {named}. Was it handed in? {CONFIRM}")
    return Judgement("ask", named, f"It was due {named}: {say_span(-left)} ago. If another hour was agreed, answer with it.")


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
