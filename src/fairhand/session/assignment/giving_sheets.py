"""Assignment sheets given to a paper that has begun: its first, or a further one whose later word wins."""

from __future__ import annotations

import datetime as dt
from pathlib import Path, PurePath

from fairhand.desk.answers import set_setting
from fairhand.desk.making import name_sheet
from fairhand.desk.paper_files import read_paper
from fairhand.desk.seen import hash_bytes
from fairhand.desk.sheets import date_in_name
from fairhand.desk.writing import write_file
from fairhand.errors import DeskError
from fairhand.reading.sheet import read_sheet_text

_MOST_OF_A_NAME = 99
"""Sheets of one name on one day: more than anybody has."""


def give_sheet(folder: Path, name: str, data: bytes, given: dt.date | None = None) -> str:
    """The sheet stands in the paper's folder, as it was sent; its name there is returned.

    The first becomes ``brief`` with its ending, and its day stands in ``paper.toml``; a further one stands in
    ``brief/``, with its day in its name.

    Args:
        folder: The paper's folder.
        name: The name that it came with.
        data: Its bytes.
        given: The day that it was given out, where that is known.

    Raises:
        InputError: No sheet is read from such a file, or it is broken, empty, or not what its name says.
        DeskError: It is among the sheets already.
        FolderNotWritable: The folder is closed or full.
    """
    plain = name_sheet(name)
    read_sheet_text(data, plain)
    files = read_paper(folder)
    there = next((sheet.name for sheet in files.sheets if sheet.sha256 == hash_bytes(data)), None)
    if there:
        message = f"{plain}: it is among the sheets already, as {there}; nothing was written"
        raise DeskError(message)
    if not any(not sheet.name.startswith("courses/") for sheet in files.sheets):
        target = f"brief{PurePath(plain).suffix.lower()}"
        write_file(folder, target, data, None)
        if given:
            set_given(folder, given)
        return target
    dated = f"{given.isoformat()} {plain}" if given and not date_in_name(plain) else plain
    target = _free_name(folder, dated)
    write_file(folder, target, data, None)
    return target


def set_given(folder: Path, given: dt.date | None) -> None:
    """``paper.toml`` says when the sheet was given out, from which its years and its weekdays are counted.

    Raises:
        DeskError: ``paper.toml`` has a fault that must be mended first.
        FolderNotWritable: The folder is closed or full.
    """
    set_setting(folder, "given", given)


def _free_name(folder: Path, name: str) -> str:
    path = PurePath(name)
    tried = (name, *(f"{path.stem} ({number}){path.suffix}" for number in range(2, _MOST_OF_A_NAME)))
    for one in tried:
        if not (folder / "brief" / one).exists():
            return f"brief/{one}"
    message = f"{name}: there are too many sheets of that name; give it another"
    raise DeskError(message)
