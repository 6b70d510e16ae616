"""The whole brief: ids, several sheets, several papers, answers, JSON, and what was not understood."""

from __future__ import annotations

import datetime as dt
import json

from fairhand.brief.read import apply_answers, given_day, read_brief, to_json
from fairhand.model.settings import Answer

GIVEN = dt.date(2026, 9, 1)


def test_ids_are_kind_and_main_value() -> None:
    """Each requirement is named by its kind and main value; a second of the same name ends in -2."""
    text = "Write 2,000 words. Use MLA (9th edition) or APA style.\n\nGrading\nArgument & proof: 60%\nForm: 40%\n"
    ids = [r.id for r in read_brief([("a.txt", text)], GIVEN).requirements]
    assert ids == ["length.paper", "style", "style-2", "rubric.argument-proof", "rubric.form"]


def test_evidence_is_the_sheets_own_words() -> None:
    """The evidence is what stands at the span, line breaks and all."""
    text = (
        "This essay is for the general reader and must not exceed\n"
        "   3,000 words; proofread it, and let the reader breathe\n   now and then."
    )
    brief = read_brief([("a.txt", text)], GIVEN)
    (length,) = brief.requirements
    assert length.evidence == length.span.of(text) == "not exceed\n   3,000 words"
    assert (length.sheet, length.force) == ("a.txt", "must")


def test_the_wording_tells_how_strongly_it_is_asked() -> None:
    """Must, should and may are told apart by the sentence's own words."""
    text = "Sub-headings are expected.\nA title page is required.\nYou may discuss your ideas with classmates.\n"
    forces = {r.id: r.force for r in read_brief([("a.txt", text)], GIVEN).requirements}
    assert forces == {"element.headings": "should", "format.title-page": "must", "policy.collaboration": "may"}


def test_the_later_word_wins_and_the_contradiction_is_said() -> None:
    """A later sheet's word stands, both wordings are shown, and what it repeats is no contradiction."""
    sheets = [
        ("sheet.txt", "Write 2,000 words in MLA style. No blogs, please."),
        ("message.txt", "Make that 2,500 words. MLA style, as I said. No encyclopaedias either."),
    ]
    brief = read_brief(sheets, GIVEN)
    values = {r.id: r.values for r in brief.requirements}
    assert values["length.paper"]["max"] == 2500
    assert [r.sheet for r in brief.requirements if r.kind == "style"] == ["sheet.txt"]
    assert [r.values["what"] for r in brief.requirements if r.kind == "sources_banned"] == [
        ("blog",),
        ("encyclopedia",),
    ]
    (conflict,) = brief.conflicts
    assert "2,000 words" in conflict
    assert "2,500 words" in conflict
    assert "message.txt" in conflict


SYLLABUS = """WRITTEN WORK

PAPER 1: A WALK
  Two pages. Due October 2.

PAPER 2: A STREET
  Eight pages in APA style. Due November 6.

FOR ALL PAPERS
  Late papers lose 3 points a day.
"""


def test_several_papers_on_one_sheet() -> None:
    """The titles are given; one paper's requirements are read with those that hold for all."""
    brief = read_brief([("a.txt", SYLLABUS)], GIVEN)
    assert brief.assignments == ("PAPER 1: A WALK", "PAPER 2: A STREET")
    assert [r.id for r in brief.requirements] == ["length.paper", "due.final", "late"]
    second = read_brief([("a.txt", SYLLABUS)], GIVEN, assignment="a street")
    assert [r.id for r in second.requirements] == ["length.paper", "due.final", "style", "late"]
    assert second == read_brief([("a.txt", SYLLABUS)], GIVEN, assignment="2")


def test_the_sheet_may_say_which_paper_is_meant() -> None:
    """Without a choice the sheet's own word decides."""
    text = SYLLABUS.replace("WRITTEN WORK\n", "WRITTEN WORK\n\nThe paper you are writing now is PAPER 2.\n")
    assert read_brief([("a.txt", text)], GIVEN).requirements[0].values["max"] == 8


