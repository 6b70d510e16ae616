"""The published examples of annotations, right ones and wrong ones.

**Source**: W3C Web Annotation Data Model (2017), the working group's files ``correct`` and ``incorrect``.
"""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

from fairhand.model.note import Note
from fairhand.model.proof_mark import ProofMark, ProofPass
from fairhand.proof.pass_file import drop_line, put_line, read_passes
from fairhand.reading.annotation_form import find_fault
from fairhand.reading.notes_file import put_note, read_notes

OF_SEVERAL = {"anno9", "anno39", "anno40", "anno41", "collection1"}
"""Right, and no notes of one source: two targets, a composite, a list, independents, a collection."""


def read_examples(folder: Path) -> dict[str, str]:
    """Each example on one line, as ``notes.jsonl`` has them."""
    lines = {}
    for path in sorted(folder.glob("*.json")):
        text = path.read_text(encoding="utf-8")
        try:
            lines[path.stem] = json.dumps(json.loads(text))
        except ValueError:
            lines[path.stem] = " ".join(text.split())
    return lines


def test_right_examples_are_notes(outside_data: Callable[[str], Path]) -> None:
    """Each that is of one source; of those that select words, the words. Nothing that they say is lost by a remark."""
    examples = read_examples(outside_data("data/web-annotation/examples/model/wd2/examples/correct"))
    read = {name: read_notes(line)[0] for name, line in examples.items()}
    assert {name for name, notes in read.items() if not notes} == OF_SEVERAL
    quotations = {notes[0].quotation: notes[0] for notes in read.values() if notes}
    assert quotations["anotation"].before == "this is an "
    assert quotations["anotation"].after == " that has some"
    for name, notes in read.items():
        for note in notes:
            said = json.loads(examples[name])
            put = json.loads(put_note(examples[name], Note(**_fields(note), remark="so")))
            kept = {"body", "bodyValue", "target", "motivation"}
            assert {k: v for k, v in put.items() if k not in kept} == {k: v for k, v in said.items() if k not in kept}


def test_wrong_examples_are_refused(outside_data: Callable[[str], Path]) -> None:
    """Every one of the forty, with a word that says why; and each is kept as it stands."""
    examples = read_examples(outside_data("data/web-annotation/examples/model/wd2/examples/incorrect"))
    assert len(examples) == 40
    for name, line in examples.items():
        notes, (problem,) = read_notes(line)
        assert notes == (), name
        assert "it is no note (" in str(problem)
        assert put_note(line, Note("urn:new", "s", remark="so")).startswith(line)


def test_marks_stand_among_any_annotations(outside_data: Callable[[str], Path]) -> None:
    """Right or wrong, each example is left as it stands while marks come and go; what we write has no fault."""
    mark = ProofMark(
        "urn:uuid:1", "urn:uuid:0", "substitute", "recieve", "They ", " it.", words="receive", page=3, line=2
    )
    one = ProofPass("urn:uuid:0", "paper", "Jonas", begun="2027-02-08T12:00:00+00:00")
    for kind in ("correct", "incorrect"):
        examples = read_examples(outside_data(f"data/web-annotation/examples/model/wd2/examples/{kind}"))
        text = "".join(f"{line}\n" for line in examples.values())
        put = put_line(put_line(text, one), mark)
        assert put.startswith(text)
        assert read_passes(put) == ((one,), (mark,))
        assert drop_line(drop_line(put, mark.id), one.id) == text
        for line in put.removeprefix(text).splitlines():
            assert find_fault(json.loads(line)) == ""


def _fields(note: Note) -> dict[str, str]:
    return {name: getattr(note, name) for name in Note.__slots__ if name != "remark"}
