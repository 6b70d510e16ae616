"""Desks and papers begun."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from fairhand.desk.disk import writable
from fairhand.desk.making import make_course, make_desk, make_paper, name_folder
from fairhand.desk.paper_files import read_paper
from fairhand.desk.places import find_desk
from fairhand.desk.seen import see_file
from fairhand.model.settings import CourseSettings, DeskSettings, PaperSettings
from fairhand.session.assignment.sheets import read_sheet_files
from fairhand.session.saving import keep_record


@dataclass(frozen=True, slots=True)
class Begun:
    """A paper that was begun."""

    folder: Path
    says: tuple[str, ...]
    """Where it is, and what its sheet asks."""


def begin_desk(folder: Path, *, name: str = "", zone: str = "", spelling: str = "US") -> str:
    """A desk stands at ``folder``; the answer says where.

    Raises:
        PaperExistsAlready: There is one already.
        FolderNotWritable: The place is closed or full.
    """
    made = make_desk(folder, DeskSettings(name=name, time_zone=zone, spelling="GB" if spelling == "GB" else "US"))
    return f"A desk stands in {made}."


def begin_folder(place: Path) -> bool:
    """A folder stands at the place, in which a desk can be begun; whether it was made now is returned.

    Raises:
        FolderNotWritable: The place is closed or full.
    """
    if place.exists():
        return False
    with writable(place.parent):
        place.mkdir(parents=True)
    return True


def assignments_on(sheets: Sequence[Path], given: dt.date | None = None) -> tuple[str, ...]:
    """The titles of the papers that the sheets ask for, where they ask for several.

    Raises:
        InputError: A sheet cannot be read.
    """
    return read_sheet_files(sheets, given).assignments if sheets else ()


def begin_paper(
    desk: Path,
    title: str,
    sheets: Sequence[Path] = (),
    *,
    course: str = "",
    given: dt.date | None = None,
    assignment: str = "",
) -> Begun:
    """A paper's folder stands on the desk, with its sheets.

    Args:
        desk: The desk's folder, or any folder within it.
        title: The paper's title.
        sheets: The assignment sheets, oldest first.
        course: The course's folder or title; made where it is new.
        given: The day that the sheet was given out.
        assignment: Which of the papers that the sheet asks for it is.

    Raises:
        PaperExistsAlready: There is a folder of that name.
        InputError: A sheet cannot be read.
        FolderNotWritable: The place is closed or full.
    """
    on = find_desk(desk) or desk
    files: dict[str, bytes] = {}
    for number, sheet in enumerate(sheets, 1):
        name = sheet.name if sheet.name not in files else f"{sheet.stem} ({number}){sheet.suffix}"
        files[name] = see_file(sheet, sheet.name).data
    brief = read_sheet_files(sheets, given) if sheets else None
    settings = PaperSettings(
        title=title, course=_course_on(on, course) if course else "", given=given, assignment=assignment
    )
    folder = make_paper(on, settings, files)
    keep_record(read_paper(folder))
    says = "It has no assignment sheet yet: put one there as brief.txt, .pdf, .docx, .md or .html."
    if brief is not None:
        unread = f" {len(brief.unread)} sentences were not understood." if brief.unread else ""
        says = f"Its sheet asks {len(brief.requirements)} things (fairhand brief {folder.name} shows them).{unread}"
    return Begun(folder, (f"The paper’s folder is {folder}.", says))


def _course_on(desk: Path, course: str) -> str:
    """The folder of the course with that folder or title; made where there is none."""
    if (desk / "courses" / course).is_dir():
        return course
    folder = name_folder(course)
    if not (desk / "courses" / folder).is_dir():
        make_course(desk, CourseSettings(folder=folder, title=course))
    return folder
