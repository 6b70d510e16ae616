"""What could give when not everything can be met: steps left out, an extension asked for, a hand-in that is late."""

from __future__ import annotations

import datetime as dt
import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from fairhand.language.counts import count_of, say_minutes
from fairhand.model.plan import PaperDue, Step
from fairhand.planning.aiming import Aimed, aim_papers
from fairhand.planning.desk_time import DeskTime, clock_minutes
from fairhand.planning.keeping_order import keep_order
from fairhand.planning.leaving_out import leave_out, with_what_hangs_on
from fairhand.planning.sittings import write_plan
from fairhand.planning.workload import Workload, reckon_work

MOST_TRIED = 8
"""How many steps that could be left out, and how many hours that could be put off, are tried."""
MOST_LEFT_OUT = 5
"""How many steps are left out together at most."""
LONGEST_EXTENSION = 14
"""How many days more are asked for at most."""
GLANCE = 5
"""How many placings a change is first judged by."""
_DAY = dt.timedelta(days=1)
_DAY_MINUTES = 24 * 60


@dataclass(frozen=True, slots=True)
class Late:
    """A paper, or a milestone of it, that will be late."""

    paper: PaperDue
    step: Step | None
    """The milestone; None for the paper itself."""
    due: int
    end: int | None
    """When it will be ready; None for never."""
    share: float
    """What of its mark is lost."""

    @property
    def title(self) -> str:
        """What it is called."""
        return title_of(self.paper) if self.step is None else f"{title_of(self.paper)}: {self.step.name}"

    @property
    def by_how_much(self) -> str:
        """How late it is, in words."""
        minutes = (self.end or 0) - self.due
        return say_minutes(minutes) if minutes < _DAY_MINUTES else count_of(math.ceil(minutes / _DAY_MINUTES), "day")


@dataclass(frozen=True, slots=True)
class Case:
    """What is in hand, and the best plan of it that was found."""

    steps: tuple[Step, ...]
    papers: tuple[PaperDue, ...]
    work: Workload
    aimed: Aimed

    @property
    def key(self) -> tuple[float, int]:
        """What is lost, and the greatest lateness: the less the better."""
        return self.aimed.key[:2]

    def list_late(self) -> list[Late]:
        """The papers and milestones that will be late: those first that lose most, then the latest."""
        work, placing = self.work, self.aimed.placing
        found = [
            Late(paper, None, due, end, work.cost(number, end) / paper.worth if paper.worth else 0.0)
            for number, (paper, due, end) in enumerate(zip(work.papers, work.due, placing.ready, strict=True))
            if due is not None and (end is None or end > due)
        ]
        for number, due in work.milestones:
            end = placing.ended[number]
            if end is None or end > due:
                found.append(Late(work.papers[work.owner[number]], work.steps[number], due, end, 0.0))
        return sorted(
            found,
            key=lambda one: (-one.share * one.paper.worth, one.due - (work.far if one.end is None else one.end)),
        )


@dataclass(frozen=True, slots=True)
class Concession:
    """One change to what is in hand, and how it comes out."""

    does: str
    paper: str
    price: str
    case: Case
    by: dt.datetime | None = None


def plan_case(steps: tuple[Step, ...], papers: tuple[PaperDue, ...], desk: DeskTime, effort: int = 0) -> Case:
    """The work in hand, planned; without an effort only at a glance."""
    work = reckon_work(steps, papers, desk)
    return Case(steps, papers, work, aim_papers(work, effort or GLANCE * len(steps)))


def title_of(paper: PaperDue) -> str:
    """What a paper is called."""
    return paper.title or paper.paper


def list_left_out(base: Case) -> list[Concession]:
    """Each optional step left out, with what hangs on it: steps of the late papers first, then the longest."""
    late = {one.paper.paper for one in base.list_late()}
    optional = sorted(
        (step for step in base.steps if step.optional),
        key=lambda step: (step.paper not in late, -step.minutes - step.rest_minutes),
    )
    gone = dict.fromkeys(with_what_hangs_on(base.steps, step.id) for step in optional[:MOST_TRIED])
    return [_without(base, these) for these in gone]


def leave_more_out(base: Case, singly: Sequence[Concession]) -> Iterator[Concession]:
    """Steps left out together, each time that which helps most, until nothing is late or nothing helps."""
    best = plan_case(base.steps, base.papers, base.work.desk)
    names = frozenset[str]()
    sets = [frozenset(step.id for step in base.steps) - {step.id for step in one.case.steps} for one in singly]
    for _ in range(MOST_LEFT_OUT):
        found = [_without(base, names | these) for these in sets if not these <= names]
        first = min(found, key=lambda one: one.case.key, default=None)
        if first is None or first.case.key >= best.key:
            return
        best = first.case
        names = frozenset(step.id for step in base.steps) - {step.id for step in best.steps}
        yield first
        if best.key[1] <= 0:
            return


