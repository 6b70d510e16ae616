"""The plan of a desk: its papers read, planned from now on, and the plan kept so that the next one moves little."""

from __future__ import annotations

import datetime as dt
import json
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from fairhand.desk.cache import keep_cached, read_cached
from fairhand.desk.clock import find_zone, now, own_zone
from fairhand.desk.disk import put_file
from fairhand.desk.paper_files import read_paper
from fairhand.desk.places import desk_of, list_done, list_papers
from fairhand.errors import FairhandError
from fairhand.model.plan import Plan, Sitting
from fairhand.model.problem import Problem
from fairhand.model.settings import DeskSettings
from fairhand.planning.calendar_file import write_calendar
from fairhand.planning.desk_plan import DeskPlan, list_ways_out, make_desk_plan, short_of
from fairhand.planning.hours_written import read_hours
from fairhand.planning.pace import WHERE, Pace, learn_pace, list_ratios, read_log
from fairhand.planning.standing import Standing, read_wishes
from fairhand.session.editing import read_text
from fairhand.session.schedule.overview import read_desk
from fairhand.session.schedule.standings import read_standing

KEPT = "plan"


@dataclass(frozen=True)
class Begun:
    """A step that stood in a plan: what it would take when it was first planned."""

    planned_minutes: int
    usual_minutes: int


@dataclass(frozen=True)
class Former:
    """The last plan that was made."""

    plan: Plan
    begun: Mapping[str, Begun]
    """Every step in it, by its id, with the most minutes that it was ever planned with."""


def plan_desk(place: Path, at: dt.datetime | None = None, *, keep: bool = True) -> DeskPlan:
    """The plan over all papers of the desk that a place is on, from now on.

    Args:
        place: The desk's folder, or any folder within it.
        at: The present hour; the clock's, where it is None.
        keep: Whether it is from now on the desk's last plan, which the next one moves as little as it can.
    """
    made = _plan(place, at, only_kept=False, keep=keep)
    if made is None:  # only where nothing but what is kept was asked for
        message = "the plan was not made"
        raise RuntimeError(message)
    return made


def kept_desk_plan(place: Path, at: dt.datetime | None = None) -> DeskPlan | None:
    """The same where no paper has changed since it was last planned; else None, at once."""
    return _plan(place, at, only_kept=True, keep=True)


def desk_now(settings: DeskSettings, at: dt.datetime | None = None) -> dt.datetime:
    """The present hour in the desk's zone; in the machine's own, where the desk names none."""
    zone = find_zone(settings.time_zone) if settings.time_zone else own_zone()
    return (at or now()).astimezone(zone)


def desk_pace(desk: Path) -> Pace:
    """The writer's pace, from the steps that were logged on all papers of a desk, in hand or done."""
    return learn_pace(_ratios((*list_papers(desk), *list_done(desk))))


def _ratios(folders: Iterable[Path]) -> list[float]:
    """What the logged steps of some papers took over the usual; a log that is no text tells nothing."""
    ratios: list[float] = []
    for folder in folders:
        try:
            ratios += list_ratios(read_log(read_text(folder, WHERE).text)[0])
        except FairhandError:
            continue
    return ratios


def list_plan_problems(place: Path) -> tuple[Problem, ...]:
    """What is not as it should be in the settings and the logs that the plan is made from."""
    desk = desk_of(place)
    settings = read_desk(desk)
    problems = [*read_hours(settings.other.get("hours"))[1]]
    for folder in list_papers(desk):
        files = read_paper(folder)
        problems += read_wishes(files.settings.other.get("plan"), settings.other.get("plan"))[1]
        log = files.files.get(WHERE)
        problems += read_log(log.text, f"{folder.name}/{WHERE}")[1] if log else ()
    return tuple(dict.fromkeys(problems))


def read_former(desk: Path) -> Former | None:
    """The last plan of a desk; None where none is kept, or what is kept cannot be read."""
    kept = read_cached(desk, KEPT)
    try:
        told = json.loads(kept) if kept is not None else None
        return _thaw(told) if told else None
    except (ValueError, KeyError, TypeError, AttributeError):
        return None


