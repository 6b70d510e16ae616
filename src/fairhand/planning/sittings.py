"""The plan: the steps of all papers placed in the free hours."""

from __future__ import annotations

import datetime as dt
from bisect import bisect_right
from collections.abc import Iterable, Sequence

from fairhand.model.plan import Free, PaperDue, Plan, Sitting, Step
from fairhand.planning.aiming import EFFORT, aim_papers, judge_placing
from fairhand.planning.desk_time import count_desk_time
from fairhand.planning.keeping_order import keep_order
from fairhand.planning.placing import Placing, place_steps
from fairhand.planning.workload import Workload, reckon_work

LEAST_MINUTES = 15
"""A sitting is no shorter than this, unless its step is. **Source**: common practice."""


def plan_sittings(
    steps: Sequence[Step],
    papers: Sequence[PaperDue],
    free: Iterable[Free],
    now: dt.datetime,
    former: Plan | None = None,
    *,
    longest_minutes: int = 0,
    pause_minutes: int = 0,
    effort: int = EFFORT,
) -> Plan:
    """The plan that loses least by lateness, then has the least lateness, then leaves the most slack.

    Args:
        steps: what is still to be done; a step that is done is not among them, and one that is begun has what is left.
        papers: when each is due and what lateness costs.
        free: the hours at the desk, up to well beyond the last due hour; what they do not hold is left unplaced.
        now: nothing is placed before it. The plan's hours are told in its zone.
        former: the last plan; its order is kept wherever that costs nothing.
        longest_minutes: no sitting is longer; 0 for no limit.
        pause_minutes: what is kept free where a longer stretch is parted.
        effort: how many steps may be placed over all trials.

    >>> monday = dt.datetime(2031, 3, 3)
    >>> evenings = [Free(monday + dt.timedelta(days=day, hours=18), monday + dt.timedelta(days=day, hours=20))
    ...             for day in range(5)]
    >>> seals = [Step("seals/draft", "seals", "write the draft", 180, rest_minutes=8 * 60),
    ...          Step("seals/revise", "seals", "revise it", 60, after=("seals/draft",))]
    >>> due = PaperDue("seals", monday + dt.timedelta(days=3), lambda hour: 0.0)
    >>> plan = plan_sittings(seals, [due], evenings, monday)
    >>> [(sitting.step, sitting.start.strftime("%a %H:%M")) for sitting in plan.sittings]
    [('seals/draft', 'Mon 18:00'), ('seals/draft', 'Tue 18:00'), ('seals/revise', 'Wed 18:00')]
    """
    work = reckon_work(steps, papers, count_desk_time(free, now, longest_minutes, pause_minutes))
    best = aim_papers(work, effort)
    return write_plan(work, _without_slivers(work, best.placing if former is None else keep_order(work, best, former)))


def _without_slivers(work: Workload, placing: Placing) -> Placing:
    """The same order with no step begun for a few minutes at a session's end, where that costs nothing."""
    ranks = [float(work.far if end is None else end) for end in placing.ended]
    wider = place_steps(work, ranks, LEAST_MINUTES)
    before, after = judge_placing(work, placing), judge_placing(work, wider)
    gone = sum(end is None for end in wider.ended) > sum(end is None for end in placing.ended)
    return placing if gone or after[:3] > before[:3] or -after[3] * 2 < -before[3] else wider


def write_plan(work: Workload, placing: Placing) -> Plan:
    """A placing as hours of the day, each run parted where a session at the desk ends."""
    desk = work.desk
    sittings = []
    for number, begin, end in placing.runs:
        at = begin
        while at < end:
            session = bisect_right(desk.held, at)
            until = min(end, desk.held[session])
            close = desk.ends[session] - (desk.held[session] - until)
            sittings.append(Sitting(work.steps[number].id, desk.hour(close - (until - at)), desk.hour(close)))
            at = until
    return Plan(
        sittings=tuple(sittings),
        ends=tuple(
            (paper.paper, desk.hour(end))
            for paper, end in zip(work.papers, placing.ready, strict=True)
            if end is not None
        ),
        unplaced=tuple(step.id for step, end in zip(work.steps, placing.ended, strict=True) if end is None),
        lost=round(sum(work.cost(number, end) for number, end in enumerate(placing.ready)), 9),
    )
