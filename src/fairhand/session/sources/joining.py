"""Two sources that are one work joined at the writer's word: one record, one text, everything noted from either."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path

from fairhand.citing.described import FROM
from fairhand.citing.entry_list import drop_record, put_record
from fairhand.desk.disk import lock_folder
from fairhand.desk.paper_files import PaperFiles
from fairhand.desk.writing import write_file
from fairhand.errors import DeskError
from fairhand.model.entry import Entry
from fairhand.planning.points import WHERE as POINTS
from fairhand.planning.points import put_point, read_points
from fairhand.reading.notes_file import WHERE as NOTES
from fairhand.reading.notes_file import put_note, read_notes
from fairhand.session.editing import read_text, save_text
from fairhand.session.loading import load_entries
from fairhand.session.sources.entries import name_text, open_list, write_list


def join_works(folder: Path, keep: str, other: str) -> tuple[str, ...]:
    """The one source has what it lacked from the other's record, its text, notes and points; the other has gone.

    The other's record stays among the earlier states, and a text that is not needed stays in the folder; what is done
    when it is broken off is done again without harm.

    Args:
        folder: The paper's folder.
        keep: The id of the source that stays.
        other: The id of the one that joins it.

    Returns:
        What was done, in sentences.

    Raises:
        DeskError: One of them is not in the list, or the other is in the course's list alone.
        FileUnreadable: The list, the notes or the points must be mended first.
    """
    with lock_folder(folder):
        files, records = open_list(folder)
        entries = {entry.id: entry for entry in load_entries(files, [])}
        if keep == other or keep not in entries or other not in entries:
            message = f"{keep}, {other}: these are not two sources of the list; look at their ids with fairhand add"
            raise DeskError(message)
        left = drop_record(records, entries[other])
        if left is None:
            message = f"{other}: it is in the course’s list, which its papers share; join the other one to it instead"
            raise DeskError(message)
        says = [f"{other} has joined {keep}."]
        _move_notes(folder, keep, other)
        _move_points(folder, keep, other)
        says += _move_text(files, entries[keep], entries[other])
        filled = _fill(entries[keep].csl, entries[other].csl)
        write_list(files, put_record(left, entries[keep], filled))
    return tuple(says)


def _fill(kept: Mapping[str, object], other: Mapping[str, object]) -> dict[str, object]:
    """A record with what it lacks from another, and where that came from."""
    lacking = {name: value for name, value in other.items() if not kept.get(name) and name != "custom"}
    filled = {**kept, **lacking}
    if kept.get("type") == "document" and other.get("type"):
        filled["type"] = other["type"]
    custom, others = kept.get("custom"), other.get("custom")
    origins = others.get(FROM) if isinstance(others, Mapping) else None
    if isinstance(origins, Mapping):
        mine = custom if isinstance(custom, Mapping) else {}
        held = mine.get(FROM)
        brought = {name: origins[name] for name in lacking if name in origins}
        filled["custom"] = {**mine, FROM: {**(held if isinstance(held, Mapping) else {}), **brought}}
    return filled


def _move_notes(folder: Path, keep: str, other: str) -> None:
    present = read_text(folder, NOTES)
    text = present.text
    for note in read_notes(text)[0]:
        if note.source == other:
            text = put_note(text, replace(note, source=keep))
    if text != present.text:
        save_text(folder, NOTES, text, present.seen)


def _move_points(folder: Path, keep: str, other: str) -> None:
    present = read_text(folder, POINTS)
    text = present.text
    for point in read_points(text)[0].points if text else ():
        if any(one.source == other for one in point.support):
            support = (replace(one, source=keep) if one.source == other else one for one in point.support)
            text = put_point(text, replace(point, support=tuple(dict.fromkeys(support))))
    if text != present.text:
        save_text(folder, POINTS, text, present.seen)


def _move_text(files: PaperFiles, keep: Entry, other: Entry) -> list[str]:
    """The other's own files stand under the kept one's name, where it has none; else they stay where they are."""
    own = [file for file in files.find_source(other.id) if file.name.startswith("sources/")]
    if not own:
        return []
    if files.find_source(keep.id):
        return [f"Both had a text: {keep.id} is read from its own, and {own[0].name} stays in the folder."]
    for file in own:
        write_file(files.folder, name_text(keep.id, file.name), file.data, None, how="taken")
        file.path.unlink()
    return [f"Its text is {name_text(keep.id, own[0].name)} now."]