def _plan(place: Path, at: dt.datetime | None, *, only_kept: bool, keep: bool) -> DeskPlan | None:
    desk = desk_of(place)
    settings = read_desk(desk)
    present = desk_now(settings, at)
    standings = []
    for folder in list_papers(desk):
        try:
            standing = read_standing(folder, present, only_kept=only_kept)
        except FairhandError:
            standing = Standing(folder.name)  # its own pages say what is wrong with it
        if standing is None:
            return None
        standings.append(standing)
    hours, _ = read_hours(settings.other.get("hours"))
    pace = learn_pace([*(ratio for one in standings for ratio in list_ratios(one.log)), *_ratios(list_done(desk))])
    former = read_former(desk)
    made = make_desk_plan(standings, hours, pace, present, former.plan if former else None)
    if keep:
        _keep(desk, made, former)
    return made


def _keep(desk: Path, made: DeskPlan, former: Former | None) -> None:
    """The plan is the desk's last one; a step that was planned before keeps what it was first to take, ended or not."""
    begun = former.begun if former else {}
    ended = {
        step: (one.planned_minutes, one.usual_minutes)
        for step, one in begun.items()
        if step.partition("/")[0] in made.titles
    }
    steps = ended | {
        step.id: (
            max(step.minutes, begun[step.id].planned_minutes if step.id in begun else 0),
            max(step.usual_minutes, begun[step.id].usual_minutes if step.id in begun else 0),
        )
        for step in made.steps.values()
    }
    sittings = [(one.step, one.start.isoformat(), one.end.isoformat()) for one in made.plan.sittings]
    keep_cached(desk, KEPT, json.dumps({"sittings": sittings, "steps": steps}).encode())


def _thaw(told: Mapping[str, Any]) -> Former:
    sittings = tuple(
        Sitting(str(step), dt.datetime.fromisoformat(start), dt.datetime.fromisoformat(end))
        for step, start, end in told["sittings"]
    )
    begun = {str(step): Begun(int(planned), int(usual)) for step, (planned, usual) in told["steps"].items()}
    return Former(Plan(sittings, ()), begun)


def write_plan_calendar(place: Path, made: DeskPlan, target: Path) -> None:
    """The plan stands in a file that calendars open.

    Raises:
        FolderNotWritable: The folder is closed or full.
    """
    put_file(target, plan_calendar(place, made))


def plan_calendar(place: Path, made: DeskPlan) -> bytes:
    """The plan as iCalendar; the desk is told from others by its writer's name."""
    return write_calendar(made.plan, made.steps, made.papers, made.now, read_desk(desk_of(place)).name)


def tell_plan(made: DeskPlan, problems: Iterable[Problem] = ()) -> dict[str, Any]:
    """The plan as plain values, for other programs."""
    return {
        "now": made.now.isoformat(),
        "sittings": [
            {
                "step": one.step,
                "paper": made.title_of(one.step),
                "does": made.steps[one.step].name,
                "why": made.steps[one.step].why,
                "start": one.start.isoformat(),
                "end": one.end.isoformat(),
            }
            for one in made.plan.sittings
        ],
        "steps": [
            {
                "id": step.id,
                "does": step.name,
                "minutes": step.minutes,
                "usual_minutes": step.usual_minutes,
                "safe_minutes": step.safe_minutes or None,
                "why": step.why,
                "placed": step.id not in made.plan.unplaced,
            }
            for step in made.steps.values()
        ],
        "late": [
            {
                "paper": one.title,
                "due": one.due.isoformat(),
                "ready": one.ready.isoformat() if one.ready else None,
                "lost": round(one.lost, 4),
            }
            for one in made.late
        ],
        "short_minutes": short_of(made),
        "ways_out": [
            {
                "does": way.does,
                "price": way.price,
                "by": way.by.isoformat() if way.by else None,
                "gains_minutes": way.gains_minutes,
                "lost": round(way.costs, 4),
            }
            for way in list_ways_out(made)
        ],
        "lost": made.plan.lost,
        "pace": {"likely": made.pace.likely, "safe": made.pace.safe, "steps": made.pace.steps},
        "hours_a_week": round(made.hours.minutes_a_week / 60, 2),
        "problems": [str(problem) for problem in problems],
    }
