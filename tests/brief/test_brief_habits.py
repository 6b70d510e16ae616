"""Habits of sheets: how they are laid out and worded beyond the plain sentence. Wordings: common practice, our own."""

from __future__ import annotations

import datetime as dt

import pytest

from fairhand.brief.read import read_brief
from fairhand.model.requirement import Value

GIVEN = dt.date(2027, 1, 11)
ANSWERS = """Q: length? A: 5-6 pgs, double spaced. Works cited page is extra.

Q: style? APA? A: MLA.

Q: chatbots? A: No.

Q: late? A: 1/3 letter grade per day, no papers after Feb 9, grades are due.

Q: when? A: Feb 4 by 11:59 pm in the Final Paper folder.
"""


def _read(text: str) -> dict[str, dict[str, Value]]:
    return {r.id: dict(r.values) for r in read_brief([("a.txt", text)], GIVEN).requirements}


def test_a_question_and_its_answer_on_one_line() -> None:
    """The question is the answer's label, and asks nothing itself."""
    asked = _read(ANSWERS)
    assert (asked["length.paper"]["min"], asked["length.paper"]["max"]) == (5, 6)
    assert asked["length.paper"]["excludes"] == ("references",)
    assert [values["style"] for name, values in asked.items() if name.startswith("style")] == ["mla"]
    assert asked["policy.ai"]["rule"] == "forbidden"
    assert (asked["late"]["penalty"], asked["late"]["refused_after_days"]) == (1, 5)
    assert (asked["due.final"]["on"], asked["submit.upload"]["where"]) == ("2027-02-04", "Final Paper folder")


@pytest.mark.parametrize(
    ("text", "name", "key", "value"),
    [
        ("Hand the essay in on Tuesday the 26th.", "due.final", "on", "2027-01-26"),
        ("Final essay . . . . . . . Mon 2/8, 5 PM, HIST 20 folder", "submit.upload", "where", "HIST 20 folder"),
        ("Write 1,000 words; nobody should go over 1,200.", "length.paper", "max", 1200),
        ("Attempt any one question in about 900 words.", "length.paper", "about", True),
        ("Submit it as one Word document of 900 words.", "length.paper", "max", 900),
        ("2500 words +/- 250 (tables excluded).", "length.paper", "min", 2250),
        ("Word limit\nThere is a word limit of 800 words.", "length.paper", "max", 800),
        ("At least half a dozen books are needed.", "sources.book", "min", 6),
        ("Newspaper articles should not exceed two.", "sources.news", "max", 2),
        ("1,000 words, four sources.", "sources.any", "min", 4),
        ("Use any consistent numbered system of references.", "style", "style", "any-consistent"),
        ("The citation style is free, but it has to be used uniformly.", "style", "style", "any-consistent"),
        ("A case note (a) explains the ruling and (b) critiques it.", "task.critique", "verb", "critique"),
        ("Your student number (not your name) stands in the header.", "format.running-head", "value", True),
        ("Sections should be numbered.", "format.headings", "value", "numbered"),
        ("I'd like it on paper, in my pigeonhole, and please not by email.", "submit.print", "where", "pigeonhole"),
        ("Essays received after the last date will not be evaluated.", "late", "refused_after_days", 0),
        ("It is permissible to discuss your essay with friends.", "policy.collaboration", "rule", "allowed"),
        ("Do not submit material that you have used elsewhere.", "policy.reuse", "rule", "forbidden"),
        ("Structure: Introduction / Sources / Comment / Conclusion", "section.comment", "needed", True),
        ("Q. May I cite the textbook?\nA. As a source, no. Read it all the same.", "sources_banned", "what",
         ("textbook",)),
    ],
)  # fmt: skip
def test_what_sheets_say_in_other_words(text: str, name: str, key: str, value: Value) -> None:
    """It is read all the same."""
    assert _read(text)[name][key] == value


@pytest.mark.parametrize(
    "text",
    [
        "Each essay loses 1/3 of a letter.",
        "Two or three readings, well understood, are plenty.",
        "Papers that are late lose 10% of the points for the first day: 5% for each after.",
    ],
)
def test_what_looks_like_something_else_is_not_read_as_it(text: str) -> None:
    """No length, no date, no number of sources, no rubric."""
    assert {name.split(".")[0] for name in _read(text)} <= {"late"}


def test_the_second_of_several_weighed_assignments() -> None:
    """A weight after the title makes it no less a title."""
    text = (
        "ASSIGNMENT 1: The walk (15%)\n750 words, no sources. Due Jan. 29.\n\n"
        "ASSIGNMENT 2: The profile (30%)\n1,200-1,500 words. Due Feb. 26, 10 pm.\n"
    )
    brief = read_brief([("a.txt", text)], GIVEN, assignment="2")
    assert [r.values.get("on") for r in brief.requirements if r.kind == "due"] == ["2027-02-26"]
