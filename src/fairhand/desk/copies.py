"""Other versions of the writer's files that stand beside them."""

from __future__ import annotations

import re
from dataclasses import dataclass
from pathlib import Path
from typing import Literal

from fairhand.desk.places import OWN_FILES, list_folder
from fairhand.desk.seen import FileSeen, see_file
from fairhand.errors import InputError

_BROUGHT_BACK = re.compile(r" \(state \d{1,9}, [^)]{1,40}\)(?: \d{1,4})?")
_IN_CONFLICT = re.compile(
    r"[ ._~(-].{0,120}\b(?:conflict|konflikt|conflit|conflicto|conflitto)"  # said in words
    r"| \(\d{1,3}\)"  # numbered by the system
    r"|-(?=[^A-Z]{0,40}[A-Z])[A-Za-z0-9][A-Za-z0-9-]{2,60}",  # the other machine's name
)
_OF_SYNC = re.compile(r"(?i)[ ._~(-].{0,120}conflict|[ ._~(-].{0,120}(?:konflikt|conflit)")


@dataclass(frozen=True)
class Copy:
    """A version of one of the writer's files, under another name."""

    of: str
    """The file that it is a version of."""
    kind: Literal["in conflict", "brought back"]
    """Left by a synchronised folder, or brought back from the record."""
    seen: FileSeen


def list_copies(folder: Path) -> tuple[Copy, ...]:
    """The copies in conflict that a synchronised folder left, and the states brought back, by name."""
    copies = []
    for path in list_folder(folder):
        told = _tell_copy(path.name)
        if told:
            try:
                copies.append(Copy(*told, see_file(path, path.name)))
            except InputError:
                continue
    return tuple(copies)


def _tell_copy(name: str) -> tuple[str, Literal["in conflict", "brought back"]] | None:
    """Which file it is a version of, and how it came about.

    >>> _tell_copy("draft (Anna's conflicted copy 2026-03-02).md"), _tell_copy("draft-old.md")
    (('draft.md', 'in conflict'), None)
    >>> _tell_copy("draft.sync-conflict-20260302-140500-ABCDEFG.md"), _tell_copy("draft-ANNAS-PC.md")
    (('draft.md', 'in conflict'), ('draft.md', 'in conflict'))
    """
    for own in OWN_FILES:
        stem, _, ending = own.rpartition(".")
        if name != own and name.startswith(stem) and name.endswith(f".{ending}"):
            rest = name[len(stem) : -len(ending) - 1]
            if _BROUGHT_BACK.fullmatch(rest):
                return own, "brought back"
            if _IN_CONFLICT.fullmatch(rest) or _OF_SYNC.match(rest):
                return own, "in conflict"
    return None
