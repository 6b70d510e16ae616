"""Due dates. Wordings: common practice of assignment sheets."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable

import pytest

from fairhand.brief.read import read_brief
from fairhand.model.requirement import Value

Reading = Callable[..., list[dict[str, Value]]]


@pytest.mark.parametrize(
    ("text", "what", "on", "at"),
    [
        ("Essays are due on Friday 4 December 2026 at 2 pm.", "final", "2026-12-04", "14:00"),
        ("Upload it by 12 noon on Friday 4 December.", "final", "2026-12-04", "12:00"),
        ("Rough draft ....... Mon 11/9, 5:00 PM", "draft", "2026-11-09", "17:00"),
        ("Hand it in two weeks from today, by four o'clock in the afternoon.", "final", "2026-09-15", "16:00"),
        ("Annotated bibliography: due January 15", "annotated-bibliography", "2027-01-15", None),
        ("The essay must reach me no later than 17.00 on 20 March 2027.", "final", "2027-03-20", "17:00"),
        ("Peer review of a partner's draft. Due Friday, October 2.", "peer-review", "2026-10-02", None),
    ],
)
def test_a_due_date_is_read(values_of: Reading, text: str, what: str, on: str, at: str | None) -> None:
    """The thing due, its day with the year placed after the sheet's own, and its hour."""
    assert values_of("due", text) == [{"what": what, "on": on, "at": at}]


@pytest.mark.parametrize(
    "text",
    [
        "There is no class on 12 October.",
        "Extensions must be asked for by 29 November.",
        "Handed out Tuesday 1 September 2026",
        "The quiz is on 2 October; the midterm is on 14 November.",
        "Nothing is accepted after December 11.",
        "Bibliography cards are due Friday, January 9.",
        'The chapter headed "March 3, 1911" comes later.',
    ],
)
def test_other_dates_are_not_due(values_of: Reading, text: str) -> None:
    """Classes, examinations, extensions and dates in the matter itself are left alone."""
    assert values_of("due", text) == []


def test_a_calendar_gives_each_stage_its_day(values_of: Reading) -> None:
    """Rows of a table are read with the label before or after the date."""
    text = "Timetable\n  16 October      Proposal\n  20 November, 23:59   Report\n  4 December      Presentation\n"
    assert [(v["what"], v["on"], v["at"]) for v in values_of("due", text)] == [
        ("proposal", "2026-10-16", None),
        ("final", "2026-11-20", "23:59"),
        ("presentation", "2026-12-04", None),
    ]


def test_what_can_be_read_two_ways_is_asked() -> None:
    """A day and month that could change places, a wrong weekday, and midnight become questions."""
    given = dt.date(2026, 9, 1)

    def questions(text: str) -> str:
        return " ".join(read_brief([("a.txt", text)], given).questions)

    assert "in that order" in questions("The essay is due 5/10.")
    assert "is not a Monday" in questions("The essay is due on Monday 4 December 2026.")
    assert "midnight" in questions("The essay is due on 4 December 2026 by midnight.")
    assert questions("The essay is due on Friday 4 December 2026 at 5 pm.") == ""
    assert questions("The draft is due 10/23; the essay is due 11/6.") == ""


@pytest.mark.parametrize(
    ("text", "on"),
    [
        ("The essay should be with me by 5 pm on 12 October.", "2026-10-12"),
        ("Have your paper on my desk by noon on Friday 16 October 2026.", "2026-10-16"),
        ("It has to be in my pigeonhole before 6 November.", "2026-11-06"),
    ],
)
def test_where_the_paper_is_to_lie_by_a_day_is_a_hand_in(values_of: Reading, text: str, on: str) -> None:
    """*With me*, *on my desk*, *in my pigeonhole* by a day say when it is due."""
    assert [v["on"] for v in values_of("due", text)] == [on]


def test_of_two_readings_a_day_before_the_sheet_is_hardly_meant() -> None:
    """The day that lies before the sheet was given out is passed over, and the order is asked all the same."""
    brief = read_brief([("sheet.txt", "Essay due 5/11/2026.")], dt.date(2026, 9, 1))
    assert [r.values["on"] for r in brief.requirements if r.kind == "due"] == ["2026-11-05"]
    assert any("day and month in that order" in asked for asked in brief.questions)
