"""Steps called done: kept in the paper's ``time.jsonl``, from which the writer's pace is learnt."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path

from fairhand.desk.places import desk_of, is_paper, list_papers
from fairhand.errors import NoSuchStep
from fairhand.model.plan import Step
from fairhand.planning.desk_plan import DeskPlan
from fairhand.planning.pace import WHERE, Logged, add_to_log, read_log
from fairhand.session.editing import read_text, save_text
from fairhand.session.schedule.overview import read_desk
from fairhand.session.schedule.plan import Begun, desk_now, plan_desk, read_former


@dataclass(frozen=True, slots=True)
class Asked:
    """What is asked when a step ends, the planned time filled in already."""

    folder: Path
    """The paper's folder."""
    step: Step
    planned_minutes: int
    usual_minutes: int


def find_step(place: Path, named: str, at: dt.datetime | None = None) -> Asked:
    """The step that is meant: ``harbour-seals/draft`` on a desk, or ``draft`` in a paper's folder.

    A step's own name alone is enough where only one paper has it; so is the beginning of a name.

    Raises:
        NoSuchStep: No step of the plan has that name, or several have.
    """
    made = plan_desk(place, at)
    if (ended := _ended(place, named, made)) is not None:
        return ended
    step = made.steps[_choose(named, made, place)]
    first = first_planned(place, step)
    return Asked(desk_of(place) / step.id.partition("/")[0], step, first.planned_minutes, first.usual_minutes)


def first_planned(place: Path, step: Step) -> Begun:
    """What a step of the last plan would take when it was first planned; what is left of it now, where none is kept."""
    former = read_former(desk_of(place))
    begun = former.begun.get(step.id) if former else None
    return begun or Begun(step.minutes, step.usual_minutes)


def end_step(
    asked: Asked,
    took_minutes: int | None,
    *,
    left_minutes: int = 0,
    leave_out: bool = False,
    at: dt.datetime | None = None,
) -> str:
    """The step is called done, or begun with so many minutes left, or the paper goes without it; what is now said.

    Args:
        asked: The step.
        took_minutes: How long it took; None where the writer does not say.
        left_minutes: What of it is left.
        leave_out: Whether the paper goes without it.
        at: The present hour; the clock's, where it is None.

    Raises:
        DraftChangedOnDisk: Another program wrote to the log at the same moment.
        FolderNotWritable: The folder is closed or full.
    """
    moment = desk_now(read_desk(desk_of(asked.folder)), at)
    name = _own_name(asked.step.id)
    said = Logged(
        step=name,
        took_minutes=None if leave_out else took_minutes,
        planned_minutes=asked.planned_minutes,
        usual_minutes=asked.usual_minutes,
        left_minutes=left_minutes,
        left_out=leave_out,
        when=moment.isoformat(timespec="seconds"),
    )
    log = read_text(asked.folder, WHERE)
    save_text(asked.folder, WHERE, add_to_log(log.text, said), log.seen)
    what = f"{asked.step.name[0].upper()}{asked.step.name[1:]}"
    if leave_out:
        return f"{what}: left out."
    return f"{what}: {left_minutes} minutes left." if left_minutes else f"{what}: done."


def take_back(folder: Path, name: str) -> str:
    """What was last said of a step of a paper is taken back; it stays among the earlier states of the log.

    Raises:
        NoSuchStep: Nothing was said of it.
    """
    log = read_text(folder, WHERE)
    lines = log.text.split("\n")
    said = [number for number, line in enumerate(lines) if any(one.step == name for one in read_log(line)[0])]
    if not said:
        message = f"{name}: nothing was said of such a step of {folder.name}; its log is {WHERE}"
        raise NoSuchStep(message)
    del lines[said[-1]]
    save_text(folder, WHERE, "\n".join(lines), log.seen)
    return f"{name}: taken back."


def list_said(folder: Path) -> tuple[Logged, ...]:
    """What was said last of each step of a paper, the latest first."""
    said = {one.step: one for one in read_log(read_text(folder, WHERE).text)[0]}
    return tuple(reversed(said.values()))


def find_said(place: Path, named: str) -> tuple[Path, str]:
    """The paper's folder and the name of a step of which something was said.

    Raises:
        NoSuchStep: Of no step, or of several, of that name anything was said.
    """
    desk = desk_of(place)
    paper, slash, name = named.partition("/")
    folders = (
        [place]
        if is_paper(place) and not slash
        else [one for one in list_papers(desk) if not slash or one.name == paper]
    )
    found = [folder for folder in folders if any(one.step == (name or paper) for one in list_said(folder))]
    if len(found) == 1:
        return found[0], name or paper
    raise NoSuchStep(_refuse(named, (f"{one.name}/{each.step}" for one in folders for each in list_said(one))))


def _ended(place: Path, named: str, made: DeskPlan) -> Asked | None:
    """A step that was planned, and has ended since by what stands in the paper's files; nothing was said of it yet."""
    desk, (paper, slash, name) = desk_of(place), named.partition("/")
    if not slash and is_paper(place):
        paper, name = place.absolute().name, named
    step, folder = f"{paper}/{name}", desk / paper
    former = read_former(desk)
    begun = former.begun.get(step) if former else None
    if begun is None or step in made.steps or any(one.step == name for one in list_said(folder)):
        return None
    planned, usual = begun.planned_minutes, begun.usual_minutes
    return Asked(folder, Step(step, paper, name.replace("-", " "), planned, usual_minutes=usual), planned, usual)


def _choose(named: str, made: DeskPlan, place: Path) -> str:
    """The id of the step that is meant."""
    own = [step for step in made.steps if step.startswith(f"{place.absolute().name}/")] if is_paper(place) else []
    for steps in (own, list(made.steps)):
        for fits in (str.__eq__, str.startswith):
            found = [step for step in steps if fits(step, named) or fits(_own_name(step), named)]
            if len(found) == 1:
                return found[0]
            if found:
                raise NoSuchStep(_refuse(named, found))
    paper, slash, name = named.partition("/")
    told = [place] if own else [folder for folder in list_papers(desk_of(place)) if not slash or folder.name == paper]
    if any(one.step == (name or paper) for folder in told for one in list_said(folder)):
        message = f"{named}: it is done already, or left out; `fairhand done {named} --undo` takes that back"
        raise NoSuchStep(message)
    papers = [folder.name for folder in list_papers(desk_of(place))]
    if slash and paper not in papers:
        message = f"{paper}: no paper of that name is on the desk; there are {', '.join(papers) or 'none yet'}"
        raise NoSuchStep(message)
    of_paper = [step for step in made.steps if slash and step.startswith(f"{paper}/")]
    raise NoSuchStep(_refuse(named, own or of_paper or made.steps))


def _own_name(step: str) -> str:
    return step.partition("/")[2]


def _refuse(named: str, there: Iterable[str]) -> str:
    listed = list(there)
    if not listed:
        return f"{named}: no step is called that; nothing is left to do there, or no paper is there yet"
    return f"{named}: no one step is called that; there are {', '.join(listed)}"