def test_what_is_not_part_of_the_paper_is_left_out() -> None:
    """Sections on other work, and alternative tasks, ask nothing of this paper."""
    text = "Write 900 words.\n\nNot part of this assignment\nThe report (1,500 words) is due on 2 May.\n"
    assert [r.id for r in read_brief([("a.txt", text)], GIVEN).requirements] == ["length.paper"]
    text = "Write 900 words.\n\nAlternative task. Record a talk and submit 200 words on the course page.\n"
    assert [r.id for r in read_brief([("a.txt", text)], GIVEN).requirements] == ["length.paper"]


def test_the_day_a_sheet_was_given_is_read_off_it() -> None:
    """An issue date counts; a due date does not; without a year there is none."""
    assert given_day([("a.txt", "Handed out Monday, October 14, 2024\nDue November 1")]) == dt.date(2024, 10, 14)
    assert given_day([("a.txt", "Essay due Monday, October 14, 2024")]) is None
    assert given_day([("a.txt", "Handed out Monday, October 14")]) is None
    brief = read_brief([("a.txt", "Issued: 20 January 2025\n\nThe essay is due on 21 March.")])
    assert brief.requirements[0].values["on"] == "2025-03-21"


def test_without_any_year_the_day_is_asked() -> None:
    """A date whose year nothing tells is kept without a day, and asked."""
    brief = read_brief([("a.txt", "The essay is due on 21 March.")])
    assert brief.requirements[0].values["on"] is None
    assert "which year" in brief.questions[0]


def test_what_looks_like_a_demand_and_was_not_understood_is_listed() -> None:
    """Orders that no kind covers are shown in the sheet's own words; mere telling is not."""
    text = "Write 900 words. You must interview two shopkeepers. Last year's class enjoyed it. The town is old."
    assert read_brief([("a.txt", text)], GIVEN).unread == ("You must interview two shopkeepers.",)


def test_answers_correct_what_was_read() -> None:
    """Corrected values stand in place of those read; ids stay, and unknown names are left alone."""
    brief = read_brief([("a.txt", "Write 2,000 words in MLA style.")], GIVEN)
    length, style = apply_answers(brief, {"length.paper": Answer(values={"max": 2500, "colour": "red"})})
    assert (length.id, length.values["min"], length.values["max"]) == ("length.paper", 2000, 2500)
    assert "colour" not in length.values
    assert style is brief.requirements[1]


def test_json_has_the_schemas_keys_and_types() -> None:
    """Lists are lists, what is not said is null, and the whole can be written as JSON."""
    brief = read_brief([("a.txt", "Write 2,000 words, excluding notes. No blogs.")], GIVEN)
    data = json.loads(json.dumps(to_json(brief)))
    length, banned = data["requirements"]
    assert length["excludes"] == ["footnotes"]
    assert length["words_per_page"] is None
    assert banned["what"] == ["blog"]
    assert set(length) == {
        *("kind", "unit", "min", "max", "words_per_page", "about", "excludes", "part", "uncounted", "counted"),
        *("evidence", "id", "force", "start", "end", "sheet"),
    }


def test_a_message_may_move_the_deadline() -> None:
    """A later message's new day takes the place of the sheet's."""
    sheets = [("a.txt", "The essay is due on 6 November 2026."), ("b.txt", "The deadline has moved to 13 November.")]
    brief = read_brief(sheets, GIVEN)
    assert [r.values["on"] for r in brief.requirements] == ["2026-11-13"]
    assert len(brief.conflicts) == 1


def test_a_clause_that_is_not_understood_is_said_alone() -> None:
    """Of a sentence's clauses the one that was understood is a requirement, and the other is listed as not."""
    text = "Use MLA style; a map of the harbour must be pinned to the back. A drawing would not hurt."
    brief = read_brief([("sheet.txt", text)], dt.date(2026, 9, 1))
    assert [r.kind for r in brief.requirements] == ["style"]
    assert brief.unread == ("a map of the harbour must be pinned to the back.", "A drawing would not hurt.")


def test_the_words_that_ask_keep_their_brackets() -> None:
    """A bracket that opens in what is quoted from the sheet is closed in it."""
    for text in ("Use APA style (7th edition) throughout.", "Use MLA style (ninth edition, 2021)."):
        (style,) = (r for r in read_brief([("sheet.txt", text)], GIVEN).requirements if r.kind == "style")
        assert style.evidence.count("(") == style.evidence.count(")") == 1
