"""Notes taken from within the program, in ``notes.jsonl``."""

from __future__ import annotations

import datetime as dt
import uuid
from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path

from fairhand.desk.seen import hash_bytes
from fairhand.errors import DraftChangedOnDisk, FairhandError
from fairhand.model.note import Note
from fairhand.model.problem import Problem
from fairhand.model.source import SourceText
from fairhand.model.span import Span
from fairhand.reading.found_again import find_again
from fairhand.reading.notes_file import WHERE, drop_note, put_note, read_notes
from fairhand.session.editing import Written, read_text, save_text, state_of

AROUND = 32
"""Code points of the source that are kept on either side of a quotation."""


def list_notes(folder: Path) -> tuple[tuple[Note, ...], tuple[Problem, ...]]:
    """The paper's notes in the order in which they were taken, and each line that cannot be read."""
    return read_notes(read_text(folder, WHERE).text)


def name_note(note: Note) -> str:
    """A short name of a note, for its address."""
    return hash_bytes(note.id.encode("utf-8", "replace"))[:16]


def keep_note(folder: Path, note: Note, was: str, texts: Mapping[str, SourceText], at: dt.datetime) -> Note:
    """The note stands in the file, its quotation as its page has it, with the words around it, where it is found there.

    Args:
        folder: The paper's folder.
        note: The note; without an id it is a new one.
        was: The state of the note that the change was made from; empty for a new one.
        texts: The sources' texts.
        at: The present hour.

    Raises:
        FairhandError: It says nothing, or not of which source.
        DraftChangedOnDisk: The note was changed meanwhile, or has gone.
    """
    if not note.source or not (note.quotation or note.remark):
        message = "A note needs its source, and a quotation or a remark: write one of the two."
        raise FairhandError(message)
    note = _as_it_stands(note, texts.get(note.source))
    present = read_text(folder, WHERE)
    before = _find_unchanged(present, note.id, was) if was else _find_alike(present, note)
    if before is not None and _says(before) == _says(note):
        return before  # sent twice, or nothing changed
    if before is None:
        note = replace(note, id=f"urn:uuid:{uuid.uuid4()}", when=at.isoformat(timespec="seconds"))
    if before is None or _place_of(before) != _place_of(note):
        note = _with_surroundings(note, texts.get(note.source))
    save_text(folder, WHERE, put_note(present.text, note), present.seen)
    return note


def remove_note(folder: Path, note_id: str, was: str) -> None:
    """The note is gone; what it was stays among the earlier states.

    Raises:
        DraftChangedOnDisk: The note was changed meanwhile, or has gone.
    """
    present = read_text(folder, WHERE)
    _find_unchanged(present, note_id, was)
    save_text(folder, WHERE, drop_note(present.text, note_id), present.seen)


def _find_unchanged(present: Written, note_id: str, was: str) -> Note:
    now = next((note for note in read_notes(present.text)[0] if note.id == note_id), None)
    if now is None or state_of(now) != was:
        message = f"{WHERE}: the note {'has gone' if now is None else 'was changed meanwhile'}; look at it again"
        raise DraftChangedOnDisk(message)
    return now


def _find_alike(present: Written, note: Note) -> Note | None:
    return next((one for one in read_notes(present.text)[0] if _says(one) == _says(note)), None)


def _place_of(note: Note) -> tuple[str, ...]:
    return note.source, note.page, note.quotation


def _says(note: Note) -> tuple[str, ...]:
    return *_place_of(note), note.remark, note.kind, note.question, note.point


def _with_surroundings(note: Note, text: SourceText | None) -> Note:
    """The note with what stands around its quotation; nothing where its words are not found, wherever lines break."""
    placed = place_note(note, text) if text else None
    if text is None or placed is None:
        return replace(note, before="", after="")
    page, (start, end) = text.pages[placed[0]].text, (placed[1].start, placed[1].end)
    return replace(note, before=page[max(0, start - AROUND) : start], after=page[end : end + AROUND])


def place_note(note: Note, text: SourceText) -> tuple[int, Span] | None:
    """On which page of a text the quotation of a note stands, from 0, and where; None where it is not found.

    The text may have been extracted anew since the note was taken: other line ends, hyphens and ligatures do not count.
    """
    for number, page in enumerate(text.pages):
        if not note.page or page.label == note.page:
            found = find_again(page.text, note.quotation, note.before, note.after)
            if found is not None:
                return number, found
    return None


def _as_it_stands(note: Note, text: SourceText | None) -> Note:
    """The note with its quotation as its source has it, on one line; as it was written, where it is not found there."""
    placed = place_note(note, text) if text else None
    if text is None or placed is None:
        return note
    return replace(note, quotation=" ".join(placed[1].of(text.pages[placed[0]].text).split()))
