"""Earlier states of the writer's files: listed by day, looked at, and brought back."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby, zip_longest
from pathlib import Path

from fairhand.desk.clock import find_zone
from fairhand.desk.decoding import decode_text
from fairhand.desk.paper_files import PaperFiles, read_paper
from fairhand.desk.record import bring_back, check_record, list_states, read_states, state_bytes
from fairhand.desk.seen import see_file
from fairhand.desk.state import State
from fairhand.desk.writing import write_file
from fairhand.errors import InputError, NoSuchState
from fairhand.model.problem import Problem
from fairhand.proof.comparison import Change, Difference, compare_states, measure_change
from fairhand.session.editing import DRAFT, one_line_end
from fairhand.session.saving import keep_record

APART = dt.timedelta(minutes=15)
"""Of what is saved at every pause, the last state within each such stretch of the clock is listed."""
MOST_LISTED = 120
"""States listed at once."""


@dataclass(frozen=True, slots=True)
class Saved:
    """One state in the list."""

    state: State
    at: dt.datetime
    """When it was kept, by the desk's clock."""
    change: Change | None
    """What came in and went out since the state listed before it; None where one of them is no text or damaged."""


@dataclass(frozen=True)
class Past:
    """What is kept of one file, or a part of it."""

    name: str
    days: tuple[tuple[dt.date, tuple[Saved, ...]], ...]
    """The latest day first, and within each the latest state."""
    others: tuple[tuple[str, int], ...]
    """Every file of which states are kept, with how many."""
    before: int = 0
    """The number of the state from which on earlier ones are listed next; 0 where all are."""
    between: bool = False
    """Whether states between those listed were passed over."""
    problems: tuple[Problem, ...] = ()
    """What stands in the way of keeping states."""


@dataclass(frozen=True)
class Earlier:
    """One earlier state of a file."""

    state: State
    at: dt.datetime
    text: str | None
    """None where it is no text."""
    present: str | None
    """The hash of the file's bytes now; None where there is no such file."""
    differs: tuple[Difference, ...]
    """Where the present, or the other state, differs from it."""
    other: Saved | None = None
    """The later state that it is held against; None where that is the present."""

    @property
    def is_present(self) -> bool:
        """Whether the file stands so now."""
        return self.present == self.state.sha256


def look_back(folder: Path, name: str = "", *, every: bool = False, before: int = 0) -> Past:
    """What is kept of a file, the present state first: by default of the draft, or of the first file there is.

    Args:
        folder: The paper's folder.
        name: The file's name.
        every: Whether to list every state, and not the last of each quarter of an hour.
        before: Only states with a lower number than this; 0 for all.

    Raises:
        RecordDamaged: The record cannot be opened at all.
    """
    files = read_paper(folder)
    problems = keep_record(files)
    states = list_states(folder)
    counted = {one: sum(state.name == one for state in states) for one in sorted({state.name for state in states})}
    name = name if name in counted else next((one for one in (DRAFT, *counted) if one in counted), "")
    own = [state for state in states if state.name == name]
    kept = own if every else list(_thin_out(own))
    shown = [state for state in kept if not before or state.seq < before]
    first = max(0, len(shown) - MOST_LISTED)
    saved = list(_tell_changes(folder, files, shown[max(0, first - 1) :]))[-MOST_LISTED:]
    days = tuple((day, tuple(these)) for day, these in groupby(reversed(saved), key=lambda one: one.at.date()))
    earlier = shown[first].seq if first else 0
    return Past(name, days, tuple(counted.items()), earlier, len(kept) < len(own), problems)


def look_at(folder: Path, seq: int, against: int | None = None) -> Earlier:
    """One state as text, and where the present, or another state of the same file, differs from it.

    Args:
        folder: The paper's folder.
        seq: The state's number.
        against: That of another state of the file; None for the present.

    Raises:
        NoSuchState: The record has none of that number, or they are states of two files.
        RecordDamaged: It, or one that it leans on, is damaged.
    """
    files = read_paper(folder)
    keep_record(files)
    state, data = _find(folder, seq), state_bytes(folder, seq)
    path = folder / state.name
    seen = see_file(path, state.name) if state.name in files.files and path.is_file() else None
    text, other = _read(state.name, data), None
    now = _read(state.name, seen.data) if seen else ""
    if against is not None:
        found = _find(folder, against)
        if found.name != state.name:
            message = (
                f"state {against}: it is one of {found.name}, and state {seq} is one of {state.name}; take two of one"
            )
            raise NoSuchState(message)
        now = _read(found.name, state_bytes(folder, against))
        other = Saved(found, _local(found, files), None)
    both = text is not None and now is not None
    differs = compare_states(state.name, text or "", now or "") if both else ()
    return Earlier(state, _local(state, files), text, seen.sha256 if seen else None, differs, other)


