"""A verdict that outlives the process: while no file of the paper changes, it is told again, not worked out."""

from __future__ import annotations

import datetime as dt
import json
import os
from functools import cache
from importlib.resources import files
from pathlib import Path
from typing import Any

from fairhand import __version__
from fairhand.desk.cache import fingerprint, keep_cached, read_cached
from fairhand.desk.clock import now
from fairhand.desk.paper_files import read_paper
from fairhand.desk.seen import FileSeen, see_file


def told_verdict(folder: Path, *, at: dt.datetime | None = None, draft: Path | None = None) -> dict[str, Any]:
    """The verdict on a paper as plain values, from the cache where nothing has changed since.

    Args:
        folder: The paper's folder.
        at: The hour to judge deadlines by; the clock's, where it is None.
        draft: Another draft to judge, with the same sources.

    Raises:
        FairhandError: There is no paper there, or the draft cannot be read.
    """
    other = see_file(draft, draft.name) if draft else None
    key = _key(folder, other)
    kept = _told_before(folder, key, at)
    if kept is not None:
        return kept
    from fairhand.session.opened import OpenPaper

    verdict = OpenPaper(folder, at=at, draft=other.text if other else None).verdict()
    from fairhand.readiness.told import tell
    from fairhand.session.saving import keep_record

    told = tell(verdict)
    keep_record(read_paper(folder))
    keep_cached(folder, key, json.dumps(told).encode())
    return told


def kept_verdict(folder: Path, *, at: dt.datetime | None = None) -> dict[str, Any] | None:
    """The verdict on a paper where it is known and nothing has changed since; else None, at once."""
    return _told_before(folder, _key(folder, None), at)


def _key(folder: Path, other: FileSeen | None) -> str:
    return " ".join(("verdict", program_state(), fingerprint(folder), other.sha256 if other else ""))


def _told_before(folder: Path, key: str, at: dt.datetime | None) -> dict[str, Any] | None:
    kept = read_cached(folder, key)
    if kept is None:
        return None
    from fairhand.readiness.deadlines import at_this_hour

    told: dict[str, Any] = json.loads(kept)
    return at_this_hour(told, at or now(told["time_zone"]))


@cache
def program_state() -> str:
    """The program's version, and the newest change to its own files: another program's verdict is not told again."""
    return f"{__version__} {_newest(str(files('fairhand')))}"


def _newest(folder: str) -> int:
    """When the newest of the program's own files in a folder was changed, in nanoseconds."""
    newest = 0
    with os.scandir(folder) as entries:
        for entry in entries:
            if entry.is_dir():
                newest = max(newest, 0 if entry.name == "__pycache__" else _newest(entry.path))
            elif entry.name.endswith((".py", ".toml", ".typ")):
                newest = max(newest, entry.stat().st_mtime_ns)
    return newest
