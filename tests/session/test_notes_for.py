"""Notes by source, page, question and point."""

from __future__ import annotations

from pathlib import Path

import pytest

from fairhand.errors import FairhandError
from fairhand.model.note import Note
from fairhand.readiness.analysis import Analysis
from fairhand.session.opened import OpenPaper
from fairhand.session.research.notes_for import count_for, lacks_page, notes_for, order_notes, refuse_strangers


@pytest.fixture
def known(demo_paper: Path) -> Analysis:
    """The demo's paper."""
    return OpenPaper(demo_paper).look()


def test_notes_stand_by_source_and_page(known: Analysis) -> None:
    """Sources in the order of their list, pages in the order of the text; those of no source on the list last."""
    notes = [
        Note("z", "nobody", remark="z"),
        Note("b", "osei-2014", page="120", remark="b"),
        Note("a", "osei-2014", page="118", remark="a"),
        Note("h", "haldane-2008", page="2", remark="h"),
    ]
    groups = order_notes(notes, known)
    order = [i for i in known.entries if i in ("osei-2014", "haldane-2008")]
    assert [group.source for group in groups] == [*order, "nobody"]
    assert [note.id for note in next(g for g in groups if g.source == "osei-2014").notes] == ["a", "b"]


def test_a_page_lacks_only_where_there_are_pages(known: Analysis) -> None:
    """A web page has none to be cited by, and a source that is not on the list is not asked about."""
    assert lacks_page(Note("a", "osei-2014", remark="a"), known)
    assert not lacks_page(Note("a", "museum-2020", remark="a"), known)
    assert not lacks_page(Note("a", "nobody", remark="a"), known)


def test_notes_are_counted_by_point() -> None:
    """Those that name none are not counted."""
    notes = (Note("a", "s", point="p1", question="q1"), Note("b", "s", point="p1"), Note("c", "s"))
    assert count_for(notes) == {"p1": 2}
    assert [one.id for one in notes_for(notes, question="q1")] == ["a"]
    assert notes_for(notes, question="q1", point="p2") == ()


@pytest.mark.parametrize(
    ("note", "what"),
    [
        (Note("", "nobody", remark="a"), "nobody: no source of the paper has that id; there are: "),
        (Note("", "osei-2014", remark="a", point="p99"), "p99: no point of the paper has that id; there are: p1"),
        (Note("", "osei-2014", remark="a", question="x"), "x: no question of the paper has that id; there are: "),
    ],
)
def test_strangers_are_refused_with_those_that_there_are(known: Analysis, note: Note, what: str) -> None:
    """One line that says what to choose from."""
    with pytest.raises(FairhandError) as refused:
        refuse_strangers(note, known)
    assert str(refused.value).startswith(what)
