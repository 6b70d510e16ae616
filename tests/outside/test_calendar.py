"""Calendar files, read by a library of others.

**Source**: icalendar (BSD), the reference reader of RFC 5545 in Python; the checks are ours.
"""

from __future__ import annotations

import datetime as dt

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from fairhand.model.plan import PaperDue, Plan, Sitting, Step
from fairhand.planning.calendar_file import write_calendar

icalendar = pytest.importorskip("icalendar", reason="no icalendar here: pip install icalendar")
NOW = dt.datetime(2027, 3, 27, 12, tzinfo=dt.UTC)
TEXT = st.text(st.characters(exclude_categories=["C", "Z"], include_characters=" \n"), max_size=120)


@settings(max_examples=60)
@given(TEXT, TEXT, st.lists(st.integers(0, 10**4), min_size=1, max_size=4, unique=True))
def test_what_is_written_is_read_back(name: str, why: str, minutes: list[int]) -> None:
    """Every event with its hours, its words and a UID of its own; nothing is reported as an error."""
    step = Step("p/s", "p", name, 60, why=why)
    starts = [NOW + dt.timedelta(minutes=n) for n in sorted(minutes)]
    sittings = tuple(Sitting(step.id, start, start + dt.timedelta(minutes=50)) for start in starts)
    due = PaperDue("p", NOW + dt.timedelta(days=9), lambda _: 0.0, title="P")
    data = write_calendar(Plan(sittings, ()), {step.id: step}, [due], NOW)
    calendar = icalendar.Calendar.from_ical(data)
    events = calendar.walk("VEVENT")
    assert [event.decoded("DTSTART") for event in events] == [*starts, due.due]
    assert all(event.decoded("DTEND") - event.decoded("DTSTART") == dt.timedelta(minutes=50) for event in events[:-1])
    assert {str(event["SUMMARY"]) for event in events[:-1]} == {f"P: {name}"}
    assert {str(event.get("DESCRIPTION", "")) for event in events[:-1]} == {why}
    assert len({str(event["UID"]) for event in events}) == len(events)
    assert calendar.errors == []
    assert [event.errors for event in events] == [[]] * len(events)
