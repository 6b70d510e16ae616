"""The writer's files written: never over what somebody else wrote, and never without the record."""

from __future__ import annotations

import datetime as dt
from pathlib import Path, PurePosixPath, PureWindowsPath

from fairhand.desk.decoding import decode_text
from fairhand.desk.disk import ABANDONED_SECONDS, lock_folder, put_file, sweep_unfinished, writable
from fairhand.desk.places import CACHE, OWN_FILES, RECORD
from fairhand.desk.record import keep_state
from fairhand.desk.seen import TEXT_SUFFIXES, FileSeen, hash_bytes, see_file
from fairhand.desk.state import How
from fairhand.errors import DeskError, DraftChangedOnDisk, FolderNotWritable, InputError


def write_file(
    folder: Path, name: str, data: bytes, seen: str | None, *, how: How = "written", at: dt.datetime | None = None
) -> FileSeen:
    """The file holds exactly the bytes given, and what it held before is in the record.

    The bytes go to a temporary file in the same folder, are flushed to the disk, and take the old file's place in one
    step (``os.replace``), with its mode. Of the writer's own files both the bytes found and the bytes written are
    states of the record before anything is replaced.

    Args:
        folder: The folder of a paper, a course or a desk.
        name: The file's path within it, with ``/``.
        data: What it shall hold.
        seen: The SHA-256 of the bytes that the change was made from; None where there was no file.
        how: How it came about, for the record.
        at: The moment that the record gives it; now, by default.

    Raises:
        DraftChangedOnDisk: The file is not the one that was seen; it is left as it is.
        FolderNotWritable: The folder is closed, full, or the name leads out of it.
        DeskError: The file is in another encoding than UTF-8, or somebody else has been writing for long.
    """
    folder = folder.resolve()
    target = place_within(folder, name)
    with lock_folder(folder):
        sweep_unfinished(target.parent, older_seconds=ABANDONED_SECONDS)
        found = _read_present(target, name)
        _refuse_changed(name, found, seen)
        if found is not None and target.suffix in TEXT_SUFFIXES:
            _refuse_other_encoding(name, found)
        with writable(folder):
            target.parent.mkdir(parents=True, exist_ok=True)
        if name in OWN_FILES:
            if found is not None:
                keep_state(folder, name, found, "changed outside", at=at)
            keep_state(folder, name, data, how, at=at)
        put_file(target, data, before=lambda: _refuse_changed(name, _read_present(target, name), seen))
    return see_file(target, name)


def place_within(folder: Path, name: str) -> Path:
    """The path of a name within a folder, links followed.

    Raises:
        FolderNotWritable: The name leads out of the folder, or to what only the program itself writes.
    """
    pure = PurePosixPath(name)
    outside = not pure.parts or ".." in pure.parts or pure.is_absolute() or "\\" in name or "\0" in name
    if not outside and not PureWindowsPath(name).drive:
        target = (folder / pure).resolve()
        ours = pure.parts[0] == CACHE or pure.parts[0].startswith(RECORD)
        if target.is_relative_to(folder.resolve()) and target != folder.resolve() and not ours:
            return target
    message = f"{name!r}: it does not lead to a file of its own in {folder}; give a name within that folder"
    raise FolderNotWritable(message)


def _read_present(target: Path, name: str) -> bytes | None:
    return see_file(target, name).data if target.exists() else None


def _refuse_changed(name: str, found: bytes | None, seen: str | None) -> None:
    present = None if found is None else hash_bytes(found)
    if present == seen:
        return
    what = (
        "it has gone" if present is None else "it stands there already" if seen is None else "it was changed meanwhile"
    )
    message = f"{name}: {what}; nothing was written: look at both and choose"
    raise DraftChangedOnDisk(message)


def _refuse_other_encoding(name: str, found: bytes) -> None:
    try:
        decoded = decode_text(found, name)
    except InputError as error:
        raise DeskError(str(error)) from error
    if decoded.encoding != "utf-8":
        message = f"{name}: it is in {decoded.spoken}, and is not rewritten in place; save it as UTF-8 first"
        raise DeskError(message)
