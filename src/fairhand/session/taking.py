"""Drafts and lists of sources from elsewhere, brought into the paper."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator, Mapping
from pathlib import Path

from fairhand.citing.entry_files import ENDINGS, read_entries
from fairhand.desk.paper_files import read_paper
from fairhand.desk.seen import FileSeen, see_file
from fairhand.desk.writing import write_file
from fairhand.errors import UnknownFormat
from fairhand.language.counts import open_with
from fairhand.model.remark import Returned
from fairhand.press.pandoc import run_pandoc
from fairhand.proof.comparison import compare_states
from fairhand.proof.revised import list_sentences, tell_revisions
from fairhand.reading.returned_docx import read_returned_docx
from fairhand.reading.returned_odt import read_returned_odt
from fairhand.reading.taking import read_taken, take_request
from fairhand.session.saving import keep_record
from fairhand.session.sources import LIST, join_list

READERS: Mapping[str, Callable[[bytes, str], Returned]] = {".docx": read_returned_docx, ".odt": read_returned_odt}
"""What reads what others wrote into a draft, by the ending of its file."""
DRAFTS = tuple(READERS)


def take_file(folder: Path, file: Path, *, refuse: bool = False) -> Iterator[str]:
    """The file is brought in: a draft becomes ``draft.md``, a list's sources join ``sources.json``.

    What stood there before is kept in the record. What is said is what was done, and each fault.

    Args:
        folder: The paper's folder.
        file: The file.
        refuse: Whether the tracked changes of a draft (DOCX) are refused, and not accepted.

    Raises:
        UnknownFormat: It is neither a draft nor a list of sources that is read.
        FileUnreadable: It is broken or empty.
        DraftChangedOnDisk: The file to be written was changed meanwhile.
    """
    kind = file.suffix.lower()
    seen = see_file(file, file.name)
    if kind in DRAFTS:
        yield from _take_draft(folder, seen, kind, refuse=refuse)
    elif kind in ENDINGS:
        yield from _take_list(folder, seen)
    else:
        message = f"{file.name}: neither a draft (.docx, .odt) nor a list of sources (.bib, .ris, .nbib, .json)"
        raise UnknownFormat(message)


def _take_draft(folder: Path, seen: FileSeen, kind: str, *, refuse: bool) -> Iterator[str]:
    text, problems = read_taken(run_pandoc(take_request(seen.data, kind, seen.name, refuse=refuse)), seen.name)
    files = read_paper(folder)
    keep_record(files)
    present = files.files.get("draft.md")
    write_file(folder, "draft.md", text.encode(), present.sha256 if present else None, how="taken")
    words = len(text.split())
    yield f"The draft of {seen.name} is draft.md now, {words:,} words long."
    if present:
        told = tell_revisions(list_sentences(compare_states("draft.md", present.text, text)))
        yield f"Against the draft that stood there it is revised {told}." if told else "No sentence of it was revised."
        yield "The draft that stood there is in the record: fairhand record --file draft.md"
    yield from _tell_written_in(seen, kind, refuse=refuse)
    yield from map(str, problems)


def _tell_written_in(seen: FileSeen, kind: str, *, refuse: bool) -> Iterator[str]:
    """What others wrote into the file, counted."""
    counted = Counter(one.kind for one in READERS[kind](seen.data, seen.name).remarks)
    if changes := counted["insertion"] + counted["deletion"]:
        done, other = ("refused", "accepts") if refuse else ("accepted", "refuses")
        way = "fairhand take without --refuse" if refuse else "fairhand take --refuse"
        told = f"{open_with(changes, 'tracked change was', 'tracked changes were')} {done}"
        yield told + (f"; {way} {other} them." if kind == ".docx" else ".")
    if counted["comment"]:
        yield f"{open_with(counted['comment'], 'comment stands', 'comments stand')} in it, and none in the draft."


def _take_list(folder: Path, seen: FileSeen) -> Iterator[str]:
    found, problems = read_entries(seen.data, seen.name)
    joined = join_list(folder, found, "taken")
    yield f"{len(joined.new)} sources of {seen.name} joined {LIST}: {', '.join(joined.new) or 'none'}."
    if joined.there:
        yield f"There already, and left as they are: {', '.join(joined.there)}."
    yield from map(str, problems)
