"""Drafts and lists of sources from elsewhere, brought into the paper."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from pathlib import Path

from fairhand.citing.entry_files import ENDINGS, read_entries
from fairhand.desk.paper_files import SOURCE_SUFFIXES, read_paper
from fairhand.desk.record import list_states
from fairhand.desk.seen import FileSeen, see_file
from fairhand.desk.writing import write_file
from fairhand.errors import FairhandError, UnknownFormat
from fairhand.fair_copy.reading_copy import PLEASE
from fairhand.language.counts import open_with
from fairhand.press.pandoc import run_pandoc
from fairhand.proof.comparison import compare_states
from fairhand.proof.joining import Joined, join_drafts
from fairhand.proof.revised import list_sentences, tell_revisions
from fairhand.readers.gathering import gather_remarks
from fairhand.readers.remarks_file import put_remarks
from fairhand.reading.returned import read_returned
from fairhand.reading.taking import read_taken, take_request
from fairhand.session.correction.readers import MARKS
from fairhand.session.drafting.printed_before import find_printed
from fairhand.session.editing import DRAFT, read_text, save_text
from fairhand.session.record.states import text_of
from fairhand.session.saving import keep_record
from fairhand.session.sources.entries import LIST, join_list

DRAFTS = (".docx", ".odt")
_PLAIN = (".md", ".markdown", ".txt")
"""The endings of the files that a draft is brought in from."""


def take_file(folder: Path, file: Path, *, refuse: bool = False, replace: bool = False) -> Iterator[str]:
    """The file is brought in: a draft becomes ``draft.md``, a list's sources join ``sources.json``.

    Of a draft that comes again, what was changed here meanwhile stands. What stood there before is kept in the record.
    What is said is what was done, and each fault.

    Args:
        folder: The paper's folder.
        file: The file.
        refuse: Whether the tracked changes of a draft are refused, and not accepted.
        replace: Whether the draft becomes the file's, whatever was changed here.

    Raises:
        UnknownFormat: It is neither a draft nor a list of sources that is read.
        FairhandError: It is a copy made for a reader, with the questions in it.
        FileUnreadable: It is broken or empty.
        DraftChangedOnDisk: The file to be written was changed meanwhile.
    """
    kind = file.suffix.lower()
    seen = see_file(file, file.name)
    if kind in DRAFTS:
        yield from take_draft(folder, seen.data, seen.name, refuse=refuse, replace=replace)
    elif kind in ENDINGS:
        yield from _take_list(folder, seen)
    else:
        lists = "(.bib, .ris, .nbib, .json)"
        message = f"{file.name}: neither a draft (.docx, .odt) nor a list of sources {lists}{_way_of(kind)}"
        raise UnknownFormat(message)


def _way_of(kind: str) -> str:
    """What is to be done with a file of another kind.

    >>> _way_of(".md")
    '; a draft in plain text is put into the folder as draft.md'
    """
    if kind in _PLAIN:
        return f"; a draft in plain text is put into the folder as {DRAFT}"
    return "; a source is taken in with fairhand add" if kind in SOURCE_SUFFIXES else ""


def take_draft(folder: Path, data: bytes, name: str, *, refuse: bool = False, replace: bool = False) -> Iterator[str]:
    """The draft of a word processor's file is ``draft.md``; the arguments and errors are those of ``take_file``."""
    kind = Path(name).suffix.lower()
    text, problems = read_taken(run_pandoc(take_request(data, kind, name, refuse=refuse)), name)
    if PLEASE in " ".join(text.split()):
        message = f"{name}: it is a copy made for a reader; fairhand readers --back takes in what was written into it"
        raise FairhandError(message)
    files = read_paper(folder)
    keep_record(files)
    present = files.files.get(DRAFT)
    was = present.text.replace("\r\n", "\n") if present else ""
    base = None if replace or not was.strip() else _taken_before(folder, was)
    printed = None if replace or not was.strip() or base is not None else _printed_before(folder, text, kind)
    written = write_file(folder, DRAFT, text.encode(), present.sha256 if present else None, how="taken")
    known = base if base is not None else printed
    joined = join_drafts(known, was, text) if known is not None else Joined(text)
    if joined.text != text:
        write_file(folder, DRAFT, joined.text.encode(), written.sha256)
    yield f"The draft of {name} is {DRAFT} now, {len(joined.text.split()):,} words long."
    if present:
        told = tell_revisions(list_sentences(compare_states(DRAFT, was, joined.text)))
        yield f"Against the draft that stood there it is revised {told}." if told else "No sentence of it was revised."
        yield f"The draft that stood there is in the record: fairhand record --file {DRAFT}"
    if printed is not None:
        yield "It is a print of the draft, worked on: what was not touched in it stands as you wrote it here."
    yield from _tell_joined(joined, counted=printed is None)
    yield from _take_written_in(folder, data, name, refuse=refuse)
    yield from map(str, problems)


