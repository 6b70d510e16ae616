"""A paper that came back: its marks and comments kept, its estimates held against what was, the whole put away."""

from __future__ import annotations

import datetime as dt
import os
import secrets
import zipfile
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from fairhand.desk.disk import add_file, lock_folder, writable
from fairhand.desk.paper_files import read_paper
from fairhand.desk.places import CACHE, DONE, desk_of, find_desk, list_done
from fairhand.errors import DeskError, FairhandError, FolderNotWritable, NoPaperHere, PaperExistsAlready
from fairhand.hand_in.account import WHERE, Mark, Returned, put_returned
from fairhand.language.counts import count_of
from fairhand.planning.pace import WHERE as LOG
from fairhand.planning.pace import Logged, Pace, read_log
from fairhand.readers.gathering import gather_remarks
from fairhand.reading.returned import RETURNED
from fairhand.session.editing import read_text, save_text
from fairhand.session.hand_in.handing_in import home_of_last, read_account_of, read_hand_in
from fairhand.session.saving import keep_record
from fairhand.session.schedule.overview import read_desk
from fairhand.session.schedule.plan import desk_now, desk_pace
from fairhand.session.sources.reading_bounded import read_returned_bounded


@dataclass(frozen=True, slots=True)
class Estimate:
    """One step of the paper: what it was planned at, and what it took."""

    step: str
    planned_minutes: int
    took_minutes: int | None
    """None where that was not said."""


@dataclass(frozen=True, slots=True)
class Done:
    """A paper that was put away."""

    title: str
    folder: Path
    mark: str


def keep_returned(
    folder: Path,
    *,
    mark: str = "",
    marks: Sequence[Mark] = (),
    comments: Sequence[str] = (),
    at: dt.datetime | None = None,
) -> Returned:
    """What came back stands in ``hand-in.toml``; what is given now is added to what was given before.

    Args:
        folder: The paper's folder.
        mark: The mark of the whole, as it was given; what was there before, where it is empty.
        marks: By criterion; a criterion that was there gets the new one.
        comments: One sentence or more each; one that is there already is not added again.
        at: The present hour; the clock's, where it is None.

    Raises:
        FileUnreadable: The file must be mended first.
        DraftChangedOnDisk: Another program wrote to the file at the same moment.
    """
    present = read_text(folder, WHERE)
    before = read_account_of(present.text).returned or Returned()
    by_name = {one.criterion: one for one in (*before.marks, *marks)}
    moment = desk_now(read_desk(desk_of(folder)), at).isoformat(timespec="seconds")
    plain = [" ".join(one.split()) for one in comments]
    returned = Returned(
        when=before.when or moment,
        mark=" ".join(mark.split()) or before.mark,
        marks=tuple(by_name.values()),
        comments=tuple(dict.fromkeys((*before.comments, *(one for one in plain if one)))),
    )
    save_text(folder, WHERE, put_returned(present.text, returned), present.seen)
    return returned


def keep_marked_copy(folder: Path, name: str, data: bytes) -> Path:
    """The file that came back stands beside what was handed in last; in the paper's folder, where nothing was.

    Raises:
        FolderNotWritable: The folder is closed or full.
    """
    return add_file(home_of_last(folder, read_hand_in(folder)) / f"returned {name}", data)


def read_comments(name: str, data: bytes) -> tuple[str, ...]:
    """The comments in a marked copy (DOCX, ODT, PDF), each with the words that it is about; none in another kind.

    Raises:
        FileUnreadable: It is of such a kind, and broken.
    """
    if Path(name).suffix.lower() not in RETURNED:
        return ()
    remarks = gather_remarks(read_returned_bounded(data, name, None), file=name)
    found = (one for one in remarks if one.kind == "comment" and one.said.strip())
    return tuple(f"{one.said.strip()}{_about(one.exact)}" for one in found)


def _about(words: str, most: int = 8) -> str:
    kept = words.split()
    told = " ".join(kept[:most]) + (" …" if len(kept) > most else "")
    return f" (on “{told}”)" if told else ""