def _without(base: Case, these: frozenset[str]) -> Concession:
    """The work without some steps: to be settled before the first of them would begin."""
    gone = [step for step in base.steps if step.id in these]
    titles = {paper.paper: title_of(paper) for paper in base.work.papers}
    told = [
        f"for “{titles[paper]}”, {', '.join(step.name for step in gone if step.paper == paper)}"
        for paper in dict.fromkeys(step.paper for step in gone)
    ]
    losses = [f"“{titles[step.paper]}” goes without {step.loses}" for step in gone if step.loses]
    desk = base.work.desk
    begun = [
        desk.clock_minute(at + 1) - 1
        for number, at, _ in base.aimed.placing.runs
        if base.work.steps[number].id in these
    ]
    return Concession(
        does=f"Leave out, {'; '.join(told)}",
        paper=gone[0].paper,
        price="; ".join(losses) or "it costs no marks",
        case=plan_case(leave_out(base.steps, these), base.papers, desk),
        by=desk.hour(min(begun)) if begun else None,
    )


def list_extensions(base: Case) -> Iterator[Concession]:
    """For each that is late, the fewest whole days more that help as much as being as late as it will be."""
    for late in base.list_late()[:MOST_TRIED]:
        if late.end is None:
            continue
        most = min(LONGEST_EXTENSION, math.ceil((late.end - late.due) / _DAY_MINUTES))
        best = _extended(base, late, most)
        least = 1
        while least < most:
            days = (least + most) // 2
            fewer = _extended(base, late, days)
            if fewer.key <= best.key:
                best, most = fewer, days
            else:
                least = days + 1
        refused = f"; without it {_share(late)}" if late.share else ""
        yield Concession(
            does=f"Ask for “{late.title}” to be due {count_of(most, 'day')} later",
            paper=late.paper.paper,
            price=f"no marks, if it is granted{refused}",
            case=best,
            by=base.work.desk.hour(min(late.due, _parting(base, best))),
        )


def be_late(base: Case) -> Concession:
    """The plan as it stands: what is late is handed in late."""
    late = base.list_late()
    steps, papers = base.steps, base.papers
    for one in late:
        if one.end is not None:
            steps, papers = _put_off(steps, papers, one, dt.timedelta(minutes=one.end - one.due))
    told = [
        f"“{one.title}” {one.by_how_much} late{f' ({_share(one)})' if one.share and len(late) > 1 else ''}"
        for one in late
        if one.end is not None
    ]
    ends = [one.end for one in late if one.end is not None]
    desk = base.work.desk
    return Concession(
        does="; ".join(
            [f"Hand in {', '.join(told)}"] * bool(told) + [f"Give up “{one.title}”" for one in late if one.end is None]
        ),
        paper=late[0].paper.paper,
        price=_price_of(late),
        case=replace(base, work=reckon_work(steps, papers, desk)),
        by=desk.hour(max(ends)) if ends else None,
    )


def _price_of(late: Sequence[Late]) -> str:
    """What lateness costs: of one paper the share, of several that each loses what stands by it."""
    dear = [one for one in late if one.share]
    if not dear:
        return "no marks"
    if len(late) == 1:
        return f"it loses {_share(dear[0])}"
    gone = [one.title for one in dear if one.end is None]
    told = "each loses what stands beside it" if len(gone) < len(dear) else ""
    return "; ".join(filter(None, (told, f"{', '.join(f'“{one}”' for one in gone)} loses all" if gone else "")))


def _extended(base: Case, late: Late, days: int) -> Case:
    """The work with so many days more for one that is late."""
    return plan_case(*_put_off(base.steps, base.papers, late, days * _DAY, costs_later=True), base.work.desk)


def _put_off(
    steps: tuple[Step, ...], papers: tuple[PaperDue, ...], late: Late, by: dt.timedelta, *, costs_later: bool = False
) -> tuple[tuple[Step, ...], tuple[PaperDue, ...]]:
    """The steps and papers with a later hour for one that is late."""
    if late.step is not None:
        moved = late.step.id
        return tuple(replace(one, due=one.due + by) if one.id == moved and one.due else one for one in steps), papers
    cost = late.paper.cost
    return steps, tuple(
        replace(one, due=one.due + by, cost=(lambda hour: cost(hour - by)) if costs_later else cost)
        if one.paper == late.paper.paper and one.due
        else one
        for one in papers
    )


def _parting(base: Case, other: Case) -> int:
    """The minute of the clock at which two plans of the same steps part, the second kept to the first as it can be."""
    first = write_plan(base.work, base.aimed.placing)
    second = write_plan(other.work, keep_order(other.work, other.aimed, first))
    for one, two in zip(first.sittings, second.sittings, strict=False):
        if one != two:
            return clock_minutes(min(one.start, two.start) if one.step != two.step else min(one.end, two.end))
    return base.work.desk.last


def _share(late: Late) -> str:
    """What of a mark is lost, in words."""
    return f"{100 * late.share:.3g} % of its mark"
