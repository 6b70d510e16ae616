"""What lateness costs. Rules and figures: read on the pages of the bodies named."""

from __future__ import annotations

import datetime as dt
from itertools import pairwise
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.model.late_rule import LateRule, LateUnit, LossUnit, Tier
from fairhand.planning.lateness import UNSTATED, as_cost, count_late, marks_lost

MONDAY = dt.datetime(2027, 3, 1, 15, tzinfo=dt.UTC)
FRIDAY = dt.datetime(2027, 3, 5, 15, tzinfo=dt.UTC)
DAY = dt.timedelta(days=1)


def _left(rule: LateRule, mark: float, days: range, due: dt.datetime = MONDAY, total: float = 100) -> list[float]:
    """What is left of a mark when the paper is handed in so many days after the due hour, to the minute."""
    return [round(marks_lost(rule, due, due + n * DAY, mark=mark, total=total).left, 2) for n in days]


def test_five_percent_of_the_mark_a_working_day() -> None:
    """Sheffield: 60 → 57, 54, 51, 48, 45, then zero; a weekend between costs nothing."""
    rule = LateRule((Tier(5),), per="working day", refused_after=5, refused_in="working day")
    assert _left(rule, 60, range(5)) == [60, 57, 54, 51, 48]
    assert _left(rule, 60, range(5, 9)) == [45, 45, 45, 0]  # Saturday, Sunday and Monday 15:00 end the fifth
    assert marks_lost(rule, FRIDAY, FRIDAY + 3 * DAY, mark=60).left == 57
    assert marks_lost(rule, MONDAY, MONDAY + 8 * DAY, mark=60).working == (
        "6 working days late, and nothing is accepted after 5 working days: 60 becomes 0"
    )


def test_nine_tenths_to_half_and_then_nothing() -> None:
    """Southampton: × 0.9, 0.8, 0.7, 0.6, 0.5, then zero."""
    rule = LateRule((Tier(10),), refused_after=5)
    assert _left(rule, 50, range(7)) == [50, 45, 40, 35, 30, 25, 0]


def test_points_a_working_day() -> None:
    """Warwick: 5 marks a working day: 65 → 60 → 55."""
    rule = LateRule((Tier(5),), "points", "working day")
    assert _left(rule, 65, range(3)) == [65, 60, 55]


def test_percent_of_the_total_a_calendar_day() -> None:
    """Griffith: 5 % of the item's total a calendar day, zero after 7: of 40, 30 → 28 → 26 … 16 → 0."""
    rule = LateRule((Tier(5),), "percent of the total", refused_after=7)
    assert _left(rule, 30, range(9), FRIDAY, total=40) == [30, 28, 26, 24, 22, 20, 18, 16, 0]


def test_half_a_grade_a_day() -> None:
    """Half a letter is a step and a half: five points of a hundred, where a letter is ten points wide."""
    rule = LateRule((Tier(1.5),), "grade steps")
    assert _left(rule, 85, range(3)) == [85, 80, 75]
    assert marks_lost(rule, MONDAY, MONDAY + 2 * DAY, mark=85).working == (
        "2 days late, half a grade each: 85 becomes 75"
    )


@pytest.mark.parametrize("due", ["12:59", "13:00"])
def test_a_day_late_may_run_from_one_hour_to_the_next(due: str) -> None:
    """A day late runs from 1:00 pm to 12:59 pm, whether the due hour is named as one or the other."""
    hour = dt.datetime.combine(MONDAY.date(), dt.time.fromisoformat(due), tzinfo=dt.UTC)
    at = [hour.replace(hour=13, minute=30), (hour + DAY).replace(hour=12, minute=59), (hour + DAY).replace(hour=13)]
    assert [count_late("day", hour, when, day_starts=dt.time(13)) for when in at] == [1, 1, 2]


def test_a_day_may_begin_at_midnight() -> None:
    """Where each calendar day counts, the evening after the hour is the first and the next morning the second."""
    due = dt.datetime(2027, 3, 1, 17, tzinfo=dt.UTC)
    at = [due.replace(hour=20), due + dt.timedelta(hours=8)]
    assert [count_late("day", due, when, day_starts=dt.time(0)) for when in at] == [1, 2]
    assert [count_late("day", due, when) for when in at] == [1, 1]


def test_tiers_follow_each_other() -> None:
    """10 % for the first day and 5 % for each after; or so much altogether up to a day, and so much up to another."""
    assert _left(LateRule((Tier(10, to=1), Tier(5))), 80, range(4)) == [80, 72, 68, 64]
    bands = LateRule((Tier(10, to=3, in_all=True), Tier(25, to=7, in_all=True)), "points", refused_after=7)
    assert _left(bands, 70, range(9)) == [70, 60, 60, 60, 45, 45, 45, 45, 0]
    assert marks_lost(LateRule((Tier(10, to=1), Tier(5))), MONDAY, MONDAY + 3 * DAY, mark=60).working == (
        "3 days late, 10 % of the mark and 5 % of the mark for each of 2: 60 becomes 48"
    )