def compare_estimates(folder: Path) -> tuple[tuple[Estimate, ...], Pace]:
    """What each step was planned at and took, by the paper's log, and the pace that plans now reckon with."""
    log, _ = read_log(read_text(folder, LOG).text)
    return tuple(_estimates(log)), desk_pace(desk_of(folder))


def _estimates(log: Sequence[Logged]) -> Iterator[Estimate]:
    for step in dict.fromkeys(one.step for one in log):
        said = [one for one in log if one.step == step and not one.left_out]
        if said:
            took = [one.took_minutes for one in said if one.took_minutes is not None]
            planned = max(one.planned_minutes for one in said)
            yield Estimate(step, planned, sum(took) if len(took) == len(said) else None)


def put_away(folder: Path) -> tuple[Path, Path]:
    """The whole paper stands in ``done/`` on its desk, its record with it, and beside it as an archive.

    The archive is made and read through before the folder is moved; nothing is deleted.

    Returns:
        The folder, and the archive.

    Raises:
        NoPaperHere: It stands on no desk.
        PaperExistsAlready: A paper of that name was put away before.
        FolderNotWritable: The desk is closed or full.
        DeskError: The archive does not read back as it was written.
    """
    desk = find_desk(folder)
    if desk is None or folder.parent.resolve() != desk.resolve():
        message = (
            f"{folder}: it stands on no desk, so it cannot be put away there; begin one with `fairhand desk --begin`"
        )
        raise NoPaperHere(message)
    keep_record(read_paper(folder))
    home = desk / DONE
    target, archive = home / folder.name, home / f"{folder.name}.zip"
    if target.exists() or archive.exists():
        message = f"{target}: a paper of that name was put away before; rename one of the two folders"
        raise PaperExistsAlready(message)
    with writable(desk):
        home.mkdir(exist_ok=True)
    with lock_folder(folder.resolve()):
        _archive(folder, archive)
    try:
        with writable(home):
            folder.rename(target)
    except FolderNotWritable:
        archive.unlink(missing_ok=True)  # nothing was put away, so that it can be tried again
        raise
    return target, archive


def _archive(folder: Path, archive: Path) -> None:
    aside = archive.with_name(f".{secrets.token_hex(6)}.part")
    with writable(archive.parent):
        try:
            with zipfile.ZipFile(aside, "w", zipfile.ZIP_DEFLATED, strict_timestamps=False) as made:
                for path in _all_files(folder):
                    made.write(path, f"{folder.name}/{path.relative_to(folder).as_posix()}")
            with zipfile.ZipFile(aside) as made:
                broken = made.testzip()
            if broken is not None:
                message = f"{broken}: it does not read back from the archive as it was written; nothing was moved"
                raise DeskError(message)
            with aside.open("rb") as file:
                os.fsync(file.fileno())
            aside.replace(archive)
        finally:
            aside.unlink(missing_ok=True)


def _all_files(folder: Path) -> Iterator[Path]:
    """Every file of a paper, what was printed too; what can be made anew is left out."""
    for path in sorted(folder.rglob("*")):
        if path.is_file() and path.relative_to(folder).parts[0] != CACHE and not path.name.endswith(".part"):
            yield path


def work_done(place: Path) -> tuple[Done, ...]:
    """The papers of a desk that were put away, by name, with their marks."""
    found = []
    for folder in list_done(find_desk(place) or place):
        try:
            returned = read_hand_in(folder).returned
            title = read_paper(folder).settings.title
        except FairhandError:
            returned, title = None, ""
        found.append(Done(title or folder.name, folder, returned.mark if returned else ""))
    return tuple(found)


def tell_returned(returned: Returned) -> str:
    """What came back, in a sentence.

    >>> tell_returned(Returned(mark="68", marks=(Mark("Argument", "18/25"),), comments=("Whose diary?",)))
    'It came back with 68; 1 mark by criterion; 1 comment.'
    """
    told = [returned.mark] if returned.mark else []
    told += [count_of(len(returned.marks), "mark") + " by criterion"] if returned.marks else []
    told += [count_of(len(returned.comments), "comment")] if returned.comments else []
    return f"It came back with {'; '.join(told)}." if told else "It came back."
