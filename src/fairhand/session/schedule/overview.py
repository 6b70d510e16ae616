"""The work in hand: the papers on a desk, by the hour when they are due."""

from __future__ import annotations

import datetime as dt
import math
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path

from fairhand.brief.read import apply_answers
from fairhand.desk.cache import fingerprint
from fairhand.desk.clock import find_zone, now
from fairhand.desk.paper_files import read_paper
from fairhand.desk.places import find_desk, list_papers
from fairhand.desk.seen import see_file, tell_problem
from fairhand.desk.settings import read_course_settings, read_desk_settings
from fairhand.errors import FairhandError, InputError
from fairhand.model.requirement import Value
from fairhand.model.settings import CourseSettings, DeskSettings
from fairhand.session.assignment.sheets import read_sheets


@dataclass(frozen=True, slots=True)
class InHand:
    """One paper on the desk."""

    title: str
    due: str
    """When it is due, in words; or what stands in the way of knowing."""
    on: dt.date | None
    folder: Path
    hour: dt.datetime | None = None
    """When it is due; the day's end where the sheet names no hour."""


def work_in_hand(place: Path, at: dt.datetime | None = None) -> tuple[InHand, ...]:
    """The desk's papers, those due first first, those without a date last.

    Args:
        place: The desk's folder, or any folder within it.
        at: The hour to judge deadlines by; the clock's, where it is None.
    """
    papers = [_look(folder, at) for folder in list_papers(find_desk(place) or place)]
    return tuple(sorted(papers, key=lambda paper: (paper.hour.timestamp() if paper.hour else math.inf, paper.title)))


def read_desk(desk: Path) -> DeskSettings:
    """The desk's settings; the plain ones, where there are none that can be read."""
    try:
        return read_desk_settings(see_file(desk / "desk.toml", "desk.toml").text)[0]
    except InputError:
        return DeskSettings()


def list_courses(desk: Path) -> tuple[CourseSettings, ...]:
    """The courses of a desk, by the names of their folders; one whose settings cannot be read has its folder's name."""
    return tuple(_read_course(folder) for folder in sorted((desk / "courses").glob("[!.]*")) if folder.is_dir())


def _read_course(folder: Path) -> CourseSettings:
    try:
        settings, _ = read_course_settings(see_file(folder / "course.toml", "course.toml").text, folder.name)
    except InputError:
        return CourseSettings(folder.name, folder.name)
    return settings


@dataclass(frozen=True, slots=True)
class _Known:
    """What a paper's files say of when it is due, whatever the hour."""

    title: str
    time_zone: str
    due: Mapping[str, Value] | None
    instead: str
    """What is said where there is no date."""


def _look(folder: Path, at: dt.datetime | None) -> InHand:
    from fairhand.readiness.deadlines import due_hour, judge_hour

    known = _know(folder, fingerprint(folder))
    present = at.astimezone(find_zone(known.time_zone) if known.time_zone else None) if at else now(known.time_zone)
    hour = due_hour(known.due, present.tzinfo) if known.due else None
    if known.due is None or hour is None:
        return InHand(known.title, known.instead, None, folder)
    return InHand(known.title, judge_hour(known.due, present).why, hour.date(), folder, hour)


@lru_cache(maxsize=256)
def _know(folder: Path, state: str) -> _Known:  # noqa: ARG001 - a folder in another state is read again
    files = read_paper(folder)
    title, zone = files.settings.title or folder.name, files.desk.time_zone
    try:
        brief, _ = read_sheets(folder)
    except FairhandError as error:
        return _Known(title, zone, None, str(tell_problem(error)))
    asked = apply_answers(brief, files.settings.answers)
    due = next((requirement.values for requirement in asked if requirement.id == "due.final"), None)
    return _Known(title, zone, due, "no date was found on its sheet" if files.sheets else "it has no sheet yet")
