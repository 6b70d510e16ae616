"""Free hours, from what the writer has set down."""

from __future__ import annotations

import datetime as dt
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.planning.hours import ASSUMED, Hours, list_free_hours
from fairhand.planning.hours_written import read_days, read_hours, read_stretches, write_stretches

OSLO = ZoneInfo("Europe/Oslo")
HOUR = dt.timedelta(hours=1)
DAYS = st.lists(st.tuples(st.integers(0, 1439), st.integers(1, 900)), max_size=3).map(
    lambda pairs: tuple((start, start + length) for start, length in sorted(pairs))
)
HOURS = st.builds(Hours, week=st.tuples(*[DAYS] * 7))


@pytest.mark.parametrize(
    ("written", "stretches"),
    [
        ("17:00–20:00", ((1020, 1200),)),
        ("9-12, 14.30-16", ((540, 720), (870, 960))),
        ("9 to 12 and 14 to 16", ((540, 720), (840, 960))),
        ("22:00–01:00", ((1320, 1500),)),
        ("20–24", ((1200, 1440),)),
        ("2.5 h", ((1080, 1230),)),
        (2, ((1080, 1200),)),
        ("9-11, 10-12", ((540, 720),)),
        ("", ()),
        ("0", ()),
        ("–", ()),
        ("evening", None),
        ("25-26", None),
        ("9:75-10", None),
        ("9-9", None),
        (True, None),
    ],
)
def test_hours_are_read_as_people_write_them(written: object, stretches: object) -> None:
    """Ranges with any dash, several of them, past midnight, or a number of hours."""
    assert read_stretches(written) == stretches


@given(st.text(max_size=40))
def test_any_text_is_read_or_refused(text: str) -> None:
    """Nothing crashes the reader, and what it reads it writes back."""
    found = read_stretches(text)
    if found:
        assert all(0 <= start < end for start, end in found)
        assert read_stretches(write_stretches(found)) == found
    read_days(text)


def test_a_faulty_setting_is_told_and_the_rest_is_read() -> None:
    """Each with its place."""
    table = {"monday": "17-20", "tuesday": "some", "off": ["Easter", dt.date(2027, 3, 28)], "longest": -1, "from": "x"}
    hours, problems = read_hours(table)
    assert hours.week[0] == ((1020, 1200),)
    assert hours.is_off(dt.date(2027, 3, 28))
    assert [problem.where for problem in problems] == [
        "desk.toml, hours, from",
        "desk.toml, hours, tuesday",
        "desk.toml, hours, off",
        "desk.toml, hours, longest",
    ]


@pytest.mark.parametrize("table", [None, {}, {"off": ["2027-03-28"]}, {"longest": 60}])
def test_hours_that_nobody_set_down_are_assumed_and_told_apart(table: object) -> None:
    """Days off alone set no hours."""
    hours, problems = read_hours(table)
    assert (hours.week, hours.stated, problems) == (ASSUMED.week, False, ())


def test_nothing_is_done_after_the_last_hour() -> None:
    """``until`` cuts what reaches beyond it, and leaves out what begins after it."""
    hours, _ = read_hours({"monday": "17-23", "tuesday": "22-24", "until": "21:30"})
    assert hours.week[:2] == (((1020, 1290),), ())


@pytest.mark.parametrize(
    ("day", "written", "lasts"),
    [
        (dt.date(2027, 3, 28), "1:00-4:00", 2),  # clocks go from 02:00 to 03:00
        (dt.date(2027, 10, 31), "1:00-4:00", 4),  # clocks go from 03:00 back to 02:00
        (dt.date(2027, 3, 28), "18-20", 2),
        (dt.date(2027, 3, 27), "18-20", 2),
    ],
)
def test_hours_are_the_wall_clocks_whatever_the_season(day: dt.date, written: str, lasts: int) -> None:
    """Where the clock jumps, an evening stays where it was, and a night has the length that it has."""
    hours, _ = read_hours({("saturday", "sunday")[day.weekday() - 5]: written})
    noon = dt.datetime.combine(day, dt.time(), tzinfo=OSLO)
    free = [one for one in list_free_hours(hours, noon, noon + 30 * HOUR) if one.start.date() == day]
    assert [(one.end.astimezone(dt.UTC) - one.start.astimezone(dt.UTC)) / HOUR for one in free] == [lasts]
    assert f"{free[0].start:%H}" == f"{read_stretches(written)[0][0] // 60:02}"  # type: ignore[index]


@given(HOURS, st.integers(0, 60 * 24 * 16), st.integers(0, 24 * 14))
def test_free_hours_are_in_order_and_none_is_past(hours: Hours, minutes: int, span: int) -> None:
    """None overlaps the next, none begins before now, none ends after what was asked for."""
    begin = (dt.datetime(2027, 3, 20, tzinfo=dt.UTC) + dt.timedelta(minutes=minutes)).astimezone(OSLO)
    end = begin.astimezone(dt.UTC) + span * HOUR
    moments = [at.astimezone(dt.UTC) for free in list_free_hours(hours, begin, end) for at in (free.start, free.end)]
    assert moments == sorted(moments)
    assert all(begin.astimezone(dt.UTC) <= at <= end for at in moments)


def test_a_day_off_has_none() -> None:
    """Nor does a night that began on it."""
    hours, _ = read_hours({"monday": "22-2", "tuesday": "18-20", "off": ["2027-02-08"]})
    monday = dt.datetime(2027, 2, 8, tzinfo=OSLO)
    assert [free.start.day for free in list_free_hours(hours, monday, monday + 48 * HOUR)] == [9]
