"""The question and the point that a note is for, in its annotation."""

from __future__ import annotations

import json
from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st

from fairhand.model.note import Note
from fairhand.reading.notes_file import put_note, read_notes

NOTE = Note("n1", "lind-2019", page="4", remark="The ebb again.", kind="thought")
ID = st.text(st.characters(exclude_categories=["Cs"]), max_size=8)


def test_a_note_links_to_its_question_and_its_point() -> None:
    """Each as a place in the file that holds it, beside the remark and the kind.

    **Source**: W3C Web Annotation Data Model (2017), sections 3.2.5 and 3.3.5: a body whose purpose is *linking*.
    """
    line = put_note("", replace(NOTE, question="q 2", point="p1"))
    links = [body for body in json.loads(line)["body"] if body["purpose"] == "linking"]
    assert [link["source"] for link in links] == ["focus.toml#q%202", "points.json#p1"]
    assert {link["type"] for link in links} == {"SpecificResource"}


@given(ID, ID, ID, ID)
def test_links_are_said_changed_and_taken_back(one: str, other: str, question: str, point: str) -> None:
    """Whatever the ids are; what else the note says stays."""
    first = replace(NOTE, question=one, point=other)
    then = replace(NOTE, question=question, point=point)
    text = put_note("", first)
    assert read_notes(text) == ((first,), ())
    assert read_notes(put_note(text, then))[0] == (then,)
    assert json.loads(put_note(put_note(text, then), NOTE)) == json.loads(put_note("", NOTE))


def test_links_of_another_program_are_kept() -> None:
    """A body that links elsewhere is neither a question nor a point, and stays."""
    elsewhere = {"type": "SpecificResource", "purpose": "linking", "source": "http://example.org/p1"}
    line = json.dumps({"id": "n1", "target": "lind-2019", "body": [elsewhere, "http://example.org/2", {"purpose": 4}]})
    (note,) = read_notes(line)[0]
    assert (note.question, note.point) == ("", "")
    told = json.loads(put_note(line, replace(note, point="p1")))
    assert told["body"][:3] == [elsewhere, "http://example.org/2", {"purpose": 4}]
    assert json.loads(put_note(json.dumps(told), note))["body"] == told["body"][:3]
