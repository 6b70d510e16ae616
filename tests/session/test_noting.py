"""Notes taken from within the program."""

from __future__ import annotations

import datetime as dt
from dataclasses import replace
from pathlib import Path

import pytest

from fairhand.errors import DraftChangedOnDisk, FairhandError
from fairhand.model.note import Note
from fairhand.model.source import Page, SourceText
from fairhand.session.editing import state_of
from fairhand.session.research.noting import keep_note, list_notes, remove_note

HOUR = dt.datetime(2027, 2, 8, 12, tzinfo=dt.UTC)
PAGES = (
    Page("7", "Silt settles at the turn of the tide, and the ebb\nscours the channel again before it can harden."),
    Page("8", "Nobody had asked why the ebb scours the channel."),
)
TEXTS = {"lind-2019": SourceText("lind-2019", PAGES, paged=True)}
NOTE = Note("", "lind-2019", page="7", quotation="the ebb scours the channel", remark="so fast?")


def test_a_quotation_is_kept_with_what_stands_around_it(tmp_path: Path) -> None:
    """On its own page, 32 code points either way, wherever the source breaks its lines."""
    note = keep_note(tmp_path, NOTE, "", TEXTS, HOUR)
    assert note.before == "ettles at the turn of the tide, and "[-32:]
    assert note.after == " again before it can harden."
    assert note.when == "2027-02-08T12:00:00+00:00"
    assert list_notes(tmp_path) == ((note,), ())
    elsewhere = keep_note(tmp_path, replace(NOTE, page="9"), "", TEXTS, HOUR)
    assert (elsewhere.before, elsewhere.after) == ("", "")
    assert len(list_notes(tmp_path)[0]) == 2


def test_a_note_sent_twice_is_one(tmp_path: Path) -> None:
    """The second time nothing is written."""
    first = keep_note(tmp_path, NOTE, "", TEXTS, HOUR)
    assert keep_note(tmp_path, NOTE, "", TEXTS, HOUR) == first
    assert list_notes(tmp_path)[0] == (first,)


@pytest.mark.parametrize("empty", [Note("", "", remark="whose?"), Note("", "lind-2019", page="7")])
def test_a_note_needs_a_source_and_words(tmp_path: Path, empty: Note) -> None:
    """It is refused, and no file is made."""
    with pytest.raises(FairhandError, match="needs its source, and a quotation or a remark"):
        keep_note(tmp_path, empty, "", TEXTS, HOUR)
    assert list(tmp_path.iterdir()) == []


def test_a_corrected_remark_leaves_the_place_alone(tmp_path: Path) -> None:
    """What stands around the quotation is kept where the text is not at hand; another page is looked up anew."""
    note = keep_note(tmp_path, NOTE, "", TEXTS, HOUR)
    said = keep_note(tmp_path, replace(note, remark="faster"), state_of(note), {}, HOUR)
    assert said == replace(note, remark="faster")
    moved = keep_note(tmp_path, replace(said, page="8"), state_of(said), TEXTS, HOUR)
    assert (moved.before, moved.after) == ("Nobody had asked why ", ".")


def test_a_note_changed_meanwhile_is_not_overwritten(tmp_path: Path) -> None:
    """Nor taken out; a change to another note is no hindrance."""
    note = keep_note(tmp_path, NOTE, "", TEXTS, HOUR)
    was = state_of(note)
    keep_note(tmp_path, Note("", "lind-2019", remark="another"), "", TEXTS, HOUR)
    other = keep_note(tmp_path, replace(note, remark="theirs"), was, TEXTS, HOUR)
    with pytest.raises(DraftChangedOnDisk, match="changed meanwhile"):
        keep_note(tmp_path, replace(note, remark="mine"), was, TEXTS, HOUR)
    with pytest.raises(DraftChangedOnDisk, match="changed meanwhile"):
        remove_note(tmp_path, note.id, was)
    remove_note(tmp_path, note.id, state_of(other))
    assert [one.remark for one in list_notes(tmp_path)[0]] == ["another"]
    with pytest.raises(DraftChangedOnDisk, match="has gone"):
        keep_note(tmp_path, replace(note, remark="mine"), was, TEXTS, HOUR)
