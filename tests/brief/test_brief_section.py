"""Sections that a sheet names."""

from __future__ import annotations

import pytest

from fairhand.brief.read import read_brief


@pytest.mark.parametrize(
    ("sentence", "name"),
    [
        ("Your essay should contain a section headed Limitations.", "limitations"),
        ("Include a section entitled 'The Inquiry' or similar.", "the inquiry"),
        ('End with a section called "What Comes Next", please.', "what comes next"),
        ("Add a part named Sources and Methods before the end.", "sources and methods"),
        ("One section must be headed Other Voices; put the best case against you there.", "other voices"),
    ],
)
def test_a_section_is_named_on_its_own(sentence: str, name: str) -> None:
    """In quotation marks, or by its capitals."""
    found = [r.values["name"] for r in read_brief([("a.txt", sentence)]).requirements if r.kind == "section"]
    assert found == [name]


@pytest.mark.parametrize(
    ("sentence", "names"),
    [
        (
            "Use these headings in this order: Introduction; What the Survey Is; How It Works; Conclusion.",
            ["introduction", "what the survey is", "how it works", "conclusion"],
        ),
        (
            "Three sections are required: How I Looked, in which you name what you read; Doubts; and Conclusion.",
            ["how i looked", "doubts", "conclusion"],
        ),
        ("Divide the report as follows: The Harbour; Who Was Paid; Costs.", ["the harbour", "who was paid", "costs"]),
        ("The paper should have the following headings: you should say what you did, and why.", []),
    ],
)
def test_a_heading_may_be_a_question_or_a_clause(sentence: str, names: list[str]) -> None:
    """Words of a plain sentence stand in a name that is set as a title; in advice they name nothing."""
    found = [r.values["name"] for r in read_brief([("a.txt", sentence)]).requirements if r.kind == "section"]
    assert found == names


def test_a_course_on_markets_is_no_table_of_marks() -> None:
    """Sections are read under a title whose words only begin like those of grading."""
    sheet = "HISTORY 20: MARKETS AND GRADIENTS\n\nSections: Introduction; Historiography; Selling Time; Conclusion."
    found = [r.values["name"] for r in read_brief([("a.txt", sheet)]).requirements if r.kind == "section"]
    assert found == ["introduction", "historiography", "selling time", "conclusion"]


def test_a_label_that_asks_is_never_passed_over() -> None:
    """Where nothing under it is understood, its line is listed to be read by the writer."""
    assert read_brief([("a.txt", "Essay\n\nSections: as we agreed in class on Monday.")]).unread == (
        "Sections: as we agreed in class on Monday.",
    )