def test_a_share_may_be_taken_of_what_is_left() -> None:
    """× 0.9 for each day: 60 → 54 → 48.6."""
    rule = LateRule((Tier(10),), compound=True)
    assert _left(rule, 60, range(3)) == [60, 54, 48.6]
    assert "× 0.9 for each" in marks_lost(rule, MONDAY, MONDAY + DAY, mark=60).working


def test_grace_floor_cap_and_refusal() -> None:
    """Minutes of grace cost nothing; a pass mark may be kept, a late paper capped, and late work not taken at all."""
    minutes = dt.timedelta(minutes=1)
    grace = LateRule((Tier(5),), grace_minutes=15)
    assert [marks_lost(grace, MONDAY, MONDAY + n * minutes, mark=60).left for n in (15, 16)] == [60, 57]
    assert _left(LateRule((Tier(10),), "points", floor=40), 65, range(5)) == [65, 55, 45, 40, 40]
    assert _left(LateRule((Tier(10),), "points", floor=40), 35, range(2)) == [35, 35]
    assert _left(LateRule(cap=40), 65, range(2)) == [65, 40]
    none = marks_lost(LateRule(refused_after=0), MONDAY, MONDAY + minutes, mark=60)
    assert (none.left, none.refused, none.working) == (0, True, "Late work is not accepted: 60 becomes 0")


def test_hours_weeks_and_once() -> None:
    """Each unit that has begun counts whole; what is lost once is lost whatever the time."""
    minutes = dt.timedelta(minutes=1)
    assert [count_late("hour", MONDAY, MONDAY + n * minutes) for n in (0, 1, 60, 61)] == [0, 1, 1, 2]
    assert [count_late("week", MONDAY, MONDAY + n * DAY) for n in (1, 7, 8)] == [1, 1, 2]
    assert _left(LateRule((Tier(10),), "points", "once"), 60, range(3)) == [60, 50, 50]


def test_days_off_are_no_working_days() -> None:
    """A holiday on the Monday makes the hand-in on Tuesday one working day late."""
    assert count_late("working day", FRIDAY, FRIDAY + 4 * DAY, days_off={dt.date(2027, 3, 8)}) == 1
    assert count_late("working day", FRIDAY, FRIDAY + 4 * DAY) == 2


def test_summer_time_makes_no_paper_later() -> None:
    """The night of the change has 23 hours, but a day late is a day by the clock; hours are true hours."""
    london = ZoneInfo("Europe/London")
    due = dt.datetime(2027, 3, 27, 12, tzinfo=london)
    after = dt.datetime(2027, 3, 28, 12, tzinfo=london)
    assert (count_late("day", due, after), count_late("hour", due, after)) == (1, 23)
    utc = dt.datetime(2027, 3, 28, 11, tzinfo=dt.UTC)
    assert marks_lost(LateRule((Tier(5),)), due, utc, mark=60).late == 1


def test_a_sheet_without_a_rule_costs_by_the_usual_one() -> None:
    """A tenth of the total a day is assumed, and the assumption has a name."""
    cost = as_cost(None, MONDAY, mark=100)
    assert [cost(MONDAY + n * DAY) for n in range(3)] == [0, pytest.approx(0.1), pytest.approx(0.2)]
    assert UNSTATED.unit == "percent of the total"


TIERS = st.lists(
    st.builds(Tier, st.floats(0, 60), st.one_of(st.none(), st.integers(1, 9)), st.booleans()), max_size=3
).map(tuple)
UNITS: tuple[LossUnit, ...] = ("percent of the mark", "percent of the total", "points", "grade steps")
PER: tuple[LateUnit, ...] = ("hour", "day", "working day", "week", "once")
RULES = st.builds(
    LateRule,
    TIERS,
    st.sampled_from(UNITS),
    st.sampled_from(PER),
    st.booleans(),
    st.one_of(st.none(), st.times()),
    st.integers(0, 60),
    st.one_of(st.none(), st.integers(0, 14)),
    st.sampled_from(PER),
    st.floats(0, 60),
    st.one_of(st.none(), st.floats(0, 100)),
)


@given(RULES, st.lists(st.integers(-3000, 30000), min_size=2, max_size=8))
def test_a_cost_is_a_share_and_never_falls(rule: LateRule, minutes: list[int]) -> None:
    """By whatever rule, a hand-in costs from nothing to the whole mark, and a later one never less."""
    cost = as_cost(rule, MONDAY)
    costs = [cost(MONDAY + dt.timedelta(minutes=n)) for n in sorted(minutes)]
    assert all(0 <= each <= 1 for each in costs)
    assert all(before <= after + 1e-9 for before, after in pairwise(costs))
