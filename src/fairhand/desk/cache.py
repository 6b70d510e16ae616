"""What was worked out once, kept in ``.fairhand/`` by what it was worked out from; it may be deleted at any time."""

from __future__ import annotations

import contextlib
import hashlib
import os
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Literal

from fairhand.desk.disk import is_writable, put_file
from fairhand.desk.other_papers import list_put_away
from fairhand.desk.places import CACHE, DONE, RECORD, find_desk, walk_folder
from fairhand.desk.seen import hash_bytes
from fairhand.errors import FolderNotWritable

_READ_UP_TO = 256 * 1024
"""Files of at most so many bytes are known by their bytes; larger ones by size and times."""
Shelf = Literal["answers", "texts"]
"""What is kept apart from the rest: the engines' answers and verdicts, or the texts of sources."""
_MOST_KEPT: Mapping[Shelf, int] = {"answers": 64, "texts": 5000}
"""How many are kept for one paper; the longest unasked go first."""


def fingerprint(folder: Path) -> str:
    """A hash that changes whenever a file of the paper, its course or its desk's settings does.

    Small files count by their bytes, so that two changes within one tick of the clock are told apart; large ones by
    size, time of change and time of status change. What is printed, the record and the cache do not count.

    Args:
        folder: The paper's folder.
    """
    digest = hashlib.sha256()
    for name, path in _list_files(folder.absolute()):
        with contextlib.suppress(OSError):
            stat = path.stat()
            known: object = (stat.st_mtime_ns, stat.st_ctime_ns)
            if stat.st_size <= _READ_UP_TO:
                known = hash_bytes(path.read_bytes())
            if name.startswith(("brief", "courses")):
                known = (known, stat.st_mtime_ns)  # sheets are put in order by it
            digest.update(repr((name, stat.st_size, known)).encode(errors="surrogateescape"))
    return digest.hexdigest()


def read_cached(folder: Path, key: str, shelf: Shelf = "answers") -> bytes | None:
    """What was kept under that key, or None where nothing whole was.

    Args:
        folder: The paper's folder.
        key: Any text that names all that the answer depends on.
        shelf: What it was kept with.
    """
    try:
        path = _cached(folder, key, shelf)
        stored = path.read_bytes()
    except OSError:
        return None
    with contextlib.suppress(OSError):
        os.utime(path)  # asked for lately
    told, data = stored[:64], stored[64:]
    return data if told == hash_bytes(data).encode() else None


def keep_cached(folder: Path, key: str, data: bytes, shelf: Shelf = "answers") -> bool:
    """The bytes are kept under that key; False where the folder is closed or full, which is no fault.

    A cache may have been made by somebody else: keep JSON in it, nothing that runs when it is read.
    """
    path = _cached(folder, key, shelf)
    if not is_writable(folder):
        return False
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        put_file(path, hash_bytes(data).encode() + data, flushed=False)
        kept = list(path.parent.iterdir())
        if len(kept) > _MOST_KEPT[shelf]:
            for old in sorted(kept, key=lambda one: -one.stat().st_mtime_ns)[_MOST_KEPT[shelf] :]:
                old.unlink(missing_ok=True)
    except (OSError, FolderNotWritable):
        return False
    return True


def _cached(folder: Path, key: str, shelf: Shelf) -> Path:
    return folder / CACHE / shelf / hash_bytes(key.encode(errors="surrogateescape"))


def _list_files(folder: Path) -> Iterator[tuple[str, Path]]:
    for path in walk_folder(folder):
        name = path.relative_to(folder).as_posix()
        if not name.startswith((RECORD, "record (damaged")):
            yield name, path
    around = find_desk(folder) or folder.parent
    for name in ("desk.toml", "lapses.toml", "words.txt"):
        yield name, around / name
    for path in list_put_away(folder):
        yield f"{DONE}/{path.parent.name}/{path.name}", path
    for path in walk_folder(around / "courses"):
        yield path.relative_to(around).as_posix(), path
