"""Every state of the writer's own files: kept, listed, brought back, checked."""

from __future__ import annotations

import contextlib
import datetime as dt
import sqlite3
from collections.abc import Iterable, Iterator
from pathlib import Path

from fairhand.desk.clock import now
from fairhand.desk.disk import add_file, lock_folder, writable
from fairhand.desk.paper_files import PaperFiles
from fairhand.desk.places import OWN_FILES, RECORD
from fairhand.desk.record_file import (
    FAULTS,
    add_row,
    find_row,
    list_rows,
    open_to_read,
    open_to_write,
    read_blob,
    read_state,
)
from fairhand.desk.seen import hash_bytes
from fairhand.desk.state import BEFORE_ALL, How, Link, Row, State, name_state
from fairhand.errors import DeskError, NoSuchState, RecordDamaged
from fairhand.model.problem import Problem


def keep_state(folder: Path, name: str, data: bytes, how: How, *, at: dt.datetime | None = None) -> None:
    """The bytes are the last state of that file in the record; nothing is added where they are already.

    A record that cannot be opened is set aside, never deleted; what is whole in it goes into a new one.

    Args:
        folder: The paper's folder.
        name: The file's name.
        data: Its bytes.
        how: How they came about.
        at: When; now, by default.

    Raises:
        FolderNotWritable: The folder is closed or full.
        DeskError: Another process holds the record for long.
    """
    moment = (at or now()).astimezone(dt.UTC)
    try:
        _add_state(folder, name, data, how, moment)
    except RecordDamaged:
        with lock_folder(folder.resolve()):
            try:
                _add_state(folder, name, data, how, moment)  # another process may have begun a new one meanwhile
            except RecordDamaged:
                _begin_anew(folder.resolve(), moment)
                _add_state(folder, name, data, how, moment)


def notice_changes(paper: PaperFiles, *, at: dt.datetime | None = None) -> tuple[Problem, ...]:
    """Each of the writer's own files, as it was found at opening, is in the record.

    Args:
        paper: The paper as it was read.
        at: The moment; now, by default.

    Returns:
        One problem where the states cannot be kept.
    """
    try:
        with open_to_read(paper.folder) as record:
            known = {row.name: row.sha256 for row in list_rows(record)} if record else {}
    except RecordDamaged:
        known = {}
    try:
        for name in OWN_FILES:
            seen = paper.files.get(name)
            if seen and known.get(name) != seen.sha256:
                keep_state(paper.folder, name, seen.data, "changed outside", at=at)
    except DeskError as error:
        return (
            Problem(RECORD, f"saved states are not kept ({error})", "open the folder to writing to have them kept"),
        )
    return ()


def list_states(folder: Path, name: str | None = None) -> tuple[State, ...]:
    """The saved states, oldest first: of one file, or of all.

    Raises:
        RecordDamaged: The record cannot be opened at all.
    """
    with open_to_read(folder) as record:
        rows = list_rows(record) if record else []
    states = (row.tell() for row in rows)
    return tuple(state for state in states if state and name in (None, state.name))


def list_links(folder: Path) -> tuple[Link, ...]:
    """The chain of all states that can be read, oldest first, without their bytes.

    Raises:
        RecordDamaged: The record cannot be opened at all.
    """
    links = []
    with open_to_read(folder) as record:
        for row in list_rows(record) if record else ():
            with contextlib.suppress(*FAULTS, ValueError, TypeError):
                if record and row.tell():
                    links.append(Link(row, hash_bytes(read_blob(record, row.seq))))
    return tuple(links)


def state_bytes(folder: Path, seq: int) -> bytes:
    """The bytes of a saved state, exactly.

    Raises:
        NoSuchState: The record has none of that number.
        RecordDamaged: It, or one that it leans on, is damaged.
    """
    return _find_state(folder, seq)[1]


def read_states(folder: Path, seqs: Iterable[int]) -> dict[int, bytes]:
    """The bytes of several states by their numbers; those that are damaged, or not there, are left out.

    Raises:
        RecordDamaged: The record cannot be opened at all.
    """
    found: dict[int, bytes] = {}
    with open_to_read(folder) as record:
        if record is None:
            return found
        for seq in seqs:
            with contextlib.suppress(ValueError, TypeError):
                row = find_row(record, seq)
                if row:
                    found[seq] = read_state(record, row)
    return found


