"""The jottings added to, sorted when that is asked, and moved; ``jottings.md`` itself is only ever added to."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass
from pathlib import Path

from fairhand.desk.toml_reading import read_toml
from fairhand.errors import DraftChangedOnDisk, FairhandError
from fairhand.jottings.arrangement import (
    Arrangement,
    KeptGroups,
    list_all,
    move_jottings,
    place_jottings,
    sort_jottings,
)
from fairhand.jottings.groups_file import WHERE as GROUPS
from fairhand.jottings.groups_file import read_groups, write_groups
from fairhand.jottings.jotting import WHERE, Jotting, read_jottings
from fairhand.language.meaning import find_meanings
from fairhand.model.problem import Problem
from fairhand.session.editing import Written, read_text, save_text, state_of


@dataclass(frozen=True)
class Sorted:
    """The jottings as they are sorted now."""

    arrangement: Arrangement
    is_kept: bool
    """Whether the writer has moved any, so that the groups stay as they are."""
    by_meaning: bool
    """Whether they were grouped by meaning; by the words they share, otherwise."""
    problems: tuple[Problem, ...]
    groups_file: Written

    @property
    def state(self) -> str:
        """A hash that changes when a jotting does, or its place."""
        return state_of(self.arrangement)


def add_jotting(folder: Path, text: str) -> None:
    """The thought stands at the end of the jottings, on a line of its own.

    Raises:
        DraftChangedOnDisk: Another program wrote to the file at the same moment.
        FolderNotWritable: The folder is closed or full.
    """
    present = read_text(folder, WHERE)
    before = present.text if present.text.endswith("\n") or not present.text else f"{present.text}\n"
    save_text(folder, WHERE, f"{before}- {' '.join(text.split())}\n", present.seen)


def list_jottings(folder: Path) -> tuple[Jotting, ...]:
    """The jottings in the order in which they were written."""
    return read_jottings(read_text(folder, WHERE).text)


def look_at_groups(folder: Path) -> Sorted:
    """The jottings as the writer put them; where none was moved yet, as the program groups them."""
    jottings = list_jottings(folder)
    written = read_text(folder, GROUPS)
    table, problems = read_toml(written.text, GROUPS)
    kept, faults = read_groups(table)
    meanings = find_meanings() if jottings else None
    is_kept = kept != KeptGroups()
    found = place_jottings(jottings, kept, meanings) if is_kept else sort_jottings(jottings, meanings)
    return Sorted(found, is_kept, meanings is not None, (*problems, *faults), written)


def keep_moved(folder: Path, numbers: Collection[int], to: int | None, was: str) -> None:
    """The jottings stand in another group, and all of them stay where they now are.

    Args:
        folder: The paper's folder.
        numbers: Which, in the order in which they are shown, from 0.
        to: The number of the group, from 0; one more than there are for one of their own; None to set them apart.
        was: The state that the move was made from.

    Raises:
        FairhandError: None is named.
        FileUnreadable: ``groups.toml`` must be mended first.
        DraftChangedOnDisk: The jottings or their groups were changed meanwhile.
    """
    found = _look_unchanged(folder, was)
    if not numbers:
        message = "No jotting was ticked: tick those that are to be moved."
        raise FairhandError(message)
    moved = move_jottings(found.arrangement, numbers, to)
    save_text(folder, GROUPS, write_groups(found.groups_file.text, moved), found.groups_file.seen)


def sort_afresh(folder: Path, was: str) -> None:
    """The program groups the jottings again; where they stood stays among the earlier states.

    Raises:
        FileUnreadable: ``groups.toml`` must be mended first.
        DraftChangedOnDisk: The jottings or their groups were changed meanwhile.
    """
    found = _look_unchanged(folder, was)
    if found.is_kept:
        text = write_groups(found.groups_file.text, Arrangement())
        save_text(folder, GROUPS, text, found.groups_file.seen)


def pick_jottings(folder: Path, numbers: Collection[int], was: str) -> tuple[str, ...]:
    """The words of the jottings that are numbered as they are shown.

    Raises:
        DraftChangedOnDisk: The jottings or their groups were changed meanwhile.
    """
    found = _look_unchanged(folder, was)
    return tuple(one.words for number, one in enumerate(list_all(found.arrangement)) if number in numbers)


def _look_unchanged(folder: Path, was: str) -> Sorted:
    found = look_at_groups(folder)
    if found.state != was:
        message = f"{WHERE}: the jottings were changed meanwhile; look at them again"
        raise DraftChangedOnDisk(message)
    return found
