"""What lateness costs by a sheet's rule, with its working."""

from __future__ import annotations

import datetime as dt
import math
from collections.abc import Callable, Collection
from dataclasses import dataclass

from fairhand.model.late_rule import LateRule, LateUnit, Tier

POINTS_A_STEP = 10 / 3
"""A letter grade is ten points of a hundred wide, and has three steps. **Source**: common practice."""
LIKELY_MARK = 70.0
"""The mark, of 100, for which a cost is reckoned where none is named: an assumption, to be said where it is shown."""
UNSTATED = LateRule((Tier(10.0),), "percent of the total")
"""The rule assumed where a sheet states none: a tenth of the total a day. **Source**: common practice."""

_DAY = dt.timedelta(days=1)
_HOUR = dt.timedelta(hours=1)
_MINUTE = dt.timedelta(minutes=1)


@dataclass(frozen=True, slots=True)
class MarksLost:
    """What a paper loses by the hour at which it is handed in."""

    lost: float
    """In the points of the mark."""
    left: float
    late: int
    """How many hours, days or weeks it is late, by the rule's count."""
    refused: bool
    """Whether it is no longer accepted, or gets nothing."""
    working: str
    """How that was reckoned, in words."""


def marks_lost(
    rule: LateRule,
    due: dt.datetime,
    handed_in: dt.datetime,
    *,
    mark: float = LIKELY_MARK,
    total: float = 100.0,
    days_off: Collection[dt.date] = (),
) -> MarksLost:
    """What a paper handed in at an hour loses.

    Args:
        rule: The sheet's rule.
        due: The hour of the hand-in.
        handed_in: The hour at which it was, or would be, handed in.
        mark: What it would get on time, in points.
        total: What it could get at most, in points.
        days_off: Days beside Saturdays and Sundays that are no working days.

    >>> due = dt.datetime(2027, 3, 5, 15)  # a Friday
    >>> sheet = LateRule((Tier(5),), per="working day", refused_after=5, refused_in="working day")
    >>> marks_lost(sheet, due, dt.datetime(2027, 3, 9, 10), mark=60).working
    '2 working days late, 5 % of the mark each: 60 becomes 54'
    """
    clock = handed_in.astimezone(due.tzinfo) if due.tzinfo and handed_in.tzinfo else handed_in
    if clock <= due:
        return MarksLost(0.0, mark, 0, refused=False, working="Handed in on time: nothing is lost")
    if clock <= due + rule.grace_minutes * _MINUTE:
        return MarksLost(
            0.0, mark, 0, refused=False, working=f"Within the {rule.grace_minutes} minutes of grace: nothing is lost"
        )
    late = count_late(rule.per, due, clock, day_starts=rule.day_starts, days_off=days_off)
    if rule.refused_after is not None:
        counted = count_late(rule.refused_in, due, clock, day_starts=rule.day_starts, days_off=days_off)
        if counted > rule.refused_after:
            return MarksLost(mark, 0.0, late, refused=True, working=_tell_refusal(rule, counted, mark))
    left = max(min(mark, rule.floor), _left(rule, late, mark, total), 0.0)
    if rule.cap is not None:
        left = min(left, rule.cap)
    told = f"{_tell_units(late, rule.per)} late{_tell_tiers(rule, late)}"
    if rule.cap is not None and left == rule.cap < mark:
        told += f", at most {rule.cap:g} for a late paper"
    elif rule.floor and left == rule.floor < mark:
        told += f", but not below {rule.floor:g}"
    return MarksLost(mark - left, left, late, refused=False, working=f"{told}: {_tell(mark)} becomes {_tell(left)}")


def as_cost(
    rule: LateRule | None,
    due: dt.datetime,
    *,
    mark: float = LIKELY_MARK,
    total: float = 100.0,
    days_off: Collection[dt.date] = (),
) -> Callable[[dt.datetime], float]:
    """The share of the mark, 0 to 1, that a hand-in at an hour loses; it never falls as the hours pass.

    Args:
        rule: The sheet's rule; None where it states none, and `UNSTATED` is assumed.
        due: The hour of the hand-in.
        mark: What it would likely get on time, in points.
        total: What it could get at most, in points.
        days_off: Days beside Saturdays and Sundays that are no working days.

    >>> cost = as_cost(LateRule((Tier(10, to=1), Tier(5))), dt.datetime(2027, 3, 1, 17))
    >>> [round(cost(dt.datetime(2027, 3, day, 12)), 2) for day in (1, 2, 3, 4)]
    [0.0, 0.1, 0.15, 0.2]
    """
    reckoned = rule or UNSTATED

    def cost(handed_in: dt.datetime) -> float:
        return (
            marks_lost(reckoned, due, handed_in, mark=mark, total=total, days_off=days_off).lost / mark if mark else 0.0
        )

    return cost


