"""The plan over all papers of a desk: their steps, when each will be done, and what does not fit."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import lru_cache, partial

from fairhand.model.late_rule import LateRule
from fairhand.model.plan import Free, PaperDue, Plan, Sitting, Step, WayOut
from fairhand.planning.aiming import EFFORT
from fairhand.planning.hours import ASSUMED, Hours, list_free_hours
from fairhand.planning.lateness import UNSTATED, as_cost, marks_lost
from fairhand.planning.pace import Pace
from fairhand.planning.shortfall import count_shortfall
from fairhand.planning.sittings import plan_sittings
from fairhand.planning.standing import Standing
from fairhand.planning.steps import list_hours, list_steps
from fairhand.planning.way_out import find_ways_out

GRAIN = 5
"""Sittings begin at whole multiples of so many minutes."""
BEYOND = dt.timedelta(days=42)
"""How far beyond the last due hour free hours are looked at."""
GONE = dt.timedelta(days=14)
"""A paper that was due longer ago is held to be over, whether or not anybody said so."""
FIRST_LOOK = 5
"""To find which papers are pressed, a fifth of the effort is spent."""
PIECE_WORTH = 0.1
"""What a piece that is due after the paper weighs beside the paper: an assumption."""

Rules = Mapping[str, LateRule | None]
"""What each paper's sheet takes off for lateness, by the paper; None where it does not say."""


@dataclass(frozen=True)
class Late:
    """Something that will not be ready in time."""

    paper: str
    title: str
    due: dt.datetime
    ready: dt.datetime | None
    """When it will be; None where the free hours do not hold it."""
    lost: float = 0.0
    """The share of its mark that it loses."""
    working: str = ""
    """How that was reckoned, in words."""


@dataclass(frozen=True)
class DeskPlan:
    """The plan of a desk, with all that it was made from."""

    now: dt.datetime
    plan: Plan
    steps: Mapping[str, Step] = field(default_factory=dict)
    papers: tuple[PaperDue, ...] = ()
    hours: Hours = ASSUMED
    pace: Pace = field(default_factory=Pace)
    late: tuple[Late, ...] = ()
    pressed: frozenset[str] = frozenset()
    """Papers for which time is short, so that no night lies between their steps."""
    begin: dt.datetime | None = None
    """The hour from which is planned: now, or when what is under way began."""
    free: tuple[Free, ...] = ()
    """The hours that were planned with."""
    passed: tuple[tuple[str, dt.datetime], ...] = ()
    """Papers whose hour has passed, of which nobody has said that they were handed in, with the hour."""

    @property
    def titles(self) -> Mapping[str, str]:
        """What each paper is called."""
        return {paper.paper: paper.title or paper.paper for paper in self.papers}

    @property
    def first(self) -> Sitting | None:
        """What to do now."""
        return next(iter(self.plan.sittings), None)

    def title_of(self, step: str) -> str:
        """What the paper of a step is called."""
        paper = self.steps[step].paper
        return self.titles.get(paper, paper)

    def days(self) -> dict[dt.date, list[Sitting]]:
        """The sittings of each day that has any, in order; those that only a pause parts are told as one."""
        pause = dt.timedelta(minutes=self.hours.pause_minutes)
        found: dict[dt.date, list[Sitting]] = {}
        for sitting in self.plan.sittings:
            day = found.setdefault(sitting.start.date(), [])
            if day and day[-1].step == sitting.step and sitting.start - day[-1].end <= pause:
                day[-1] = replace(day[-1], end=sitting.end)
            else:
                day.append(sitting)
        return found


