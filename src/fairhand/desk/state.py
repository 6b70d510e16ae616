"""One saved state of one file, and what chains it to the one before."""

from __future__ import annotations

import dataclasses
import datetime as dt
import hashlib
import json
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Literal

from fairhand.desk.clock import find_zone
from fairhand.desk.seen import hash_bytes

How = Literal["written", "changed outside", "brought back", "taken"]
"""How a state came about: by us; by another program; from an earlier state; from a file of another format."""

BEFORE_ALL = "0" * 64
"""What stands for the hash of a state before the first."""


@dataclass(frozen=True, slots=True)
class State:
    """One saved state of one file."""

    seq: int
    """Its number in the record, from 1."""
    name: str
    """The file's name."""
    at: dt.datetime
    """When it was kept, in UTC."""
    how: How
    size: int
    """Bytes."""
    sha256: str
    """Hash of its bytes, in hexadecimal."""
    hash: str
    """Hash of this state and, through the one before, of all before it."""


@dataclass(frozen=True, slots=True)
class Row:
    """A state as it lies in the record's table, its bytes apart."""

    seq: int
    name: str
    at: str
    """ISO 8601, in UTC."""
    how: How
    size: int
    sha256: str
    place: int
    """Its place in its run of states of the same file, from 0."""
    base: int | None
    """The state that its bytes are compressed against."""
    hash: str = ""

    def chain(self, before: str, blob: bytes) -> str:
        """The hash that it has after a state of the hash ``before``, with these compressed bytes."""
        return self.chain_by(before, hash_bytes(blob))

    def chain_by(self, before: str, blob_sha256: str) -> str:
        """The same by the hash of its compressed bytes, for who has not the bytes themselves."""
        told = dataclasses.astuple(dataclasses.replace(self, hash=before))
        return hashlib.sha256(json.dumps([*told, blob_sha256]).encode()).hexdigest()

    def tell(self) -> State | None:
        """The state that others see, or None where the row is too damaged to be one."""
        try:
            at = dt.datetime.fromisoformat(self.at)
            return State(int(self.seq), str(self.name), at, self.how, int(self.size), str(self.sha256), str(self.hash))
        except (TypeError, ValueError):
            return None


@dataclass(frozen=True, slots=True)
class Link:
    """One state in the chain, without its bytes: enough to see on any machine that it follows from the one before."""

    row: Row
    blob_sha256: str
    """The hash of its compressed bytes."""


def find_breaks(links: Sequence[Link]) -> tuple[int, ...]:
    """The numbers of the states that do not follow from the one before, or are out of order; none where all do."""
    before, last, breaks = BEFORE_ALL, 0, []
    for link in links:
        if link.row.seq <= last or link.row.chain_by(before, link.blob_sha256) != link.row.hash:
            breaks.append(link.row.seq)
        before, last = link.row.hash, link.row.seq
    return tuple(breaks)


def name_state(state: State, time_zone: str = "") -> str:
    """The file name under which a state is brought back, beside the present file.

    >>> moment = dt.datetime(2026, 3, 2, 14, 5, tzinfo=dt.UTC)
    >>> name_state(State(12, "draft.md", moment, "written", 9, "", ""), "Etc/UTC")
    'draft (state 12, 2026-03-02 14.05).md'
    """
    path = Path(state.name)
    at = state.at.astimezone(find_zone(time_zone) if time_zone else None)
    return f"{path.stem} (state {state.seq}, {at:%Y-%m-%d %H.%M}){path.suffix}"
