"""``notes.jsonl``: the writer's notes, one W3C Web Annotation a line.

A quotation is selected within its page. A line that is no note is told of and kept as it stands; of an annotation that
is changed, whatever a note does not say is kept too.

**Source**: W3C Web Annotation Data Model (2017), sections 3.2.4, 3.2.5, 4.2.1, 4.2.4 and 4.2.9. A page is known by its
label (``xiv``), so a fragment that conforms to RFC 3778, which counts a file's pages from 1, says nothing of it.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterator, Mapping
from urllib.parse import quote, unquote

from fairhand.language.json_text import write_json
from fairhand.language.line_files import add_line
from fairhand.model.note import Note
from fairhand.model.problem import Problem
from fairhand.reading.annotation_form import CONTEXT, find_fault
from fairhand.reading.note_bodies import (
    POINTS,
    QUESTIONS,
    as_list,
    list_bodies,
    put_kind,
    put_link,
    put_remark,
    read_kind,
    read_link,
    read_remark,
)

WHERE = "notes.jsonl"
PAGE = "page="
"""How a fragment that is a page begins; its label follows."""
COUNTED_PAGES = "rfc3778"
"""In what a fragment conforms to: its page is the file's, counted, and not the label."""
MEND = "mend it, or leave it: it is kept as it stands"


def read_notes(text: str) -> tuple[tuple[Note, ...], tuple[Problem, ...]]:
    """The notes that the text holds, no two of one id, with a problem for each line that is none.

    >>> notes, problems = read_notes(put_note("", Note("n1", "lind-2019", page="xiv", quotation="the tide")))
    >>> notes[0].page, notes[0].quotation, problems
    ('xiv', 'the tide', ())
    """
    notes: dict[str, Note] = {}
    problems = []
    for number, line in enumerate(text.split("\n"), 1):
        if not line.strip():
            continue
        try:
            note = _read_line(line)
        except ValueError as error:
            problems.append(Problem(f"{WHERE}, line {number}", f"it is no note ({error})", MEND))
            continue
        if note.id in notes:
            problems.append(
                Problem(f"{WHERE}, line {number}", "a note above has its id", "give it another, and it is read")
            )
        notes.setdefault(note.id, note)
    return tuple(notes.values()), tuple(problems)


def put_note(text: str, note: Note) -> str:
    """The file's text with the note in it: in place of the one with its id, or at the end."""
    lines = text.split("\n")
    at = _place(lines, note.id)
    if at is None:
        return add_line(text, _tell(note, {}))
    return "\n".join([*lines[:at], _tell(note, json.loads(lines[at])), *lines[at + 1 :]])


def drop_note(text: str, note_id: str) -> str:
    """The file's text without the note of that id; every other line stands as it was."""
    lines = text.split("\n")
    at = _place(lines, note_id)
    return text if at is None else "\n".join([*lines[:at], *lines[at + 1 :]])


def _place(lines: list[str], note_id: str) -> int | None:
    return next((number for number, line in enumerate(lines) if _id_of(line) == note_id), None)


def _id_of(line: str) -> str | None:
    try:
        return _read_line(line).id if line.strip() else None
    except ValueError:
        return None


def _read_line(line: str) -> Note:
    """The note on a line; a ``ValueError`` says in words why it is none."""
    try:
        found = json.loads(line)
    except (ValueError, RecursionError) as error:
        message = "not JSON"
        raise ValueError(message) from error
    if not isinstance(found, Mapping):
        message = "no annotation"
        raise ValueError(message)  # noqa: TRY004 - as a fault of the text, like those of the JSON reader
    if fault := find_fault(found):
        raise ValueError(fault)
    note = _read(found)
    if not note.source:
        message = "no target that names its source"
        raise ValueError(message)
    return note if note.id else _read({**found, "id": hashlib.sha256(line.encode("utf-8", "replace")).hexdigest()[:16]})


def _read(found: Mapping[str, object]) -> Note:
    """What an annotation says as a note; its source is empty where it names none."""
    target = found.get("target")
    target = {"source": target} if isinstance(target, str) else target if isinstance(target, Mapping) else {}
    quoted: Mapping[str, object] = {}
    page = ""
    bodies = list_bodies(found)
    for selector in _selectors(target.get("selector")):
        value = str(selector.get("value", ""))
        if selector.get("type") == "TextQuoteSelector":
            quoted = quoted or selector
        elif value.startswith(PAGE) and COUNTED_PAGES not in str(selector.get("conformsTo", "")):
            page = page or unquote(value.removeprefix(PAGE).partition("&")[0])
    return Note(
        id=str(found.get("id") or ""),
        source=source if isinstance(source := target.get("source", target.get("id")), str) else "",
        page=page,
        quotation=str(quoted.get("exact", "")),
        before=str(quoted.get("prefix", "")),
        after=str(quoted.get("suffix", "")),
        remark=read_remark(bodies),
        when=str(found.get("created", "")),
        kind=read_kind(bodies),
        question=read_link(bodies, QUESTIONS),
        point=read_link(bodies, POINTS),
    )


def _tell(note: Note, before: Mapping[str, object]) -> str:
    """A note as an annotation; of what was there before, all that did not change is kept."""
    was = _read(before)
    told: dict[str, object] = {
        "@context": CONTEXT,
        "type": "Annotation",
        "motivation": _motivation(note),
        "created": note.when,
        **before,
        "id": note.id,
    }
    if note.remark != was.remark and told["motivation"] == _motivation(was):
        told["motivation"] = _motivation(note)
    bodies = _bodies_of(note, was, list_bodies(before))
    if bodies is not None:
        told["body"] = bodies
        told.pop("bodyValue", None)
    present = before.get("target")
    kept = present if isinstance(present, Mapping) else {}
    target = {**{key: value for key, value in kept.items() if key != "id" or "source" in kept}, "source": note.source}
    if _selected(note) != _selected(was):
        target["selector"] = _selector_of(note)
    told["target"] = {key: value for key, value in target.items() if value}
    return write_json({key: value for key, value in told.items() if key in before or value})


def _motivation(note: Note) -> str:
    return "commenting" if note.remark else "highlighting"


def _selected(note: Note) -> tuple[str, ...]:
    return note.page, note.quotation, note.before, note.after


def _selector_of(note: Note) -> Mapping[str, object]:
    """The place of a note in its source: the quotation, within the page."""
    selector: dict[str, object] = {}
    if note.quotation:
        around = {"prefix": note.before, "suffix": note.after}
        selector = {"type": "TextQuoteSelector", "exact": note.quotation, **{k: v for k, v in around.items() if v}}
    if note.page:
        within = {"refinedBy": selector} if selector else {}
        selector = {"type": "FragmentSelector", "value": PAGE + quote(note.page, errors="replace"), **within}
    return selector


def _bodies_of(note: Note, was: Note, bodies: list[object]) -> list[object] | None:
    """The bodies with what the note says otherwise than before; None where it says the same."""
    changed = None
    if note.remark != was.remark:
        changed = put_remark(bodies, note.remark)
    if note.kind != was.kind:
        changed = put_kind(bodies if changed is None else changed, note.kind)
    for place, now, then in ((QUESTIONS, note.question, was.question), (POINTS, note.point, was.point)):
        if now != then:
            changed = put_link(bodies if changed is None else changed, place, now)
    return changed


def _selectors(value: object, depth: int = 4) -> Iterator[Mapping[str, object]]:
    """The selectors of a target, each followed by what refines it."""
    for selector in as_list(value):
        if isinstance(selector, Mapping):
            yield selector
            if depth:
                yield from _selectors(selector.get("refinedBy"), depth - 1)
