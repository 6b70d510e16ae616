"""What sheets ask of the hand-in. Wordings: common practice of assignment sheets."""

from __future__ import annotations

import datetime as dt

import pytest

from fairhand.brief.read import read_brief
from fairhand.hand_in.asked import Asked, forbids_name, read_asked


def asked(text: str) -> Asked:
    """What a sheet asks of the hand-in."""
    brief = read_brief([("sheet.txt", text)], dt.date(2026, 9, 1))
    return read_asked(brief.requirements, brief.texts)


@pytest.mark.parametrize(
    "sentence",
    [
        "Essays are marked anonymously.",
        "Marking is anonymous, so use your candidate number only.",
        "The department uses blind marking.",
        "Do not put your name anywhere on the essay.",
        "No names on the paper, please.",
        "Your name must not appear in the document.",
        "Please remove your name from the file before you upload it.",
        "Write your student number, and not your name, on the title page.",
        "Papers are graded blind.",
        "Don't include your name in the header.",
    ],
)
def test_a_sheet_that_forbids_the_name_is_understood(sentence: str) -> None:
    """The words that forbid it are shown."""
    assert forbids_name(sentence)
    assert asked(f"Write 900 words. {sentence}").anonymous == sentence


@pytest.mark.parametrize(
    "sentence",
    [
        "Put your name and the date in the top left corner.",
        "Include your name and student number on the title page.",
        "Two anonymous pamphlets are in the reader.",
        "Essays are not marked anonymously.",
        "Peer review of the drafts is anonymous.",
        "Do not name the school or the children.",
        "Change the names of your informants.",
        "Name the author of each letter.",
        "Do not forget to put your name on it.",
        "A paper without your name on it cannot be marked.",
    ],
)
def test_a_sheet_that_wants_the_name_is_not_taken_to_forbid_it(sentence: str) -> None:
    """Nor one that speaks of other people's names."""
    assert not forbids_name(sentence)


@pytest.mark.parametrize(
    ("sentence", "kind"),
    [
        ("Attach a signed declaration of originality.", "originality"),
        ("Sign the honor code pledge on the last page.", "originality"),
        ("Include a cover sheet with the plagiarism declaration.", "originality"),
        ("Acknowledge anyone who read your draft.", "help"),
        ("Please state any help that you had from the writing center.", "help"),
        ("If you use AI, say so in a short note at the end: which tool, and for what.", "tools"),
        ("Add an AI statement after the references.", "tools"),
    ],
)
def test_a_statement_is_asked_for_with_the_words_of_the_sheet(sentence: str, kind: str) -> None:
    """Which one, and in which words; nothing of it is filled in."""
    (statement,) = asked(f"Write 900 words. {sentence}").statements
    assert statement.kind == kind
    assert statement.asks in sentence


@pytest.mark.parametrize(
    "sentence",
    [
        "Plagiarism will be reported.",
        "The writing center can help you.",
        "State your thesis in the first paragraph.",
        "You do not need to attach a declaration of originality.",
        "Acknowledge the counterargument.",
    ],
)
def test_a_rule_alone_asks_for_no_statement(sentence: str) -> None:
    """What is forbidden, offered or not needed is nothing to be stated."""
    assert asked(f"Write 900 words. {sentence}").statements == ()


def test_form_name_and_way_are_the_sheets() -> None:
    """The first kind of file that is asked for and can be made is made."""
    text = "Submit a Word document or a PDF, named Surname_Essay2.docx, through the course page by 3 October 2026."
    found = asked(text)
    assert (found.form, found.file_name) == ("docx", "Surname_Essay2.docx")
    assert [way.by for way in found.ways] == ["upload"]
    assert asked("Submit it as an .rtf file.").form == "pdf"
