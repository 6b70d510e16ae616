"""Notes as W3C Web Annotations, one a line."""

from __future__ import annotations

import datetime as dt
import json
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.model.note import Note
from fairhand.reading.notes_file import drop_note, put_note, read_notes

NOTE = Note(
    "urn:uuid:1",
    "lind-2019",
    page="xiv",
    quotation="the ebb scours the channel",
    before="… twice a day ",
    after=", and the flood",
    remark="what carries the silt?",
    when="2027-02-08T12:00:00+00:00",
)
LABEL = st.text(max_size=12)


def one(annotation: object) -> Note:
    """The note that an annotation is read as."""
    (note,), problems = read_notes(json.dumps(annotation))
    assert problems == ()
    return note


def changed(annotation: dict[str, Any], note: Note) -> dict[str, Any]:
    """What becomes of an annotation's line when the note is put in its place."""
    found: dict[str, Any] = json.loads(put_note(json.dumps(annotation) + "\n", note))
    return found


def test_a_note_is_an_annotation_that_others_read() -> None:
    """Context, type, body, target and selectors are as the model has them: the quotation within its page.

    **Source**: W3C Web Annotation Data Model (2017), sections 3.1, 3.2.4, 4.2.1, 4.2.4 and 4.2.9; written after its
    examples, from memory.
    """
    line = put_note("", NOTE)
    assert line.endswith("}\n")
    assert json.loads(line) == {
        "@context": "http://www.w3.org/ns/anno.jsonld",
        "id": "urn:uuid:1",
        "type": "Annotation",
        "motivation": "commenting",
        "created": "2027-02-08T12:00:00+00:00",
        "body": [{"type": "TextualBody", "purpose": "commenting", "value": "what carries the silt?"}],
        "target": {
            "source": "lind-2019",
            "selector": {
                "type": "FragmentSelector",
                "value": "page=xiv",
                "refinedBy": {
                    "type": "TextQuoteSelector",
                    "exact": "the ebb scours the channel",
                    "prefix": "… twice a day ",
                    "suffix": ", and the flood",
                },
            },
        },
    }


@pytest.mark.parametrize(
    ("annotation", "note"),
    [
        ({"id": "a", "target": "lind-2019"}, Note("a", "lind-2019")),
        ({"id": "a", "target": {"id": "lind-2019"}}, Note("a", "lind-2019")),
        (
            {"id": "a", "bodyValue": "who counted?", "target": {"source": "lind-2019"}},
            Note("a", "lind-2019", remark="who counted?"),
        ),
        (
            {"id": "a", "body": {"type": "TextualBody", "value": "so"}, "target": {"source": "s"}},
            Note("a", "s", remark="so"),
        ),
        (  # an address is no remark, and neither is a tag
            {
                "id": "a",
                "body": ["http://example.org/post", {"purpose": "tagging", "value": "tide"}, {"value": "so"}],
                "target": {"source": "s"},
            },
            Note("a", "s", remark="so"),
        ),
        (  # selectors side by side, or the other way round
            {
                "id": "a",
                "target": {
                    "source": "s",
                    "selector": [
                        {"type": "TextQuoteSelector", "exact": "the ebb"},
                        {"type": "FragmentSelector", "value": "page=B%202&zoom=50"},
                    ],
                },
            },
            Note("a", "s", page="B 2", quotation="the ebb"),
        ),
        (  # a file's third page need not be page 3
            {
                "id": "a",
                "target": {
                    "source": "s",
                    "selector": {
                        "type": "FragmentSelector",
                        "conformsTo": "http://tools.ietf.org/rfc/rfc3778",
                        "value": "page=3",
                    },
                },
            },
            Note("a", "s"),
        ),
    ],
)
def test_the_forms_that_the_model_allows_are_read(annotation: object, note: Note) -> None:
    """Bodies and targets as strings, as objects and in lists.

    **Source**: W3C Web Annotation Data Model (2017), sections 3.2.2 to 3.2.5, 4.1 and 4.2.
    """
    assert one(annotation) == note


def test_what_a_note_does_not_say_is_kept() -> None:
    """Keys of the annotation, its other bodies, of its target and of the remark itself."""
    annotation = {
        "@context": ["http://www.w3.org/ns/anno.jsonld", {"x": "http://example.org/x"}],
        "id": "a",
        "type": ["Annotation", "x:Note"],
        "motivation": ["commenting", "linking"],
        "creator": {"name": "A. Reader"},
        "x": 0,
        "body": [
            {"type": "Choice", "items": [{"value": "un"}, {"value": "one"}]},
            {"type": "TextualBody", "language": "en", "value": "so"},
            {"type": "TextualBody", "value": "a second thought"},
            "http://example.org/post",
        ],
        "target": {
            "source": "s",
            "styleClass": "red",
            "selector": [
                {"type": "TextPositionSelector", "start": 4, "end": 9},
                {"type": "TextQuoteSelector", "exact": "ebb"},
            ],
        },
    }
    note = one(annotation)
    assert changed(annotation, note) == {**annotation}
    said = changed(annotation, Note(**{**_fields(note), "remark": "so it is"}))
    bodies = annotation["body"]
    assert isinstance(bodies, list)
    assert said == {**annotation, "body": [bodies[0], {**bodies[1], "value": "so it is"}, *bodies[2:]]}
    moved = changed(annotation, Note(**{**_fields(note), "page": "7"}))
    assert moved["target"]["styleClass"] == "red"
    assert moved["target"]["selector"]["refinedBy"]["exact"] == "ebb"


