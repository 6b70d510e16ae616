"""A source's text given, or replaced by a better one: the old file is set aside, and the notes are looked for anew."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from fairhand.desk.disk import add_file, lock_folder, writable
from fairhand.desk.paper_files import PICTURE_SUFFIXES, read_paper
from fairhand.desk.seen import FileSeen
from fairhand.desk.writing import write_file
from fairhand.errors import FileUnreadable
from fairhand.language.counts import count_of
from fairhand.model.entry import Entry
from fairhand.model.note import Note
from fairhand.model.problem import Problem
from fairhand.model.source import SourceText
from fairhand.reading.kinds import kind_of
from fairhand.session.research.noting import list_notes, place_note
from fairhand.session.sources.entries import add_text, name_text
from fairhand.session.sources.reading_bounded import read_source_bounded

ASIDE = "sources/set aside"
"""Where files that were replaced stand; nothing is read from there."""


@dataclass(frozen=True, slots=True)
class FoundAgain:
    """What became of the quotations noted from a source, in its text as it now stands."""

    there: tuple[Note, ...] = ()
    """Found on the page that the note gives, or that it does not give."""
    moved: tuple[tuple[Note, str], ...] = ()
    """Found on another page, with its label."""
    lost: tuple[Note, ...] = ()
    """Not found."""

    @property
    def told(self) -> str:
        """The same in a sentence; nothing where nothing was quoted.

        >>> FoundAgain((Note("a", "lind"),), ((Note("b", "lind", "7"), "9"),)).told
        'Of 2 noted quotations 1 stands where its note says, and 1 on another page (7 is 9 now).'
        """
        many = len(self.there) + len(self.moved) + len(self.lost)
        if not many:
            return ""
        told = []
        if self.there:
            stand = "stands where its note says" if len(self.there) == 1 else "stand where their notes say"
            told.append(f"{len(self.there)} {stand}")
        if self.moved:
            pages = ", ".join(dict.fromkeys(f"{note.page} is {label} now" for note, label in self.moved))
            told.append(f"{len(self.moved)} on another page ({pages})")
        if self.lost:
            told.append(
                f"{len(self.lost)} {'was' if len(self.lost) == 1 else 'were'} not found: look at the notes below"
            )
        return f"Of {count_of(many, 'noted quotation')} {', and '.join(told)}."


def give_text(folder: Path, entry: Entry, name: str, data: bytes) -> str:
    """The file is the source's text; one that it had before stands set aside, and loses nothing.

    Args:
        folder: The paper's folder.
        entry: The entry whose text it is.
        name: The name that the file came with.
        data: Its bytes.

    Returns:
        The name of the file that was set aside; empty where the source had none.

    Raises:
        UnknownFormat: Nothing here reads that kind of file.
        InputError: It cannot be read, or no text is in it though the source has one now.
        DraftChangedOnDisk: Another program changed the file meanwhile.
        FolderNotWritable: The folder is closed or full.
    """
    kind_of(data, name)
    target = name_text(entry.id, name)
    own = _own_texts(folder, entry)
    if not own:
        add_text(folder, entry, name, data)
        return ""
    if any(file.data == data and file.name == target for file in own):
        return ""  # sent twice
    if not read_source_bounded(data, name, entry, folder)[0].pages:
        mend = "the text that it has stays; give a file with text"
        raise FileUnreadable(Problem(name, "no text could be read in it", mend))
    with lock_folder(folder):
        own = _own_texts(folder, entry)
        with writable(folder):
            (folder / ASIDE).mkdir(parents=True, exist_ok=True)
        aside = [add_file(folder / ASIDE / Path(file.name).name, file.data) for file in own]
        present = next((file for file in own if file.name == target), None)
        write_file(folder, target, data, present.sha256 if present else None, how="taken")
        for file in own:
            if file.name != target:
                file.path.unlink(missing_ok=True)
    return f"{ASIDE}/{aside[0].name}"


def _own_texts(folder: Path, entry: Entry) -> Sequence[FileSeen]:
    """The files of the paper's own that the source may be read from; a photograph of it stays beside them."""
    files = read_paper(folder).find_source(entry.id)
    return [
        file
        for file in files
        if file.name.startswith("sources/") and Path(file.name).suffix.lower() not in PICTURE_SUFFIXES
    ]


def find_notes_again(folder: Path, source: str, text: SourceText | None) -> FoundAgain:
    """The quotations noted from a source, looked for in its text; nothing where there is no text."""
    there, moved, lost = [], [], []
    for note in list_notes(folder)[0] if text else ():
        if note.source != source or not note.quotation or text is None:
            continue
        if place_note(note, text):
            there.append(note)
        elif elsewhere := place_note(replace(note, page=""), text):
            moved.append((note, text.pages[elsewhere[0]].label or "without a label"))
        else:
            lost.append(note)
    return FoundAgain(tuple(there), tuple(moved), tuple(lost))
