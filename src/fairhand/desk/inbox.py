"""The folder ``inbox/`` of a paper: what a phone or a browser saves there waits to be taken in."""

from __future__ import annotations

from contextlib import suppress
from pathlib import Path

from fairhand.desk.disk import add_file, writable
from fairhand.desk.places import INBOX, list_folder

_UNFINISHED = frozenset((".part", ".partial", ".crdownload", ".download", ".tmp", ".temp", ".opdownload"))
"""Endings of files that are still being saved. **Source**: common practice of browsers."""


def list_inbox(folder: Path) -> tuple[Path, ...]:
    """The files that wait in a paper's inbox, by name; those that are still being saved are left out."""
    return tuple(
        path
        for path in list_folder(folder / INBOX)
        if path.is_file() and not path.is_symlink() and path.suffix.lower() not in _UNFINISHED
    )


def put_in_inbox(folder: Path, name: str, data: bytes) -> Path:
    """The bytes wait in the inbox, under the name or, where that is taken, under it with a number.

    Raises:
        FolderNotWritable: The folder is closed or full.
    """
    with writable(folder):
        (folder / INBOX).mkdir(exist_ok=True)
    return add_file(folder / INBOX / name, data)


def let_go(folder: Path, path: Path) -> None:
    """A file that was taken in leaves the paper's inbox; one that stands anywhere else stays where it is."""
    if path.absolute().parent == (folder / INBOX).absolute():
        with suppress(OSError):
            path.unlink()