def count_late(
    unit: LateUnit,
    due: dt.datetime,
    handed_in: dt.datetime,
    *,
    day_starts: dt.time | None = None,
    days_off: Collection[dt.date] = (),
) -> int:
    """How many units have begun between the hour of the hand-in and a later one.

    Days are counted by the clock on the wall, so that the change to summer time makes no paper later. On days that are
    no working days, working lateness stands still.
    """
    if handed_in <= due:
        return 0
    match unit:
        case "once":
            return 1
        case "hour":
            true = handed_in - due if due.tzinfo is None else handed_in.astimezone(dt.UTC) - due.astimezone(dt.UTC)
            return math.ceil(true / _HOUR)
        case "week":
            return math.ceil((handed_in - due) / (7 * _DAY))
    working = unit == "working day"
    if day_starts is not None:
        return _count_starts(due, handed_in, day_starts, days_off if working else None)
    if not working:
        return math.ceil((handed_in - due) / _DAY)
    return max(1, math.ceil(_working_time(due, handed_in, days_off) / _DAY))


def _count_starts(
    due: dt.datetime, handed_in: dt.datetime, starts: dt.time, days_off: Collection[dt.date] | None
) -> int:
    """The first day of lateness, and each that has started since; one that starts with the due hour is the first."""
    days = (handed_in.date() - due.date()).days
    begun = 1
    for number in range(min(days, 3660) + 1):
        start = dt.datetime.combine(due.date() + number * _DAY, starts, tzinfo=due.tzinfo)
        works = days_off is None or _works(start.date(), days_off)
        begun += works and due + _MINUTE < start <= handed_in
    return begun


def _works(day: dt.date, days_off: Collection[dt.date]) -> bool:
    return day.weekday() < 5 and day not in days_off


def _working_time(due: dt.datetime, handed_in: dt.datetime, days_off: Collection[dt.date]) -> dt.timedelta:
    """The time between two hours that falls on working days."""
    total = dt.timedelta()
    for number in range(min((handed_in.date() - due.date()).days, 3660) + 1):
        day = due.date() + number * _DAY
        if _works(day, days_off):
            midnight = dt.datetime.combine(day, dt.time(), tzinfo=due.tzinfo)
            total += min(handed_in, midnight + _DAY) - max(due, midnight)
    return total


def _left(rule: LateRule, late: int, mark: float, total: float) -> float:
    """What the tiers leave of the mark; a later tier never gives back what an earlier one took."""
    if rule.compound:
        left = mark
        for tier, count in _counts(rule, late):
            left *= max(0.0, 1 - tier.amount / 100) ** count
        return left
    worth = {"percent of the mark": mark / 100, "percent of the total": total / 100, "points": 1.0}.get(
        rule.unit, POINTS_A_STEP * total / 100
    )
    taken = 0.0
    for tier, count in _counts(rule, late):
        taken = max(taken, tier.amount) if tier.in_all else taken + tier.amount * count
    return mark - taken * worth


def _counts(rule: LateRule, late: int) -> list[tuple[Tier, int]]:
    """The tiers that a paper so late has reached, each with how many of its units it has used."""
    reached = []
    before = 0
    for tier in rule.tiers:
        upto = late if tier.to is None else min(late, tier.to)
        if upto > before:
            reached.append((tier, upto - before))
            before = upto
    return reached


def _tell(points: float) -> str:
    return f"{round(points, 1):g}"


def _tell_units(count: float, unit: LateUnit) -> str:
    """``2 working days``; of what is counted once nothing is to be told."""
    if unit == "once":
        return "Handed in"
    return f"{count:g} {unit}" if count == 1 else f"{count:g} {unit}s"


def _tell_amount(rule: LateRule, amount: float) -> str:
    match rule.unit:
        case "grade steps":
            grades = {1: "a third of a grade", 1.5: "half a grade", 2: "two thirds of a grade", 3: "a grade"}
            return grades.get(amount, f"{amount / 3:.3g} grades")
        case "points":
            return "1 point" if amount == 1 else f"{amount:g} points"
    return f"{amount:g} % of the {rule.unit.split()[-1]}"


def _tell_tiers(rule: LateRule, late: int) -> str:
    """``, 5 % of the mark each``; with several tiers how many units each took."""
    reached = _counts(rule, late)
    if rule.compound:
        return "".join(f", × {1 - tier.amount / 100:g} for each" for tier, _ in reached[:1])
    if len(rule.tiers) == 1 and reached and not reached[0][0].in_all:
        return f", {_tell_amount(rule, reached[0][0].amount)}{' each' if late > 1 else ''}"
    told = [
        f"{_tell_amount(rule, tier.amount)} in all"
        if tier.in_all
        else f"{_tell_amount(rule, tier.amount)}{f' for each of {count}' if count > 1 else ''}"
        for tier, count in reached
    ]
    if reached and reached[-1][0].in_all:
        told = told[-1:]
    return f", {' and '.join(told)}" if told else ""


def _tell_refusal(rule: LateRule, counted: int, mark: float) -> str:
    if not rule.refused_after:
        return f"Late work is not accepted: {_tell(mark)} becomes 0"
    return (
        f"{_tell_units(counted, rule.refused_in)} late, and nothing is accepted after"
        f" {_tell_units(rule.refused_after, rule.refused_in)}: {_tell(mark)} becomes 0"
    )
