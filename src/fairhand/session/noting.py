"""Notes taken from within the program, in ``notes.jsonl``."""

from __future__ import annotations

import datetime as dt
import re
import uuid
from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path

from fairhand.desk.seen import hash_bytes
from fairhand.errors import DraftChangedOnDisk, FairhandError
from fairhand.model.note import Note
from fairhand.model.problem import Problem
from fairhand.model.source import SourceText
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
    """The note stands in the file, with the words around its quotation where these are found on its page.

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
    return *_place_of(note), note.remark


def _with_surroundings(note: Note, text: SourceText | None) -> Note:
    """The note with what stands around its quotation; nothing where its words are not found, wherever lines break."""
    pages = [page.text for page in text.pages if not note.page or page.label == note.page] if text else []
    words = re.compile(r"\s+".join(map(re.escape, note.quotation.split())))
    found = next(filter(None, map(words.search, pages)), None) if note.quotation else None
    if found is None:
        return replace(note, before="", after="")
    start, end = found.span()
    return replace(note, before=found.string[max(0, start - AROUND) : start], after=found.string[end : end + AROUND])
