"""Passes over the proof and their marks, as the library keeps them."""

from __future__ import annotations

import datetime as dt
from pathlib import Path

import pytest

from fairhand.errors import FairhandError
from fairhand.model.proof_mark import ProofMark, ProofSign
from fairhand.model.requirement import Requirement
from fairhand.model.span import Span
from fairhand.session.correction.passes import begin_pass, end_pass, medium_asked, read_marking
from fairhand.session.correction.proof import keep_marks, mend_mark, read_proof, settle_mark
from fairhand.session.opened import OpenPaper

AT = dt.datetime(2027, 2, 8, 12, tzinfo=dt.UTC)


def mark_once(paper: Path, sign: ProofSign, exact: str, around: tuple[str, str], words: str = "") -> str:
    """The id of one mark in a pass that has ended."""
    begin_pass(paper, "page", AT)
    (made,) = keep_marks(paper, [ProofMark("", "", sign, exact, *around, words=words)], AT)
    end_pass(paper, AT)
    return made.id


@pytest.mark.parametrize(
    ("sign", "exact", "around", "words", "now"),
    [
        ("delete", "and", ("for several pages and ", " too short for anything"), "", "several pages and too short"),
        (
            "insert",
            "pages",
            ("enough for several ", " and and too short"),
            "of print",
            "several pages of print and and",
        ),
        ("italic", "pages", ("enough for several ", " and and too short"), "", "several *pages* and and"),
    ],
)
def test_nothing_is_mended_twice(
    demo_paper: Path, sign: ProofSign, exact: str, around: tuple[str, str], words: str, now: str
) -> None:
    """Not even where the program was stopped after the draft was written and before that was noted."""
    mark = mark_once(demo_paper, sign, exact, around, words)
    mend_mark(demo_paper, mark)
    mended = (demo_paper / "draft.md").read_text("utf-8")
    assert now in mended
    with pytest.raises(FairhandError, match="was mended before"):
        mend_mark(demo_paper, mark)
    settle_mark(demo_paper, mark, "open")
    with pytest.raises(FairhandError, match="as it was marked"):
        mend_mark(demo_paper, mark)
    assert (demo_paper / "draft.md").read_text("utf-8") == mended


def test_what_is_the_writers_to_word_is_not_worded(demo_paper: Path) -> None:
    """A query changes nothing; that is said with what to do."""
    mark = mark_once(demo_paper, "query", "several pages", ("is long enough for ", " and and too short"), "how many?")
    before = (demo_paper / "draft.md").read_bytes()
    with pytest.raises(FairhandError, match="yours to word"):
        mend_mark(demo_paper, mark)
    assert (demo_paper / "draft.md").read_bytes() == before


def test_a_second_reader_is_not_shown_what_the_first_marked(demo_paper: Path) -> None:
    """While a pass is under way its own marks are shown alone; afterwards all, under the numbers that they had."""
    mark_once(demo_paper, "delete", "and", ("for several pages and ", " too short for anything"))
    begin_pass(demo_paper, "paper", AT, by=" Jonas  Vik ")
    assert read_marking(demo_paper).shown == ()
    keep_marks(demo_paper, [ProofMark("", "", "query", "tram", "of the ", " libraries")], AT)
    assert [number for number, _ in read_marking(demo_paper).shown] == [2]
    end_pass(demo_paper, AT)
    assert [number for number, _ in read_marking(demo_paper).open] == [1, 2]
    assert read_marking(demo_paper).passes[1].by == "Jonas Vik"


def test_a_pass_read_to_its_last_line_was_read_whole(demo_paper: Path) -> None:
    """And nothing is said to be unread."""
    proof = read_proof(OpenPaper(demo_paper))
    begin_pass(demo_paper, "paper", AT)
    ended = end_pass(demo_paper, AT, (proof.lines[-1].page, proof.lines[-1].number), proof)
    assert (ended.read_to, ended.unread) == ((0, 0), "")


def test_the_medium_is_the_sheets() -> None:
    """On paper where a printed copy is asked for, by a rule of form or as the way of handing in."""
    asked = [
        Requirement("format", {"what": "printed", "value": True}, "Hand in a printed copy.", Span(0, 23)),
        Requirement("submit", {"by": "print", "where": None}, "Bring it on paper.", Span(0, 18)),
        Requirement("submit", {"by": "upload", "where": "the portal"}, "Upload it.", Span(0, 10)),
    ]
    assert [medium_asked([one]) for one in asked] == ["paper", "paper", "screen"]