def _taken_before(folder: Path, was: str) -> str | None:
    """The draft as it was last brought in, where it was changed here since; None where it was not."""
    taken = [state for state in list_states(folder, DRAFT) if state.how == "taken"]
    if not taken:
        return None
    base = text_of(folder, taken[-1].seq)
    return None if base == was else base


def _printed_before(folder: Path, text: str, kind: str) -> str | None:
    """The draft as it would come in from its own print, where the file is such a print, and the first to come in."""
    if any(state.how == "taken" for state in list_states(folder, DRAFT)):
        return None
    return find_printed(folder, text, kind)


def _tell_joined(joined: Joined, *, counted: bool) -> Iterator[str]:
    """What of the draft stands as it was changed here, and what both changed."""
    if joined.here and counted:
        told = open_with(joined.here, "passage that you changed here stands", "passages that you changed here stand")
        yield f"{told} as you left {'it' if joined.here == 1 else 'them'}."
    for here, there in joined.both:
        yield (
            f"Changed here and in the file; the file’s stands: “{_short(there)}”; here it was “{_short(here)}”."
            if there and here
            else f"Changed here and taken out in the file, and so out now: “{_short(here)}”."
            if here
            else f"Taken out here and changed in the file, and so in again: “{_short(there)}”."
        )


def _short(text: str, most: int = 14) -> str:
    words = text.split()
    return " ".join(words) if len(words) <= most else f"{' '.join(words[:most])} …"


def _take_written_in(folder: Path, data: bytes, name: str, *, refuse: bool) -> Iterator[str]:
    """What others wrote into the file: changes were settled, and comments are kept among the readers' remarks."""
    returned = read_returned(data, name)
    counted = Counter(one.kind for one in returned.remarks)
    if changes := counted["insertion"] + counted["deletion"]:
        done, other = ("refused", "accepts") if refuse else ("accepted", "refuses")
        way = "fairhand take without --refuse" if refuse else "fairhand take --refuse"
        told = f"{open_with(changes, 'tracked change was', 'tracked changes were')} {done}"
        yield f"{told}; {way} {other} them."
    comments = [one for one in gather_remarks(returned, "", name) if one.kind == "comment"]
    if comments:
        marks = read_text(folder, MARKS)
        text = put_remarks(marks.text, comments)
        if text != marks.text:
            save_text(folder, MARKS, text, marks.seen)
        yield f"{open_with(len(comments), 'comment is', 'comments are')} kept with their places: fairhand readers"


def _take_list(folder: Path, seen: FileSeen) -> Iterator[str]:
    found, problems = read_entries(seen.data, seen.name)
    joined = join_list(folder, found, "taken")
    yield f"{len(joined.new)} sources of {seen.name} joined {LIST}: {', '.join(joined.new) or 'none'}."
    if joined.there:
        yield f"There already, and left as they are: {', '.join(joined.there)}."
    yield from map(str, problems)
