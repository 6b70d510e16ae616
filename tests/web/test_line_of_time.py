"""The line of time: every mark on it, none upon another."""

from __future__ import annotations

import datetime as dt
from itertools import combinations
from pathlib import Path

from hypothesis import given
from hypothesis import strategies as st

from fairhand.model.plan import Sitting
from fairhand.session.schedule.overview import InHand
from fairhand.web.line_of_time import APART, DEEPEST, ROOM, draw_line

NOW = dt.datetime(2027, 2, 8, 12, tzinfo=dt.UTC)


def paper(day: dt.date | None) -> InHand:
    """A paper that is due on a day."""
    return InHand("A paper", "", day, Path())


@given(st.lists(st.none() | st.dates(dt.date(2026, 1, 1), dt.date(2028, 12, 31)), max_size=12))
def test_no_number_covers_another(days: list[dt.date | None]) -> None:
    """Each paper with a date has its number within the line; two of one height are apart."""
    days = sorted((day for day in days if day), key=str) + [day for day in days if day is None]
    line = draw_line([paper(day) for day in days], NOW)
    assert [mark.says for mark in line.marks] == [str(n) for n, day in enumerate(days, 1) if day]
    for mark in (*line.marks, *line.ticks):
        assert 0 <= mark.at <= 100
        assert 0 <= mark.top <= line.base
    for one, other in combinations(line.ticks, 2):
        assert abs(one.at - other.at) >= ROOM
    for one, other in combinations(line.marks, 2):
        assert one.top != other.top or abs(one.at - other.at) >= APART


def test_the_line_is_told_in_words() -> None:
    """Who does not see it hears the same."""
    line = draw_line([paper(dt.date(2027, 2, 19)), paper(dt.date(2027, 3, 5)), paper(None)], NOW)
    assert line.said == "From 8 February to 5 March: 1 is due 19 February; 2 is due 5 March."


def test_a_day_that_has_passed_stands_before_today() -> None:
    """Nothing is dropped for being late."""
    line = draw_line([paper(dt.date(2027, 2, 1)), paper(dt.date(2027, 2, 15))], NOW)
    assert [mark.at for mark in line.marks] == [0, 100]
    assert [(tick.at, tick.says) for tick in line.ticks] == [(0, "1 February"), (50, "today"), (100, "15 February")]


def test_each_day_of_work_has_its_stroke_below_the_line() -> None:
    """As long as the work is, up to a bound; what lies beyond the line is left out."""
    hours = [(8, 60), (8, 90), (9, 1400), (27, 60)]
    begins = [(NOW.replace(day=day), dt.timedelta(minutes=minutes)) for day, minutes in hours]
    sittings = [Sitting("a/draft", start, start + length) for start, length in begins]
    line = draw_line([paper(dt.date(2027, 2, 18))], NOW, sittings)
    assert [(day.at, day.top - line.base) for day in line.days] == [(0, 10), (10, DEEPEST)]
    assert line.said.endswith("Work is planned on 2 days.")
    assert line.height > max(day.top for day in line.days)
