"""The text of a photograph, where the machine can read letters; else none."""

from __future__ import annotations

import shutil
import subprocess

from fairhand.errors import InputError
from fairhand.outside.printed_page import has_ocr, read_printed

_SECONDS = 45
"""Longest that is waited for one page."""


def read_letters(picture: bytes) -> str:
    """The words read off a picture of a page by the extra for OCR, else by a ``tesseract`` of the machine's own.

    Nothing where neither is installed, or none reads any.
    """
    return _read_by_extra(picture) or _read_by_program(picture)


def _read_by_extra(picture: bytes) -> str:
    if not has_ocr():
        return ""
    try:
        return read_printed(picture)
    except (InputError, MemoryError):
        return ""


def _read_by_program(picture: bytes) -> str:
    program = shutil.which("tesseract")
    if program is None:
        return ""
    try:
        run = subprocess.run(
            [program, "stdin", "stdout"], input=picture, capture_output=True, timeout=_SECONDS, check=False
        )
    except (OSError, subprocess.TimeoutExpired):
        return ""
    return run.stdout.decode("utf-8", "replace").strip("\f\n ") if run.returncode == 0 else ""
