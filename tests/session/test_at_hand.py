"""What is at hand while one drafts."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from fairhand.citing.in_text import write_in_text
from fairhand.errors import FairhandError
from fairhand.model.note import Note
from fairhand.session.drafting.at_hand import find_at_hand, list_at_hand, put_note
from fairhand.session.opened import OpenPaper


def test_questions_points_and_notes_are_at_hand_with_their_citations(demo_paper: Path) -> None:
    """In the in-text form of the paper's style; points and questions as remarks to oneself."""
    known = OpenPaper(demo_paper).look()
    parts = dict(list_at_hand(known, demo_paper))
    assert set(parts) <= {"Questions", "Points", "Notes"}
    points = parts["Points"]
    assert len(points) == len(known.paper.points.points)
    assert all(one.puts.startswith("[NB: ") and one.puts.endswith("]") for one in points)
    first = known.paper.points.points[0].support[0]
    entry = known.entries[first.source]
    assert write_in_text(entry, first.page, known.paper.entries, known.style_rules) in points[0].puts
    assert find_at_hand(known, demo_paper, points[0].name) == points[0]
    with pytest.raises(FairhandError, match="look at the sheet again"):
        find_at_hand(known, demo_paper, "nothing")


def test_a_note_is_put_in_as_what_it_is(demo_paper: Path) -> None:
    """A quotation in marks, its own made single; one's own thought without a source; an unknown source as a TK."""
    known = OpenPaper(demo_paper).look()
    said = put_note(known, Note("n", "lund-1999", "60", quotation='She was "not\nto be spoken to."'))
    assert said == "“She was ‘not to be spoken to.’” (Lund 60)"
    assert put_note(known, Note("n", "lund-1999", "60", remark="She read.", kind="summary")) == "She read. (Lund 60)"
    assert put_note(known, Note("n", "lund-1999", remark="Was it so?", kind="thought")) == "Was it so?"
    assert put_note(known, Note("n", "nobody", "1", remark="So.")) == "So. [TK: the source]"


def test_an_empty_paper_has_nothing_at_hand(tmp_path: Path) -> None:
    """No heading stands over nothing; a point without a source has no citation."""
    (tmp_path / "draft.md").write_text("Words.\n", "utf-8")
    assert list_at_hand(OpenPaper(tmp_path).look(), tmp_path) == ()
    points = {"points": [{"text": "Tides scour.", "sources": ["nobody"]}]}
    (tmp_path / "points.json").write_text(json.dumps(points), "utf-8")
    ((heading, (one,)),) = list_at_hand(OpenPaper(tmp_path).look(), tmp_path)
    assert (heading, one.puts) == ("Points", "[NB: Tides scour.]")
