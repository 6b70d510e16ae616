"""Photographed sheets: their words read by OCR in a process apart, once, and told to be unsure."""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path

from fairhand.desk.cache import keep_cached, read_cached
from fairhand.desk.seen import hash_bytes
from fairhand.errors import FairhandError, FileUnreadable
from fairhand.model.problem import Problem
from fairhand.outside.printed_page import has_ocr, read_printed
from fairhand.press.apart import Limits, WorkKilled, do_apart

READ_BY = "1"
"""Raised when photographs are read otherwise than before."""
_LIMITS = Limits(seconds=60, most_bytes=2 * 2**30)
_TYPE_IT = "type the sheet, or paste it, as text"


def read_photograph(data: bytes, file: str, paper: Path | None = None) -> tuple[str, tuple[Problem, ...]]:
    """The words on a photographed sheet, and that they are unsure.

    Args:
        data: The picture's bytes.
        file: What it is called in messages.
        paper: The folder of the paper that it belongs to, in whose cache they are kept; None before there is one.

    Raises:
        FileUnreadable: The extra for OCR is not installed, or nothing could be read off the picture.
        FileTooLarge: It has more pixels than are read.
    """
    key = f"OCR {READ_BY} {hash_bytes(data)}"
    kept = read_cached(paper, key, "texts") if paper else None
    text = kept.decode() if kept else _read(data, file)
    if paper and not kept:
        keep_cached(paper, key, text.encode(), "texts")
    return text, (Problem(file, "read by OCR, which misreads", "hold it against the sheet"),)


def _read(data: bytes, file: str) -> str:
    if not has_ocr():
        mend = f"install the extra for it (pip install 'fairhand[ocr]'), or {_TYPE_IT}"
        raise FileUnreadable(Problem(file, "it is a photograph, and nothing here reads its words", mend))
    outcome = _read_apart(data)
    if isinstance(outcome, FairhandError):
        raise type(outcome)(f"{file}: {outcome}")
    if not outcome:
        raise FileUnreadable(
            Problem(file, "no words could be read off the photograph", f"take a sharper one, or {_TYPE_IT}")
        )
    return outcome


@lru_cache(maxsize=8)
def _read_apart(data: bytes) -> str | FairhandError:
    """The words; or why there are none, so that a picture that cannot be read is tried once."""
    ((_, outcome),) = do_apart(read_printed, [data], lanes=1, limits=_LIMITS)
    if isinstance(outcome, (str, FairhandError)):
        return outcome
    if isinstance(outcome, WorkKilled):
        return FileUnreadable(f"reading it took too long, or too much memory; {_TYPE_IT}")
    return ""
