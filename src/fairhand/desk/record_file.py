"""The record's SQLite file: opened, its rows added and found, its damage told from a closed folder."""

from __future__ import annotations

import contextlib
import dataclasses
import sqlite3
from collections.abc import Iterator
from pathlib import Path

from fairhand.desk.delta import RUN, base_place, compress_state, expand_state
from fairhand.desk.disk import writable
from fairhand.desk.places import RECORD
from fairhand.desk.seen import hash_bytes
from fairhand.desk.state import BEFORE_ALL, How, Row
from fairhand.errors import DeskError, FolderNotWritable, RecordDamaged

_SCHEMA = """
CREATE TABLE IF NOT EXISTS state(
    seq INTEGER PRIMARY KEY, name TEXT, at TEXT, how TEXT, size INTEGER, sha256 TEXT,
    place INTEGER, base INTEGER, hash TEXT, blob BLOB)
"""
_ALL = "SELECT seq, name, at, how, size, sha256, place, base, hash FROM state ORDER BY seq"
_ONE = "SELECT seq, name, at, how, size, sha256, place, base, hash FROM state WHERE seq = ?"
_LAST = "SELECT seq FROM state WHERE name = ? OR ? IS NULL ORDER BY seq DESC LIMIT 1"
_ADD = "INSERT INTO state(seq, name, at, how, size, sha256, place, base, hash, blob) VALUES (?,?,?,?,?,?,?,?,?,?)"
FAULTS = (sqlite3.DatabaseError, UnicodeDecodeError)
"""What reading a damaged file may raise; the latter where the fault is in the words of SQLite's own complaint."""

_PATIENCE_SECONDS = 10.0
_LEAST_ROW_BYTES = 128
_BUSY = {sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED}
_CLOSED = {sqlite3.SQLITE_READONLY, sqlite3.SQLITE_CANTOPEN, sqlite3.SQLITE_FULL, sqlite3.SQLITE_PERM}
_TORN = {sqlite3.SQLITE_IOERR_READ, sqlite3.SQLITE_IOERR_SHORT_READ}
"""Of the system's errors those that tell of the file; all others, as of a disk that is full, tell of the disk."""


@contextlib.contextmanager
def open_to_read(folder: Path) -> Iterator[sqlite3.Connection | None]:
    """The record, to be read only; None where there is none yet.

    What a process that was killed left half done in it is taken back first, by its journal.

    Raises:
        RecordDamaged: It cannot be opened at all.
        FolderNotWritable: Something was left half done in it, and the folder is closed.
    """
    path = folder.resolve() / RECORD
    if not path.is_file() or not path.stat().st_size:
        yield None
        return
    mode = "rw" if path.with_name(f"{RECORD}-journal").exists() else "ro"
    with _told(path), contextlib.closing(_connect(path, mode)) as record:
        yield record


@contextlib.contextmanager
def open_to_write(folder: Path) -> Iterator[sqlite3.Connection]:
    """The record, held against other writers; what is done within is kept whole or, after an error, not at all.

    Raises:
        RecordDamaged: It cannot be opened at all.
        FolderNotWritable: The folder is closed or full.
        DeskError: Another process holds it for long.
    """
    path = folder.resolve() / RECORD
    with writable(path.parent), _told(path), contextlib.closing(_connect(path, "rwc")) as record:
        record.execute("PRAGMA synchronous = FULL")
        record.execute("BEGIN IMMEDIATE")
        record.execute(_SCHEMA)
        yield record
        record.execute("COMMIT")


def list_rows(record: sqlite3.Connection) -> list[Row]:
    """All rows, oldest first; of a file damaged in its midst, those that can still be reached."""
    try:
        return [Row(*values) for values in record.execute(_ALL)]
    except FAULTS:
        return list(_reach_rows(record))


def _reach_rows(record: sqlite3.Connection) -> Iterator[Row]:
    last = _last_row(record)
    ((pages,), (page_size,)) = (
        record.execute("PRAGMA page_count").fetchone(),
        record.execute("PRAGMA page_size").fetchone(),
    )
    most = pages * page_size // _LEAST_ROW_BYTES  # a damaged number may be beyond all sense
    for seq in range(1, min(last.seq if last else 0, most) + 1):
        with contextlib.suppress(*FAULTS):
            row = find_row(record, seq)
            if row:
                yield row


