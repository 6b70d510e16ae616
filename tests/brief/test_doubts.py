"""What is asked, not guessed; and which spelling a sheet wants."""

from __future__ import annotations

import datetime as dt

import pytest

from fairhand.brief.read import read_brief
from fairhand.brief.spelling import spelling_asked

GIVEN = dt.date(2026, 9, 28)


def _questions(text: str) -> tuple[str, ...]:
    return read_brief([("a.txt", text)], GIVEN).questions


@pytest.mark.parametrize(
    ("text", "asked"),
    [
        ("The plan is due by the end of Week 6.", "names a week and no date"),
        ("Hand in the essay before week 10.", "names a week and no date"),
        ("The essay is due on Monday 7 December at midnight.", "“midnight” is read as the end of that day"),
        ("The essay is due on 11/12/2026.", "are day and month in that order?"),
        ("The essay is due on Monday 8 December 2026.", "which day is meant?"),
        ("The essay is due on 7 December.\n\nPlease note that the essay is due on 14 December.", "cannot both hold"),
        ("Length: 2,000 words.\n\nThe essay must not exceed 1,500 words.", "cannot both hold"),
    ],
)
def test_what_a_sheet_leaves_open_is_asked(text: str, asked: str) -> None:
    """A week, midnight, figures that could change places, a day that is another, and rules that contradict."""
    assert [question for question in _questions(text) if asked in question]


@pytest.mark.parametrize(
    "text",
    [
        "For week 6 read chapter 3.",
        "The essay is due on Monday 7 December (week 10) at 17:00.",
        "The essay is due on 23/11/2026.",
        "Write 1,500 to 2,000 words. The essay must not exceed 2,000 words.",
        "The draft is due on 2 November, the essay on 7 December.",
    ],
)
def test_what_is_plain_is_not_asked(text: str) -> None:
    """No question is put that the sheet itself answers."""
    assert _questions(text) == ()


def test_a_british_sheet_writes_the_day_first() -> None:
    """Where nothing else tells, the sheet's own spelling does; it is asked all the same."""
    british = "The module's essay carries sixty per cent. Print it on A4. The essay is due on 11/12/2026."
    american = "This syllabus is for the fall semester. The essay is due on 11/12/2026."
    read = [r for text in (british, american) for r in read_brief([("a.txt", text)], GIVEN).requirements]
    assert [r.values["on"] for r in read if r.kind == "due"] == ["2026-12-11", "2026-11-12"]
    assert _questions(british)


@pytest.mark.parametrize(
    ("texts", "spelling"),
    [
        (["Spelling should be British."], "GB"),
        (["Spelling: British"], "GB"),
        (["Please use American spelling throughout."], "US"),
        (["Write in UK English."], "GB"),
        (["British spelling.", "On reflection: American spelling is fine."], "US"),
        (["An essay on British politics."], ""),
    ],
)
def test_the_spelling_that_is_asked(texts: list[str], spelling: str) -> None:
    """However it is put; the later sheet wins."""
    assert spelling_asked(texts) == spelling


def test_a_spelling_that_is_understood_is_not_listed_as_unread() -> None:
    """It needs no second look."""
    assert read_brief([("a.txt", "Spelling should be British.")], GIVEN).unread == ()


def test_a_block_quotation_that_is_demanded() -> None:
    """It is a quotation, of that form; a bound on such quotations demands none."""
    (asked,) = read_brief([("a.txt", "Include at least one block quotation.")], GIVEN).requirements
    assert (asked.values["what"], asked.values["min"], asked.values["form"]) == ("direct-quotation", 1, "block")
    assert read_brief([("a.txt", "Use no more than two block quotations.")], GIVEN).requirements == ()


def test_books_or_chapters_are_books() -> None:
    """What may be a book or a chapter of one is asked as a book."""
    text = "Cite at least eight sources. At least two of them must be books or chapters."
    kinds = [(r.values["min"], r.values["type"]) for r in read_brief([("a.txt", text)], GIVEN).requirements]
    assert kinds == [(8, "any"), (2, "book")]