def bring_back(folder: Path, seq: int, *, time_zone: str = "") -> Path:
    """The state stands in a file of its own beside the present one, which is left as it is.

    Args:
        folder: The paper's folder.
        seq: The state's number.
        time_zone: The zone of the time in the new file's name; the machine's own, by default.

    Raises:
        NoSuchState: The record has none of that number.
        RecordDamaged: It, or one that it leans on, is damaged.
        FolderNotWritable: The folder is closed or full.
    """
    state, data = _find_state(folder, seq)
    path = folder / name_state(state, time_zone)
    if path.is_file() and path.read_bytes() == data:
        return path
    return add_file(path, data)


def check_record(folder: Path) -> tuple[Problem, ...]:
    """What is wrong with the record: each state's place in the chain, and its bytes; nothing, where all is whole.

    What this cannot tell: that the last states were cut off cleanly, or that all was written anew by somebody who
    wanted to. The record remembers for its writer, and proves nothing to others.
    """
    problems = list_set_aside(folder)
    try:
        with open_to_read(folder) as record:
            problems += _check_chain(record) if record else ()
    except RecordDamaged as error:
        problems.append(
            Problem(RECORD, "it cannot be read to its end", f"what can be will be kept ({error.__cause__})")
        )
    return tuple(problems)


def list_set_aside(folder: Path) -> list[Problem]:
    """Each damaged record that was set aside; what was whole in it is in the present one."""
    mend = "keep it, or delete it if the new record holds all that you need"
    found = sorted(folder.glob("record (damaged *.sqlite"))
    return [Problem(path.name, "a damaged record was set aside, and what was whole in it kept", mend) for path in found]


def _check_chain(record: sqlite3.Connection) -> Iterator[Problem]:
    mend = "it may be lost; the others can still be brought back"
    for (verdict,) in record.execute("PRAGMA integrity_check(20)"):
        if verdict != "ok":
            yield Problem(RECORD, f"its file is damaged ({verdict})", "copy it somewhere safe")
    before = BEFORE_ALL
    for row in list_rows(record):
        where = f"{RECORD}, state {row.seq}"
        try:
            if row.chain(before, read_blob(record, row.seq)) != row.hash or row.tell() is None:
                yield Problem(where, "it does not follow from the one before", mend)
            read_state(record, row)
        except (ValueError, TypeError) as error:
            yield Problem(where, f"its bytes are damaged ({error})", mend)
        before = row.hash


def _find_state(folder: Path, seq: int) -> tuple[State, bytes]:
    with open_to_read(folder) as record:
        row = find_row(record, seq) if record else None
        state = row.tell() if row else None
        if record is None or row is None or state is None:
            message = (
                f"state {seq}: the record of {folder.name} has none of that number; see `fairhand record --states`"
            )
            raise NoSuchState(message)
        try:
            return state, read_state(record, row)
        except (ValueError, TypeError) as error:
            message = f"state {seq}: it is damaged ({error}); bring back the one before or after it"
            raise RecordDamaged(message) from error


def _add_state(folder: Path, name: str, data: bytes, how: How, moment: dt.datetime) -> None:
    with open_to_write(folder) as record:
        add_row(record, name, data, how, moment.isoformat())


def _begin_anew(folder: Path, moment: dt.datetime) -> None:
    """The damaged record stands aside, and what is whole in it is in a new one."""
    aside = folder / f"record (damaged {moment:%Y-%m-%d %H.%M.%S}).sqlite"
    with writable(folder):
        (folder / RECORD).replace(aside)
        journal = folder / f"{RECORD}-journal"
        if journal.exists():
            journal.replace(aside.with_name(f"{aside.name}-journal"))
    whole = list(_salvage(aside))
    with open_to_write(folder) as record:
        for row, data in whole:
            add_row(record, row.name, data, row.how, row.at)


def _salvage(path: Path) -> Iterator[tuple[Row, bytes]]:
    """The whole states of a damaged record, as far as they can be reached one by one."""
    with contextlib.suppress(*FAULTS), contextlib.closing(sqlite3.connect(path)) as record:
        for row in list_rows(record):
            with contextlib.suppress(*FAULTS, ValueError, TypeError):
                if row.tell():
                    yield row, read_state(record, row)
