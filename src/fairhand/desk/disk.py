"""Files that are written whole or not at all."""

from __future__ import annotations

import contextlib
import os
import re
import secrets
import shutil
import time
from collections.abc import Callable, Iterator
from pathlib import Path

from fairhand.desk.places import CACHE
from fairhand.errors import DeskError, FolderNotWritable

_PATIENCE_SECONDS = 10.0
_HALF_WRITTEN = re.compile(r"\.[0-9a-f]{12}\.(?:part|new)")
ABANDONED_SECONDS = 600.0
"""What was not written to for so long is not being written any more."""


def put_file(path: Path, data: bytes, *, before: Callable[[], None] | None = None, flushed: bool = True) -> Path:
    """The file at a path of the writer's choosing holds exactly the bytes given, or is as it was.

    Args:
        path: Where; a link is followed.
        data: What it shall hold.
        before: Called at the last moment before the old file is replaced; it may raise to stop that.
        flushed: Whether to wait until the bytes are on the disk.

    Raises:
        FolderNotWritable: The folder is missing, closed or full.
    """
    path = path.resolve()
    temporary = path.with_name(f".{secrets.token_hex(6)}.part")
    with writable(path.parent):
        if path.exists() and not is_writable(path):
            raise PermissionError(13, f"{path.name} is read-only")
        try:
            _write_new(temporary, data, flushed=flushed)
            with contextlib.suppress(FileNotFoundError):
                temporary.chmod(path.stat().st_mode & 0o7777)
            if before:
                before()
            temporary.replace(path)
        finally:
            temporary.unlink(missing_ok=True)
        if flushed:
            _flush_folder(path.parent)
    return path


def add_file(path: Path, data: bytes) -> Path:
    """The bytes stand in a new file: at the path, or under its name with a number where that is taken.

    Raises:
        FolderNotWritable: The folder is missing, closed or full.
    """
    first = path
    for number in range(2, 10_000):
        with writable(path.parent), contextlib.suppress(FileExistsError):
            path.open("xb").close()
            return put_file(path, data)
        path = first.with_name(f"{first.stem} {number}{first.suffix}")
    message = f"{first}: ten thousand files of that name stand there; clear some away"
    raise FolderNotWritable(message)


def is_writable(path: Path) -> bool:
    """Whether a folder or file may be written to; one without a write bit is left alone by the almighty too."""
    try:
        return os.access(path, os.W_OK) and bool(path.stat().st_mode & 0o222)
    except OSError:
        return False


@contextlib.contextmanager
def writable(folder: Path) -> Iterator[None]:
    """What the system refuses within the block is told as a folder that cannot be written to.

    Raises:
        FolderNotWritable: The system refused.
    """
    try:
        if folder.is_dir() and not is_writable(folder):
            raise PermissionError(13, "it is read-only")
        yield
    except FileExistsError:
        raise
    except OSError as error:
        message = (
            f"{folder}: nothing can be written there ({error.strerror or error}); choose another folder, or open it"
        )
        raise FolderNotWritable(message) from error


@contextlib.contextmanager
def lock_folder(folder: Path) -> Iterator[None]:
    """No other process of this program writes to the folder meanwhile; one that holds it may take it again.

    Raises:
        FolderNotWritable: The folder is closed or full.
        DeskError: Another process holds it for long.
    """
    from filelock import FileLock, Timeout

    with writable(folder):
        (folder / CACHE).mkdir(exist_ok=True)
        lock = FileLock(folder / CACHE / "lock", timeout=_PATIENCE_SECONDS, is_singleton=True)
        try:
            lock.acquire()
        except Timeout as error:
            message = f"{folder}: another window is writing there; wait for it, or close it"
            raise DeskError(message) from error
    try:
        yield
    finally:
        lock.release()


def sweep_unfinished(folder: Path, *, older_seconds: float = 0.0) -> None:
    """What a process that was killed left half written in a folder is gone: files, and folders made aside.

    Args:
        folder: The folder.
        older_seconds: Only what nobody has written to for so long; who holds the folder's lock may sweep all.
    """
    before = time.time() - older_seconds
    for path in (*folder.glob(".*.part"), *folder.glob(".*.new")) if folder.is_dir() else ():
        with contextlib.suppress(OSError):
            if not _HALF_WRITTEN.fullmatch(path.name) or path.stat().st_mtime > before:
                continue
            if path.is_dir():
                shutil.rmtree(path, ignore_errors=True)
            else:
                path.unlink(missing_ok=True)


def _write_new(path: Path, data: bytes, *, flushed: bool) -> None:
    with path.open("xb") as file:
        file.write(data)
        if flushed:
            file.flush()
            os.fsync(file.fileno())


def _flush_folder(folder: Path) -> None:
    if hasattr(os, "O_DIRECTORY"):
        handle = os.open(folder, os.O_RDONLY | os.O_DIRECTORY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)
