"""The list of sources changed from within the program: added to, corrected, and given its texts."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from pathlib import Path, PurePath

from fairhand.citing.csl_json import list_records, write_csl_json
from fairhand.citing.entries import read_entry
from fairhand.citing.entry_files import read_entries
from fairhand.citing.entry_form import fields_of, fill_record
from fairhand.citing.entry_list import Joined, drop_record, join_records, put_record
from fairhand.desk.paper_files import SOURCE_SUFFIXES, PaperFiles, read_paper
from fairhand.desk.seen import hash_bytes
from fairhand.desk.state import How
from fairhand.desk.writing import write_file
from fairhand.errors import DeskError, DraftChangedOnDisk, FairhandError, FileUnreadable, UnknownFormat
from fairhand.language.json_text import write_json
from fairhand.model.entry import Entry
from fairhand.model.problem import Problem
from fairhand.reading.kinds import kind_of
from fairhand.session.loading import load_entries
from fairhand.session.saving import keep_record

LIST = "sources.json"
_NOT_IN_NAMES = re.compile(r"[^\w.-]+")
_LONGEST_NAME = 80
"""Code points of a file's name: none is over 255 bytes then, whatever its letters and its ending."""


def join_list(folder: Path, found: Iterable[Entry], how: How = "written") -> Joined:
    """The entries that neither the paper's list nor its course's has stand at its end; what was there stays.

    Raises:
        FileUnreadable: The list is no list of records, and must be mended first.
        DraftChangedOnDisk: It was changed meanwhile.
    """
    files, records = open_list(folder)
    longer, joined = join_records(records, found, load_entries(files, []))
    if joined.new:
        write_list(files, longer, how)
    return joined


def add_lists(folder: Path, sent: Iterable[tuple[bytes, str]]) -> Joined:
    """The sources of lists in BibTeX, RIS or CSL-JSON have joined the paper's own.

    Args:
        folder: The paper's folder.
        sent: The bytes of each list, with the name that the problems in it are told by.

    Raises:
        FileUnreadable: Nothing in them could be read, or the paper's list must be mended first.
    """
    found: list[Entry] = []
    problems: list[Problem] = []
    for data, where in sent:
        entries, faults = read_entries(data, where)
        found += entries
        problems += faults
    if not found:
        raise FileUnreadable(problems[0] if problems else "There is no source in what was sent: give at least one.")
    return replace(join_list(folder, found), problems=tuple(problems))


def add_record(folder: Path, kind: str, written: Mapping[str, str]) -> str:
    """A source written by hand stands in the list, once however often it is sent; its id is returned.

    Args:
        folder: The paper's folder.
        kind: The type of work.
        written: What was written, by the names of the fields.

    Raises:
        FairhandError: It has nothing to cite it by.
        FileUnreadable: The list is no list of records, and must be mended first.
    """
    entry, _ = read_entry(fill_record({"id": ""}, written, kind), LIST)
    if entry is None:
        message = "There is nothing to cite it by yet: write its title, or its authors."
        raise FairhandError(message)
    joined = join_list(folder, [entry])
    return (*joined.new, *joined.there)[0]


def state_of(entry: Entry) -> str:
    """A hash that changes when the entry's record does."""
    return hash_bytes(write_json(dict(entry.csl)).encode())


def change_record(folder: Path, entry: Entry, kind: str, written: Mapping[str, str]) -> None:
    """The record has what was written in its fields, and is otherwise as it was; a course's becomes the paper's own.

    Args:
        folder: The paper's folder.
        entry: The entry as it now stands.
        kind: The type of work.
        written: What was written, by the names of the fields.

    Raises:
        FairhandError: It would be left with nothing to cite it by.
        FileUnreadable: The list is no list of records, and must be mended first.
    """
    asked = {field.name for field in (*fields_of(kind, entry.csl), *fields_of(entry.type))}
    record = fill_record(entry.csl, {name: text for name, text in written.items() if name in asked}, kind)
    if read_entry(record, LIST)[0] is None:
        message = f"{entry.id}: it would have no title, author or address to cite; write one of them"
        raise FairhandError(message)
    files, records = open_list(folder)
    write_list(files, put_record(records, entry, record))


def remove_record(folder: Path, entry: Entry) -> None:
    """The source is not in the list any more; its text stays in the folder, and its record among the earlier states.

    Raises:
        DeskError: It is in the course's list, and not in the paper's.
        FileUnreadable: The list is no list of records, and must be mended first.
    """
    files, records = open_list(folder)
    left = drop_record(records, entry)
    if left is None:
        message = f"{entry.id}: it is in the course's list, which its papers share; take it out there"
        raise DeskError(message)
    write_list(files, left)


def add_text(folder: Path, entry: Entry, name: str, data: bytes) -> str:
    """The file stands among the sources under the entry's id; its new name is returned.

    Args:
        folder: The paper's folder.
        entry: The entry whose text it is.
        name: The name that the file came with.
        data: Its bytes.

    Raises:
        UnknownFormat: Nothing here reads that kind of file.
        FileUnreadable: It is empty, or not what its name says.
        DeskError: The source has a file already.
    """
    kind_of(data, name)
    target = name_text(entry.id, name)
    try:
        write_file(folder, target, data, None)
    except DraftChangedOnDisk as error:
        message = f"{target}: there is one already, and it was left as it is; move it away first"
        raise DeskError(message) from error
    return target


def name_text(entry_id: str, name: str) -> str:
    """The name of a source's text within the paper's folder.

    Args:
        entry_id: The source's id.
        name: The name that the file came with.

    Raises:
        UnknownFormat: Nothing here reads that kind of file.
    """
    suffix = PurePath(name).suffix.lower()
    if suffix not in SOURCE_SUFFIXES:
        message = f"{name}: that kind of file is not read; save it as PDF, DOCX, EPUB, HTML or plain text"
        raise UnknownFormat(message)
    return f"sources/{_NOT_IN_NAMES.sub('_', entry_id)[:_LONGEST_NAME].strip('._') or 'source'}{suffix}"


def open_list(folder: Path) -> tuple[PaperFiles, list[object]]:
    """The paper's files, every present state of them in the record, and the records of its list."""
    files = read_paper(folder)
    keep_record(files)
    present = files.files.get(LIST)
    return files, list_records(present.text) if present else []


def write_list(files: PaperFiles, records: Sequence[object], how: How = "written") -> None:
    """The list holds these records; what it held before is in the record.

    Raises:
        DraftChangedOnDisk: It was changed meanwhile.
    """
    present = files.files.get(LIST)
    write_file(files.folder, LIST, write_csl_json(records).encode(), present.sha256 if present else None, how=how)
