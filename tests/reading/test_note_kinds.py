"""The kind of a note in its annotation."""

from __future__ import annotations

import json
from dataclasses import replace

import pytest

from fairhand.model.note import KINDS, Note
from fairhand.reading.notes_file import put_note, read_notes

NOTE = Note("n1", "lind-2019", page="4", remark="The ebb again.")


@pytest.mark.parametrize("kind", KINDS)
def test_a_kind_is_kept_beside_the_remark(kind: str) -> None:
    """Said, changed and taken back, it leaves the remark as it was."""
    text = put_note("", replace(NOTE, kind=kind))
    assert read_notes(text) == ((replace(NOTE, kind=kind),), ())
    assert read_notes(put_note(text, NOTE))[0] == (NOTE,)


def test_another_programs_tags_are_kept() -> None:
    """A body that classifies in words of its own is no kind, and stays."""
    tag = {"type": "TextualBody", "purpose": "classifying", "value": "later"}
    line = json.dumps(
        {
            "@context": "http://www.w3.org/ns/anno.jsonld",
            "id": "n1",
            "type": "Annotation",
            "body": tag,
            "target": "lind-2019",
        }
    )
    (note,) = read_notes(line)[0]
    assert note.kind == ""
    told = json.loads(put_note(line, replace(note, kind="thought")))
    assert [body["value"] for body in told["body"]] == ["later", "thought"]


def test_a_note_of_a_value_alone_takes_a_kind() -> None:
    """The remark of another program stays when a kind is said."""
    line = json.dumps(
        {
            "@context": "http://www.w3.org/ns/anno.jsonld",
            "id": "n1",
            "type": "Annotation",
            "bodyValue": "Ebb.",
            "target": "lind-2019",
        }
    )
    (note,) = read_notes(put_note(line, replace(read_notes(line)[0][0], kind="summary")))[0]
    assert (note.remark, note.kind) == ("Ebb.", "summary")
