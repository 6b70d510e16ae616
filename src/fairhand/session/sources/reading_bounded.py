"""A file of the paper's folder read within bounds, however it came there.

What is taken in is always read in a process apart. A file that the writer put there by hand is read at once, unless it
is packed so that it may expand without end: then it is read apart too.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import TypeVar

from fairhand.desk.cache import keep_cached, read_cached
from fairhand.desk.seen import hash_bytes
from fairhand.errors import FairhandError, FileUnreadable
from fairhand.model.entry import Entry
from fairhand.model.problem import Problem
from fairhand.model.remark import Returned
from fairhand.model.source import SourceText
from fairhand.press.apart import Limits
from fairhand.reading.packed import may_expand
from fairhand.reading.returned import read_returned
from fairhand.reading.sheet import read_sheet_text
from fairhand.reading.source import read_source

LIMITS = Limits(seconds=20, most_bytes=2 * 2**30)
"""What such a file may take: a book of a thousand pages takes a tenth of it."""
_MEND = "print it to a new PDF, or save its text"
T = TypeVar("T")
Given = tuple[bytes, str, Entry | None]


def read_source_bounded(
    data: bytes, file: str, entry: Entry | None, paper: Path
) -> tuple[SourceText, tuple[Problem, ...]]:
    """The text of a source, as `read_source` gives it.

    Args:
        data: The file's bytes.
        file: Its name.
        entry: Its bibliographic data, where there are any.
        paper: The folder in whose cache it is kept that reading it had to be stopped: it is not tried again.

    Raises:
        InputError: It cannot be read, or took too much time or memory.
    """
    given = (data, file, entry)
    return _bounded(_read_source, given, paper) if _is_suspected(data) else read_source(*given)


def read_sheet_bounded(data: bytes, file: str, paper: Path | None) -> tuple[str, tuple[Problem, ...]]:
    """The text of a sheet, as `read_sheet_text` gives it.

    Args:
        data: The file's bytes.
        file: Its name.
        paper: As `read_source_bounded` has it; None before there is a paper.

    Raises:
        InputError: It cannot be read, or took too much time or memory.
    """
    return _bounded(_read_sheet, (data, file, None), paper) if _is_suspected(data) else read_sheet_text(data, file)


def read_returned_bounded(data: bytes, file: str, paper: Path | None) -> Returned:
    """What was written into a copy that came back, as `read_returned` gives it.

    Args:
        data: The file's bytes.
        file: Its name.
        paper: As `read_source_bounded` has it; None where there is none to keep it for.

    Raises:
        InputError: It cannot be read, or took too much time or memory.
    """
    return _bounded(_read_returned, (data, file, None), paper) if _is_suspected(data) else read_returned(data, file)


def _is_suspected(data: bytes) -> bool:
    return data[:1024].lstrip().startswith(b"%PDF") and may_expand(data)


def _bounded(read: Callable[[Given], T], given: Given, paper: Path | None) -> T:
    from fairhand.press.apart import WorkKilled, do_apart  # with all that a process apart needs

    key = f"stopped {hash_bytes(given[0])}"
    stopped = Problem(given[1], "reading it took too much time or memory and was stopped", _MEND)
    if paper and read_cached(paper, key, "texts"):
        raise FileUnreadable(stopped)
    ((_, outcome),) = do_apart(read, [given], lanes=1, limits=LIMITS)
    if isinstance(outcome, FairhandError):
        raise outcome
    if isinstance(outcome, WorkKilled | MemoryError):
        if paper:
            keep_cached(paper, key, b"stopped", "texts")
        raise FileUnreadable(stopped) from outcome
    if isinstance(outcome, Exception):
        raise FileUnreadable(Problem(given[1], f"it broke the reader ({type(outcome).__name__})", _MEND)) from outcome
    return outcome


def _read_source(given: Given) -> tuple[SourceText, tuple[Problem, ...]]:
    return read_source(*given)


def _read_returned(given: Given) -> Returned:
    return read_returned(given[0], given[1])


def _read_sheet(given: Given) -> tuple[str, tuple[Problem, ...]]:
    return read_sheet_text(given[0], given[1])