def first_state(folder: Path, name: str) -> State | None:
    """The first state of a file that is kept; None where none is."""
    keep_record(read_paper(folder))
    return next(iter(list_states(folder, name)), None)


def last_state(folder: Path, name: str) -> State | None:
    """The present state of a file, as it is kept; None where none is."""
    keep_record(read_paper(folder))
    return next(reversed(list_states(folder, name)), None)


def draft_of(folder: Path, sha256: str) -> str | None:
    """The draft of a hash as it read; None where no such state of it is kept.

    Raises:
        RecordDamaged: The state, or one that it leans on, is damaged.
    """
    seq = next((state.seq for state in list_states(folder, DRAFT) if state.sha256 == sha256), None)
    return None if seq is None else text_of(folder, seq)


def text_of(folder: Path, seq: int) -> str:
    r"""The text of a state, lines ended by ``\n``; where it is none, as far as it can be read as one.

    Raises:
        RecordDamaged: It, or one that it leans on, is damaged.
    """
    return one_line_end(state_bytes(folder, seq).decode("utf-8-sig", "replace"))


def later_states(folder: Path, state: State) -> tuple[Saved, ...]:
    """The states of a file after one of them, the latest first, as they are listed: those it can be held against."""
    files = read_paper(folder)
    own = [one for one in list_states(folder) if one.name == state.name]
    later = [one for one in _thin_out(own) if one.seq > state.seq]
    return tuple(Saved(one, _local(one, files), None) for one in later[: -MOST_LISTED - 1 : -1])


def bring_beside(folder: Path, seq: int) -> str:
    """The name of the file, beside the present one, in which the state now stands.

    Raises:
        NoSuchState: The record has none of that number.
        RecordDamaged: It, or one that it leans on, is damaged.
        FolderNotWritable: The folder is closed or full.
    """
    return bring_back(folder, seq, time_zone=read_paper(folder).desk.time_zone).name


def bring_in_place(folder: Path, seq: int, seen: str | None) -> None:
    """The file stands as it did; what stood there before is kept first.

    Args:
        folder: The paper's folder.
        seq: The state's number.
        seen: The hash of the file's bytes as the writer saw it; None where there was none.

    Raises:
        NoSuchState: The record has none of that number.
        RecordDamaged: It, or one that it leans on, is damaged.
        DraftChangedOnDisk: The file is not the one that was seen.
        FolderNotWritable: The folder is closed or full.
    """
    state = _find(folder, seq)
    write_file(folder, state.name, state_bytes(folder, seq), seen, how="brought back")


def check_states(folder: Path) -> tuple[int, tuple[Problem, ...]]:
    """How many states are kept, and what is wrong with any."""
    return len(list_states(folder)), check_record(folder)


def _find(folder: Path, seq: int) -> State:
    found = next((state for state in list_states(folder) if state.seq == seq), None)
    if found is None:
        message = f"state {seq}: the record of {folder.name} has none of that number; see its earlier states"
        raise NoSuchState(message)
    return found


def _thin_out(states: Sequence[State]) -> Iterator[State]:
    """The states without those that were written over within the same quarter of an hour.

    What another program wrote, what it was written over, and what was brought back all stay.
    """
    for state, following in zip_longest(states, states[1:]):
        close = following is not None and _quarter(state) == _quarter(following)
        if not (close and following and state.how == following.how == "written"):
            yield state


def _quarter(state: State) -> int:
    return int(state.at.timestamp() // APART.total_seconds())


def _tell_changes(folder: Path, files: PaperFiles, states: Sequence[State]) -> Iterator[Saved]:
    found = read_states(folder, [state.seq for state in states])
    then: str | None = ""
    for state in states:
        now = _read(state.name, found[state.seq]) if state.seq in found else None
        change = None if then is None or now is None else measure_change(state.name, then, now)
        yield Saved(state, _local(state, files), change)
        then = now


def _read(name: str, data: bytes) -> str | None:
    """The text of a state, lines ended alike; None where it is none."""
    try:
        return one_line_end(decode_text(data, name).text)
    except InputError:
        return None


def _local(state: State, files: PaperFiles) -> dt.datetime:
    return state.at.astimezone(find_zone(files.desk.time_zone) if files.desk.time_zone else None)
