"""Drafts and lists of sources from elsewhere, brought into the paper."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from fairhand.citing.entry_files import ENDINGS, read_entries
from fairhand.desk.paper_files import read_paper
from fairhand.desk.seen import FileSeen, see_file
from fairhand.desk.writing import write_file
from fairhand.errors import UnknownFormat
from fairhand.press.pandoc import run_pandoc
from fairhand.reading.taking import read_taken, take_request
from fairhand.session.saving import keep_record
from fairhand.session.sources import LIST, join_list

DRAFTS = (".docx", ".odt")


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
    elif kind in ENDINGS:
        yield from _take_list(folder, seen)
    else:
        message = f"{file.name}: neither a draft (.docx, .odt) nor a list of sources (.bib, .ris, .nbib, .json)"
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


def _take_list(folder: Path, seen: FileSeen) -> Iterator[str]:
    found, problems = read_entries(seen.data, seen.name)
    joined = join_list(folder, found, "taken")
    yield f"{len(joined.new)} sources of {seen.name} joined {LIST}: {', '.join(joined.new) or 'none'}."
    if joined.there:
        yield f"There already, and left as they are: {', '.join(joined.there)}."
    yield from map(str, problems)
