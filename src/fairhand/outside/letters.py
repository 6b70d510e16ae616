"""The text of a photograph, where the machine has a program that reads letters; without one, none."""

from __future__ import annotations

import shutil
import subprocess

_SECONDS = 45
"""Longest that is waited for one page."""


def read_letters(picture: bytes) -> str:
    """The words that ``tesseract`` reads off a picture of a page; nothing where it is not installed or reads none."""
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