def find_row(record: sqlite3.Connection, seq: int) -> Row | None:
    """The row of that number, or None."""
    values = record.execute(_ONE, (seq,)).fetchone()
    return Row(*values) if values else None


def read_blob(record: sqlite3.Connection, seq: int) -> bytes:
    """The compressed bytes of a row.

    Raises:
        ValueError: There is no such row, or no bytes in it.
    """
    found = record.execute("SELECT blob FROM state WHERE seq = ?", (seq,)).fetchone()
    if not found or not isinstance(found[0], bytes):
        message = f"state {seq} has no bytes"
        raise ValueError(message)
    return bytes(found[0])


def read_state(record: sqlite3.Connection, row: Row) -> bytes:
    """The bytes of a state, exactly.

    Raises:
        ValueError: They, or some that they lean on, are damaged.
    """
    steps = [row]
    while (base := steps[-1].base) is not None:
        earlier = find_row(record, base)
        if earlier is None or earlier.seq >= steps[-1].seq or len(steps) > RUN.bit_length():
            message = f"state {base}, which it leans on, is not there"
            raise ValueError(message)
        steps.append(earlier)
    data: bytes | None = None
    for step in reversed(steps):
        data = expand_state(read_blob(record, step.seq), data, step.size)
        if hash_bytes(data) != step.sha256:
            message = f"the bytes of state {step.seq} are not those that were kept"
            raise ValueError(message)
    return data or b""


def add_row(record: sqlite3.Connection, name: str, data: bytes, how: How, at: str) -> Row:
    """The row of the bytes given as the last state of a file: a new one, or the present last where it is the same.

    Raises:
        RecordDamaged: The bytes would not come back.
    """
    last = _last_row(record)
    of_name = _last_row(record, name)
    sha256 = hash_bytes(data)
    if of_name and of_name.sha256 == sha256 and of_name.tell():
        return of_name
    place, base, base_data = _find_base(record, of_name)
    blob = compress_state(data, base_data)
    bare = Row((last.seq if last else 0) + 1, name, at, how, len(data), sha256, place, base)
    row = dataclasses.replace(bare, hash=bare.chain(str(last.hash) if last else BEFORE_ALL, blob))
    record.execute(_ADD, (*dataclasses.astuple(row), blob))
    try:
        read_state(record, find_row(record, row.seq) or row)
    except ValueError as error:  # the file's order is broken elsewhere: what was just put there is not found again
        message = f"{RECORD}: what is added to it does not come back ({error}); it is kept, and a new one begun"
        raise RecordDamaged(message) from error
    return row


def _find_base(record: sqlite3.Connection, last: Row | None) -> tuple[int, int | None, bytes | None]:
    """Place, base, and the base's bytes for the state after ``last``; a new run where the base is damaged."""
    wanted = last
    with contextlib.suppress(ValueError, TypeError):
        place = last.place + 1 if last else RUN
        while wanted and place < RUN:
            if wanted.place == base_place(place):
                return place, wanted.seq, read_state(record, wanted)
            earlier = wanted.base is not None and wanted.base < wanted.seq
            wanted = find_row(record, wanted.base) if earlier and wanted.base else None
    return 0, None, None


def _last_row(record: sqlite3.Connection, name: str | None = None) -> Row | None:
    found = record.execute(_LAST, (name, name)).fetchone()
    return find_row(record, found[0]) if found else None


def _connect(path: Path, mode: str) -> sqlite3.Connection:
    record = sqlite3.connect(f"{path.as_uri()}?mode={mode}", uri=True, timeout=_PATIENCE_SECONDS, isolation_level=None)
    record.text_factory = lambda data: data.decode("utf-8", errors="replace")
    return record


@contextlib.contextmanager
def _told(path: Path) -> Iterator[None]:
    """What SQLite refuses within the block is told as one of our errors."""
    try:
        yield
    except FAULTS as error:
        whole = getattr(error, "sqlite_errorcode", sqlite3.SQLITE_CORRUPT)
        code = whole & 0xFF
        if code in _BUSY:
            message = f"{path}: another window is writing to it; wait for it, or close it"
            raise DeskError(message) from error
        if code in _CLOSED or (code == sqlite3.SQLITE_IOERR and whole not in _TORN):
            message = f"{path.parent}: the record cannot be written there ({error}); make room, or open the folder"
            raise FolderNotWritable(message) from error
        message = f"{path}: it cannot be read as a record ({error}); it is kept, and a new one begun at the next save"
        raise RecordDamaged(message) from error