def _fields(note: Note) -> dict[str, str]:
    return {name: getattr(note, name) for name in Note.__slots__}


def test_a_remark_given_and_taken_back_leaves_a_valid_annotation() -> None:
    """The motivation follows, where it is one of ours; nothing empty is left behind."""
    bare = Note("a", "s", quotation="the ebb")
    first = json.loads(put_note("", bare))
    assert first["motivation"] == "highlighting"
    assert "body" not in first
    said = changed(first, Note("a", "s", quotation="the ebb", remark="so"))
    assert said["motivation"] == "commenting"
    back = changed(said, bare)
    assert back["motivation"] == "highlighting"
    assert not back["body"]
    assert "selector" not in changed(first, Note("a", "s", remark="so"))["target"]
    spoken = changed({"id": "a", "bodyValue": "so", "target": "s"}, Note("a", "s", remark="so it is"))
    assert [body["value"] for body in spoken["body"]] == ["so it is"]
    assert "bodyValue" not in spoken


@pytest.mark.parametrize(
    "line",
    [
        '{"broken',
        "7",
        '"target"',
        '{"id": "a"}',
        '{"id": "a", "target": {"items": ["s", "t"], "type": "List"}}',
        '{"id": ["a", "b"], "target": "s"}',
        '{"@context": "fish", "type": "Annotation", "target": "s"}',
        '{"created": "yesterday", "target": "s"}',
        '{"id": "a", "target": ["s", "t"]}',
        "[" * 100_000,
    ],
)
def test_a_line_that_is_no_note_is_told_of_and_kept(line: str) -> None:
    """With its number, on one line; the rest is read, and may be changed and taken out around it."""
    text = f"{put_note('', NOTE)}\n{line}\n"
    notes, (problem,) = read_notes(text)
    assert notes == (NOTE,)
    assert problem.where == "notes.jsonl, line 3"
    assert "\n" not in str(problem)
    assert put_note(text, Note("b", "t", remark="so")).startswith(text)
    assert drop_note(text, NOTE.id) == f"\n{line}\n"


def test_two_notes_of_one_id_are_told_apart() -> None:
    """The second is told of and kept, whatever becomes of the first."""
    text = put_note("", NOTE) + put_note("", Note(NOTE.id, "other", remark="so"))
    notes, (problem,) = read_notes(text)
    assert notes == (NOTE,)
    assert "another" in problem.mend
    assert read_notes(drop_note(text, NOTE.id))[0][0].source == "other"


def test_a_note_without_an_id_is_known_by_its_words() -> None:
    """It can be changed in its place, and has an id then."""
    text = '{"target": "s", "body": {"value": "so"}}\n'
    (note,), _ = read_notes(text)
    (again,), _ = read_notes(put_note(text, Note(note.id, "s", remark="so it is")))
    assert (again.id, again.remark) == (note.id, "so it is")


def test_half_a_letter_is_written_as_it_came() -> None:
    """No encoding holds it; the line is still one that can be saved."""
    text = '{"id": "a", "target": "s", "x": "\\ud800"}'
    put = put_note(text, Note("a", "s", remark="so"))
    put.encode()
    assert json.loads(put)["x"] == "\ud800"


WORDS = [st.text(min_size=1), LABEL, *(st.text() for _ in range(4))]


@given(
    st.builds(Note, st.from_regex(r"[a-z:0-9-]+", fullmatch=True), *WORDS, st.datetimes().map(dt.datetime.isoformat))
)
def test_every_note_comes_back_as_it_was(note: Note) -> None:
    """Whatever words it holds, beside others; what stands around no quotation is not kept."""
    kept = note if note.quotation else Note(note.id, note.source, note.page, remark=note.remark, when=note.when)
    text = put_note('{"broken\n', note)
    assert read_notes(text)[0] == (kept,)
    assert put_note(text, kept) == text
    assert drop_note(text, note.id) == '{"broken\n'


@given(st.text(), st.text())
def test_any_text_is_read_and_none_of_its_lines_lost(text: str, remark: str) -> None:
    """A file that holds no notes gives none, and keeps what it holds."""
    notes, _ = read_notes(text)
    put = put_note(text, Note("urn:new", "s", remark=remark))
    assert put.startswith(text)
    assert len(read_notes(put)[0]) == len(notes) + 1
