"""The work in hand: the papers on a desk, by the hour when they are due."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass
from pathlib import Path

from fairhand.desk import find_desk, list_papers, now, read_paper, tell_problem
from fairhand.errors import FairhandError
from fairhand.session.sheets import read_sheets


@dataclass(frozen=True, slots=True)
class InHand:
    """One paper on the desk."""

    title: str
    due: str
    """When it is due, in words; or what stands in the way of knowing."""
    on: dt.date | None
    folder: Path


def work_in_hand(place: Path) -> tuple[InHand, ...]:
    """The desk's papers, those due first first, those without a date last.

    Args:
        place: The desk's folder, or any folder within it.
    """
    papers = [_look(folder) for folder in list_papers(find_desk(place) or place)]
    return tuple(sorted(papers, key=lambda paper: (paper.on is None, paper.on or dt.date.max, paper.title)))


def _look(folder: Path) -> InHand:
    from fairhand.readiness.deadlines import judge_hour

    files = read_paper(folder)
    title = files.settings.title or folder.name
    try:
        brief, _ = read_sheets(folder)
    except FairhandError as error:
        return InHand(title, str(tell_problem(error)), None, folder)
    due = next((r for r in brief.requirements if r.id == "due.final"), None)
    if due is None or not isinstance(due.values.get("on"), str):
        return InHand(title, "no date was found on its sheet" if files.sheets else "it has no sheet yet", None, folder)
    judgement = judge_hour(due.values, now(files.desk.time_zone))
    return InHand(title, judgement.why, dt.date.fromisoformat(str(due.values["on"])), folder)
