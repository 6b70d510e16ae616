"""First readers of an open paper: who is asked, the copy they get, and what comes back."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, replace
from pathlib import Path

from fairhand.desk.disk import add_file, writable
from fairhand.desk.file_names import name_file
from fairhand.desk.paper_files import read_paper
from fairhand.desk.places import PRINTED, find_desk, list_papers
from fairhand.errors import FairhandError, NothingToPrint
from fairhand.fair_copy.reading_copy import Request, make_reading_copy
from fairhand.fair_copy.typesetting import to_typst
from fairhand.planning.pace import WHERE as LOG
from fairhand.planning.pace import read_log
from fairhand.readers import remarks_file
from fairhand.readers.asking import find_reading, say_cautions, say_day
from fairhand.readers.register import WHERE, Reader, drop_reader, plain_name, put_reader, read_register
from fairhand.session.editing import DRAFT, read_text, save_text
from fairhand.session.hand_in.printing import FORMS
from fairhand.session.opened import OpenPaper
from fairhand.session.saving import keep_record

MARKS = "marks.jsonl"


@dataclass(frozen=True, slots=True)
class Asked:
    """What came of asking a reader."""

    reader: Reader
    cautions: tuple[str, ...] = ()
    """What speaks against it; where there is any, nothing was done unless the writer said so."""
    path: Path | None = None
    """The copy; None where none was made."""
    left: int = 0
    """How many asides and TKs it leaves out."""


def ask_reader(paper: OpenPaper, wanted: Reader, kind: str = "docx", *, anyway: bool = False) -> Asked:
    """The reader stands in the register, and the copy made for reading in ``fair/``.

    Not so where something speaks against it and the writer has not said that it shall be.

    Args:
        paper: The paper.
        wanted: Who is asked what, due back when; the version and the day are filled in.
        kind: ``docx`` or ``pdf``.
        anyway: Whether cautions are overruled.

    Raises:
        FairhandError: Nobody is named, or the reader has this version already.
        NothingToPrint: There is no draft yet.
        FileUnreadable: The register must be mended first.
        DraftChangedOnDisk: Another program wrote to the register at the same moment.
        FolderNotWritable: The folder is closed or full.
    """
    known = paper.look()
    name = " ".join(wanted.name.split())
    if not name:
        message = "Name the reader."
        raise FairhandError(message)
    if not known.paper.draft.strip():
        message = f"{paper.folder / DRAFT}: the draft is empty or not there yet; nobody can read it"
        raise NothingToPrint(message)
    keep_record(read_paper(paper.folder))
    written = read_text(paper.folder, WHERE)
    readers = read_register(written.text)[0]
    draft = read_text(paper.folder, DRAFT).seen or ""
    if find_reading(readers, name, draft):
        message = f"{name} has this version already: each reader reads a version once; ask again when it has changed"
        raise FairhandError(message)
    today = known.paper.now.date() if known.paper.now else None
    reader = replace(wanted, name=name, draft=draft, sent=today, back=None)
    cautions = say_cautions(
        readers,
        name,
        draft,
        reader.stage,
        unruled=_count_unruled(paper.folder),
        revised=_is_done(paper.folder, "revision"),
        copy_edited=bool(_is_done(paper.folder, "copy-edit")),
        elsewhere=asked_elsewhere(paper.folder),
    )
    if cautions and not anyway:
        return Asked(reader, cautions)
    until = say_day(reader.due) if reader.due else ""
    data = _make_copy(paper, Request(name, until, reader.asked, reader.not_to_mind), kind)
    file = f"{paper.folder.name} for {name_file(name, 'a reader')}.{kind}"
    printed = paper.folder / PRINTED
    with writable(paper.folder):
        printed.mkdir(exist_ok=True)
    path = add_file(printed / file, data)
    reader = replace(reader, file=f"{PRINTED}/{path.name}")
    save_text(paper.folder, WHERE, put_reader(written.text, reader), written.seen)
    return Asked(reader, cautions, path, len(known.manuscript.left_matter))


def _make_copy(paper: OpenPaper, request: Request, kind: str) -> bytes:
    copy = make_reading_copy(paper.fair_copy(), request)
    if kind == "pdf":
        at = paper.look().paper.now
        return paper.engines.typeset(to_typst(copy, at.replace(microsecond=0) if at else None)).pdf
    return FORMS[kind](copy)


def forget_reader(folder: Path, name: str) -> Reader:
    """The last reading of that name is taken out of the register; it stays among its earlier states.

    Raises:
        FairhandError: There is none.
        DraftChangedOnDisk: Another program wrote to the register at the same moment.
    """
    register = read_text(folder, WHERE)
    reader = find_reading(read_register(register.text)[0], name)
    if reader is None:
        message = f"{name}: no such reader in {WHERE} of {folder.name}"
        raise FairhandError(message)
    save_text(folder, WHERE, drop_reader(register.text, reader), register.seen)
    return reader


def _count_unruled(folder: Path) -> Counter[str]:
    """How many remarks of each reader wait for the writer's word."""
    remarks = remarks_file.read_remarks(read_text(folder, MARKS).text)
    return Counter(plain_name(one.reader) for one in remarks if not one.ruling)


def _is_done(folder: Path, step: str) -> bool | None:
    """Whether a step is called done; None where nothing was ever said of any step."""
    log = read_log(read_text(folder, LOG).text)[0]
    return any(one.step == step and not one.left_minutes for one in log) if log else None


def asked_elsewhere(folder: Path) -> dict[str, list[str]]:
    """For each reader that another paper of the desk has out, the titles of those papers."""
    desk = find_desk(folder)
    found: dict[str, list[str]] = {}
    for other in list_papers(desk) if desk else ():
        if other.absolute() == folder.absolute():
            continue
        try:
            readers = read_register(read_text(other, WHERE).text)[0]
            title = read_paper(other).settings.title if any(one.is_out for one in readers) else ""
        except FairhandError:
            continue
        for one in readers:
            if one.is_out:
                found.setdefault(one.key, []).append(title or other.name)
    return found
