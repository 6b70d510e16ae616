"""A file as it was when it was looked at."""

from __future__ import annotations

import hashlib
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

from fairhand.desk.decoding import Decoded, decode_text
from fairhand.errors import FairhandError, FileTooLarge, FileUnreadable
from fairhand.model.problem import Problem

TEXT_SUFFIXES = frozenset({".txt", ".md", ".htm", ".html", ".xhtml", ".json", ".jsonl", ".toml"})
"""Endings of files that are text."""

MOST_TEXT_BYTES = 8 * 2**20
"""The most that is read of a text file: some 1.3 million words."""

MOST_BYTES = 96 * 2**20
"""The most that is read of any other file: a scanned book still fits."""


@dataclass(frozen=True)
class FileSeen:
    """One file on disk; its bytes are read when first asked for, and then kept."""

    name: str
    """As ``PaperFiles.files`` names it: its path in the paper's folder, with ``/``; a course's from ``courses/``."""
    path: Path
    """Where it stands."""
    size: int
    """Bytes."""
    mtime_ns: int
    """When it was last changed, in nanoseconds since 1970."""

    @cached_property
    def data(self) -> bytes:
        """Its bytes.

        Raises:
            FileTooLarge: It is larger than is read.
            FileUnreadable: It has gone, or may not be read.
        """
        most = most_bytes(self.name)
        try:
            with self.path.open("rb") as file:
                data = file.read(most + 1)
        except OSError as error:
            raise FileUnreadable(
                Problem(self.name, f"it cannot be read ({error.strerror})", "see that it is there and yours to read")
            ) from error
        if len(data) > most:
            raise FileTooLarge(_too_large(self.name, max(self.size, len(data))))
        return data

    @cached_property
    def sha256(self) -> str:
        """The hash of its bytes, in hexadecimal: what ``write_file`` takes as ``seen``."""
        return hash_bytes(self.data)

    @cached_property
    def decoded(self) -> Decoded:
        """Its text with the encoding that it was read in.

        Raises:
            FileUnreadable: It is no text.
        """
        return decode_text(self.data, self.name)

    @property
    def text(self) -> str:
        """Its text, without a byte order mark, line ends as they stand."""
        return self.decoded.text


def hash_bytes(data: bytes) -> str:
    """The SHA-256 of some bytes, in hexadecimal."""
    return hashlib.sha256(data).hexdigest()


def most_bytes(name: str) -> int:
    """The most that is read of a file of that name, in bytes."""
    return MOST_TEXT_BYTES if Path(name).suffix.lower() in TEXT_SUFFIXES else MOST_BYTES


def see_file(path: Path, name: str) -> FileSeen:
    """The file at a path as it is now, its bytes not yet read.

    Args:
        path: Where it stands.
        name: What it is called in messages.

    Raises:
        FileUnreadable: Nothing stands there, or no ordinary file.
        FileTooLarge: It is larger than is read.
    """
    try:
        stat = path.stat()
    except OSError as error:
        raise FileUnreadable(
            Problem(name, f"it cannot be reached ({error.strerror})", "see that it, or what it links to, is there")
        ) from error
    if not path.is_file():
        raise FileUnreadable(Problem(name, "it is no ordinary file", "put a file of that name there"))
    if stat.st_size > most_bytes(name):
        raise FileTooLarge(_too_large(name, stat.st_size))
    return FileSeen(name, path, stat.st_size, stat.st_mtime_ns)


def _too_large(name: str, size: int) -> Problem:
    return Problem(
        name,
        f"it is {size / 2**20:.0f} MB, and no more than {most_bytes(name) // 2**20} MB of such a file is read",
        "split it, or put a smaller copy there",
    )


def tell_problem(error: FairhandError) -> Problem:
    """The problem that an error tells of, so that the rest can still be read.

    An error carries a problem, or the same as one line: where, what, and what to do.

    >>> tell_problem(FileUnreadable(Problem("a.txt", "it is empty", "write it")))
    Problem(where='a.txt', what='it is empty', mend='write it')
    >>> tell_problem(FileUnreadable("a.txt: it is empty; write it"))
    Problem(where='a.txt', what='it is empty', mend='write it')
    """
    told = error.args[0] if error.args else ""
    if isinstance(told, Problem):
        return told
    where, _, rest = str(told).partition(": ")
    what, _, mend = rest.rpartition("; ")
    return Problem(where, what or rest, mend if what else "see that file")
