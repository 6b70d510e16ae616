"""Assignment sheets read by themselves, before there is a paper."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from pathlib import Path

from fairhand.brief.read import given_day, read_brief
from fairhand.desk.paper_files import PaperFiles, read_paper
from fairhand.desk.seen import see_file, tell_problem
from fairhand.errors import InputError
from fairhand.model.problem import Problem
from fairhand.model.requirement import Brief
from fairhand.session.texts import read_sheet


def read_sheets(place: Path, given: dt.date | None = None) -> tuple[Brief, tuple[Problem, ...]]:
    """What the sheet at ``place`` asks, or the sheets of the paper whose folder that is.

    Args:
        place: A file, or a paper's folder.
        given: The day that it was given out; the sheet's own, where it is None.

    Raises:
        InputError: The file, or every one of them, cannot be read.
        NoPaperHere: Nothing stands there.
    """
    if place.is_dir():
        files = read_paper(place)
        return _read(files, given or files.settings.given, files.folder)
    return _read(PaperFiles(place.parent, sheets=(see_file(place, place.name),)), given)


def read_sheet_files(places: Sequence[Path], given: dt.date | None = None) -> Brief:
    """What several sheets together ask, oldest first."""
    return _read(PaperFiles(Path(), sheets=tuple(see_file(place, place.name) for place in places)), given)[0]


def _read(files: PaperFiles, given: dt.date | None, paper: Path | None = None) -> tuple[Brief, tuple[Problem, ...]]:
    """What the sheets ask; one that cannot be read is told beside those that can."""
    sheets, problems, refused = [], list(files.problems), None
    for sheet in files.sheets:
        try:
            text, faults = read_sheet(sheet, paper)
        except InputError as error:
            problems.append(tell_problem(error))
            refused = error
            continue
        problems += faults
        sheets.append((sheet.name, text))
    if refused and not sheets:
        raise refused
    brief = read_brief(sheets, given or given_day(sheets), files.settings.assignment)
    return brief, tuple(problems)
