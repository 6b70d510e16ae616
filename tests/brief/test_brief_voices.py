"""What other teachers' sheets say in ways of their own. Wordings: common practice of assignment sheets."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from fairhand.model.requirement import Value

Reading = Callable[..., list[dict[str, Value]]]


def test_two_dates_in_two_sentences_keep_their_own_hours(values_of: Reading) -> None:
    """The hour of the next sentence is no hour of this one's date; a draft of a part is a draft."""
    text = (
        "Submit the report by 12 noon on Wednesday 13 January 2027. "
        "A draft of the Search Strategy is due by 17:00 on 16 December 2026."
    )
    assert values_of("due", text) == [
        {"what": "final", "on": "2027-01-13", "at": "12:00"},
        {"what": "draft", "on": "2026-12-16", "at": "17:00"},
    ]


@pytest.mark.parametrize(
    ("kind", "text", "key", "value"),
    [
        ("due", "Essays are delivered to the Examinations Office by noon on 26 April 2027.", "at", "12:00"),
        ("due", "It is due on Thursday 11 March by 5 in the afternoon.", "at", "17:00"),
        ("length", "Answers must not exceed 1,800 words, including footnotes.", "max", 1800),
        ("length", "How long? 3,500 words at the outside.", "max", 3500),
        ("length", "The limit is 2,000 words; footnotes are in, the bibliography is out.", "excludes", ("references",)),
        ("sources", "Evaluate at least eight research papers on one method.", "min", 8),
        ("sources", "At least ten references. Not older than 2015 please.", "since", 2015),
        ("sources_banned", "Sources: websites of museums are fine, but blogs are not.", "what", ("blog",)),
        ("style", "Style: I do not mind as long as you are consistent.", "style", "any-consistent"),
        ("style", "Follow the Chicago Manual of Style (notes, not author-date).", "style", "chicago-notes"),
        ("style", "Style: APA (7th)", "edition", 7),
        ("submit", "All written work is submitted as a Word document on Slateboard.", "where", "Slateboard"),
        ("submit", "Due Friday 18 December by 4pm, on Slateboard.", "where", "Slateboard"),
        ("late", "Late papers: -10 pts per 24 h, zero after 3 days.", "per", "day"),
        ("late", "5% off per day late. After 7 days = 0", "refused_after_days", 7),
        ("policy", "Discussing the problem with any other student is not permitted.", "rule", "forbidden"),
        ("element", "Take on somebody who would disagree with you.", "what", "counterargument"),
        ("due", "Essays are wanted by five o'clock on Friday, 19 March.", "at", "17:00"),
        ("due", "Paper due Friday, March 26, 4:00.", "at", "16:00"),
        ("due", "The essay is due on 20 March at 04:00.", "at", "04:00"),
        ("length", "About 2,500 words exclusive of the works-cited list.", "excludes", ("references",)),
        ("sources", "Engage with at least four critical essays, none older than 1980.", "since", 1980),
        ("sources_banned", "Study guides are out, and so is Wikipedia.", "what", ("encyclopedia", "website")),
        ("late", "Work exceeding the limit by 10% is penalised. Late: 5% of the mark per day.", "penalty", 5),
        ("format", 'Upload one file, "HIST60_A3_Name.pdf".', "value", "HIST60_A3_Name.pdf"),
        ("sources", "5+ sources, 3 scholarly", "type", "scholarly"),
        ("sources_banned", "Not OK: encyclopedias, fan blogs", "what", ("blog", "encyclopedia")),
        ("submit", "Due: in my inbox (r.delacourt@clinic.example) by 9 am on Tuesday, March 16.", "by", "email"),
        ("submit", "Bring a printed copy to my pigeonhole.", "by", "print"),
        ("late", "Late: 10% per 24 hours, up to 72 hours, after which 0.", "refused_after_days", 3),
        ("policy", "Clinic students may confer with each other.", "rule", "allowed"),
        ("task", "Prepare a memorandum that analyzes whether a town may refuse.", "verb", "analyse"),
        ("rubric", "Marking: Critique 40% | Proposal 30% | Data 20% | Form 10%", "criterion", "Critique"),
        ("task", "Topic\tPropose a cheaper binder\nLength\t6 pages", "verb", "propose"),
    ],
)
def test_a_turn_of_phrase_is_understood(values_of: Reading, kind: str, text: str, key: str, value: Value) -> None:
    """Each asks what the plain words for it would ask."""
    assert value in [each[key] for each in values_of(kind, text)]


def test_sections_in_an_indented_list_without_marks(values_of: Reading) -> None:
    """Lines of one word and of several are of one list; its end is where the indent ends."""
    text = (
        "The report must contain the following headed sections:\n   Abstract (no more than 150 words)\n"
        "   Introduction\n   Search Strategy\n   Findings\n\nLength\n2,000 words.\n"
    )
    assert [each["name"] for each in values_of("section", text)] == [
        "abstract",
        "introduction",
        "search strategy",
        "findings",
    ]


def test_what_may_come_from_the_syllabus_is_no_number_of_sources(values_of: Reading) -> None:
    """A limit on what was read in class anyway leaves the number of sources as it is."""
    found = values_of("sources", "Sources: 8 or more, and no more than 3 can be from the syllabus.")
    assert [(each["min"], each["max"]) for each in found] == [(8, None)]


def test_two_arrows_begin_an_item_where_they_quote_no_letter(values_of: Reading) -> None:
    """Each line of a list marked so is read by itself; a letter that is answered is quoted as before."""
    text = (
        "hi all, details as promised, so that nobody can say they missed it\n\n"
        ">> the question: discuss loneliness\n>> 1600 words\n>> ASA style\n"
    )
    assert [each["max"] for each in values_of("length", text)] == [1600]
    assert [each["verb"] for each in values_of("task", text)] == ["discuss"]
    quoted = "> Is it long?\n>> no\n\nThe essay has 900 words at most."
    assert [each["max"] for each in values_of("length", quoted)] == [900]
