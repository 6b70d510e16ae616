"""Drafts and lists of sources from elsewhere, brought into the paper."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path

from fairhand.citing.bibtex import read_bibtex
from fairhand.citing.csl_json import read_csl_json, write_csl_json
from fairhand.citing.ris import read_ris
from fairhand.desk.paper_files import read_paper
from fairhand.desk.seen import FileSeen, see_file
from fairhand.desk.writing import write_file
from fairhand.errors import FileUnreadable, UnknownFormat
from fairhand.press.pandoc import run_pandoc
from fairhand.reading.taking import read_taken, take_request
from fairhand.session.saving import keep_record

DRAFTS = (".docx", ".odt")
LISTS = {".bib": read_bibtex, ".ris": read_ris, ".json": read_csl_json}
"""Who reads each kind of list of sources."""


def take_file(folder: Path, file: Path) -> Iterator[str]:
    """The file is brought in: a draft becomes ``draft.md``, a list's sources join ``sources.json``.

    What stood there before is kept in the record. What is said is what was done, and each fault.

    Raises:
        UnknownFormat: It is neither a draft nor a list of sources that is read.
        FileUnreadable: It is broken or empty.
        DraftChangedOnDisk: The file to be written was changed meanwhile.
    """
    kind = file.suffix.lower()
    seen = see_file(file, file.name)
    if kind in DRAFTS:
        yield from _take_draft(folder, seen, kind)
    elif kind in LISTS:
        yield from _take_list(folder, seen, kind)
    else:
        message = f"{file.name}: neither a draft (.docx, .odt) nor a list of sources (.bib, .ris, .json)"
        raise UnknownFormat(message)


def _take_draft(folder: Path, seen: FileSeen, kind: str) -> Iterator[str]:
    text, problems = read_taken(run_pandoc(take_request(seen.data, kind, seen.name)), seen.name)
    files = read_paper(folder)
    keep_record(files)
    present = files.files.get("draft.md")
    write_file(folder, "draft.md", text.encode(), present.sha256 if present else None, how="taken")
    words = len(text.split())
    yield f"The draft of {seen.name} is draft.md now, {words:,} words long."
    if present:
        yield "The draft that stood there is in the record: fairhand record --file draft.md"
    yield from map(str, problems)


def _take_list(folder: Path, seen: FileSeen, kind: str) -> Iterator[str]:
    found, problems = LISTS[kind](seen.text, seen.name)
    files = read_paper(folder)
    keep_record(files)
    present = files.files.get("sources.json")
    records = _records(present)
    known = {str(record.get("id")) for record in records if isinstance(record, dict)}
    new = [entry for entry in found if entry.id not in known]
    if new:
        joined = [*records, *json.loads(write_csl_json(new))]
        data = json.dumps(joined, ensure_ascii=False, indent=2).encode() + b"\n"
        write_file(folder, "sources.json", data, present.sha256 if present else None, how="taken")
    yield f"{len(new)} sources of {seen.name} joined sources.json: {', '.join(entry.id for entry in new) or 'none'}."
    there = [entry.id for entry in found if entry.id in known]
    if there:
        yield f"There already, and left as they are: {', '.join(there)}."
    yield from map(str, problems)


def _records(present: FileSeen | None) -> list[object]:
    """The records of ``sources.json`` as they stand, faulty ones too, so that none is lost when others join them."""
    if present is None:
        return []
    try:
        records = json.loads(present.text)
    except ValueError as error:
        records = error
    if not isinstance(records, list):
        message = f"sources.json: it is no list of records, so nothing can join it; mend it first ({records!s:.80})"
        raise FileUnreadable(message)
    return records