def make_desk_plan(
    standings: Sequence[Standing],
    hours: Hours,
    pace: Pace,
    now: dt.datetime,
    former: Plan | None = None,
    effort: int = EFFORT,
) -> DeskPlan:
    """The plan from now on over all papers; no sitting that was missed is counted.

    A paper that would be late goes without the nights between its steps, and without a first reader whom nobody asked
    for, before it is called late.

    Args:
        standings: How the papers stand.
        hours: The writer's hours.
        pace: The writer's pace.
        now: The present hour, in the desk's zone.
        former: The last plan; what is under way in it goes on, and of the rest as little as can be is moved.
        effort: How many steps may be placed over all trials.
    """
    open_ = [standing for standing in standings if not is_gone(standing, now)]
    rules = {standing.paper: standing.late for standing in open_}
    listed = [paper for standing in open_ for paper in _list_due(standing)]
    papers = tuple(
        sorted(listed, key=lambda paper: (paper.due is None, paper.due and paper.due.timestamp(), paper.paper))
    )
    steps = _steps_of(open_, pace, now, ())
    begin = _begin(now, former, steps)
    last = max((paper.due for paper in papers if paper.due is not None), default=now)
    free = tuple(list_free_hours(hours, begin, max(last, now) + BEYOND))

    place = partial(_place, papers, free, begin, former, hours.longest_minutes, hours.pause_minutes)
    plan = place(tuple(steps.values()), effort // FIRST_LOOK)
    pressed = frozenset(one.paper.partition("/")[0] for one in list_late(plan, steps, papers, rules))
    if pressed:
        steps = _steps_of(open_, pace, now, pressed)
        plan = place(tuple(steps.values()), effort)
    passed = tuple(
        (paper.paper, paper.due) for paper in papers if paper.due and paper.due <= now and _has_steps(paper, steps)
    )
    late = tuple(list_late(plan, steps, papers, rules))
    return DeskPlan(now, plan, steps, papers, hours, pace, late, pressed, begin, free, passed)


def is_gone(standing: Standing, now: dt.datetime) -> bool:
    """Whether a paper's hour, and that of each of its pieces, is so long past that nothing of it is planned.

    >>> is_gone(Standing("seals", due=dt.datetime(2027, 1, 8, tzinfo=dt.UTC)), dt.datetime(2027, 3, 8, tzinfo=dt.UTC))
    True
    """
    hours = [hour for _, _, hour in list_hours(standing)]
    return all(hour is not None and hour + GONE < now for hour in hours)


def list_late(plan: Plan, steps: Mapping[str, Step], papers: Iterable[PaperDue], rules: Rules) -> list[Late]:
    """What will not be ready in time: papers, and pieces with hours of their own.

    Args:
        plan: The plan.
        steps: Its steps by id.
        papers: When the papers are due.
        rules: What each paper's sheet takes off for lateness.
    """
    ends, begun = dict(plan.ends), {step.paper for step in steps.values()}
    late, titles = [], {}
    for paper in papers:
        titles[paper.paper] = title = paper.title or paper.paper
        ready = ends.get(paper.paper)
        if paper.due is None or paper.paper not in begun or (ready is not None and ready <= paper.due):
            continue
        lost, working = 1.0, ""
        if ready is not None:
            rule = rules.get(paper.paper.partition("/")[0])
            lost, working = paper.cost(ready), marks_lost(rule or UNSTATED, paper.due, ready).working
            working += "" if rule else " (the sheet states no rule: a tenth of the total a day is assumed)"
        late.append(Late(paper.paper, title, paper.due, ready, lost, working))
    done = {sitting.step: sitting.end for sitting in plan.sittings}
    for step in steps.values():
        ready = done.get(step.id)
        if step.due is not None and step.paper != step.id and (ready is None or ready > step.due):
            piece = step.id.partition("/")[2].replace("-", " ")
            late.append(Late(step.paper, f"{titles.get(step.paper, step.paper)}: {piece}", step.due, ready))
    return late


def list_ways_out(made: DeskPlan) -> tuple[WayOut, ...]:
    """The ways out that cost least, where something does not fit; none where everything does."""
    if not made.late or made.begin is None:
        return ()
    hours = made.hours
    steps = tuple(made.steps.values())
    return _find_ways(made.papers, made.free, made.begin, hours.longest_minutes, hours.pause_minutes, steps)


def short_of(made: DeskPlan) -> int:
    """How many minutes at the desk are missing before the due hours."""
    if not made.late or made.begin is None:
        return 0
    hours = made.hours
    return count_shortfall(
        list(made.steps.values()),
        made.papers,
        made.free,
        made.begin,
        longest_minutes=hours.longest_minutes,
        pause_minutes=hours.pause_minutes,
    )


@lru_cache(maxsize=8)
def _find_ways(
    papers: tuple[PaperDue, ...],
    free: tuple[Free, ...],
    begin: dt.datetime,
    longest_minutes: int,
    pause_minutes: int,
    steps: tuple[Step, ...],
) -> tuple[WayOut, ...]:
    """The ways out, found once while nothing changes."""
    return find_ways_out(steps, papers, free, begin, longest_minutes=longest_minutes, pause_minutes=pause_minutes)


@lru_cache(maxsize=16)
def _place(
    papers: tuple[PaperDue, ...],
    free: tuple[Free, ...],
    begin: dt.datetime,
    former: Plan | None,
    longest_minutes: int,
    pause_minutes: int,
    steps: tuple[Step, ...],
    effort: int,
) -> Plan:
    """The plan, made once while nothing changes: where not all can be met, the search for the best one is long."""
    return plan_sittings(
        steps,
        papers,
        free,
        begin,
        former,
        longest_minutes=longest_minutes,
        pause_minutes=pause_minutes,
        effort=effort,
    )


def _list_due(standing: Standing) -> list[PaperDue]:
    return [
        PaperDue(
            paper=paper,
            due=hour,
            cost=_cost(standing.late, hour) if hour else _costs_nothing,
            worth=standing.wishes.worth * (1.0 if paper == standing.paper else PIECE_WORTH),
            title=title,
        )
        for paper, title, hour in list_hours(standing)
    ]


@lru_cache(maxsize=256)
def _cost(rule: LateRule | None, due: dt.datetime) -> Callable[[dt.datetime], float]:
    """One and the same function for one rule and hour, so that equal papers are told to be equal."""
    return as_cost(rule, due)


def _costs_nothing(_hour: dt.datetime) -> float:
    return 0.0


def _steps_of(standings: Iterable[Standing], pace: Pace, now: dt.datetime, pressed: Collection[str]) -> dict[str, Step]:
    return {
        step.id: step
        for standing in standings
        for step in list_steps(standing, pace, zone=now.tzinfo, pressed=standing.paper in pressed)
    }


def _has_steps(paper: PaperDue, steps: Mapping[str, Step]) -> bool:
    return any(step.paper == paper.paper for step in steps.values())


def _begin(now: dt.datetime, former: Plan | None, steps: Mapping[str, Step]) -> dt.datetime:
    """The hour from which is planned: now; where a sitting is under way, its beginning, so that it is not put off."""
    for sitting in former.sittings if former else ():
        if sitting.start <= now < sitting.end and sitting.step in steps:
            return sitting.start.astimezone(now.tzinfo)
    minutes = -now.minute % GRAIN if not (now.second or now.microsecond) else GRAIN - now.minute % GRAIN
    whole = now.astimezone(dt.UTC).replace(second=0, microsecond=0) + dt.timedelta(minutes=minutes)
    return whole.astimezone(now.tzinfo)
