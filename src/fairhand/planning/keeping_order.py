"""A new plan that moves as little of the former one as it can."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Collection

from fairhand.model.plan import Plan
from fairhand.planning.aiming import Aimed, Key, judge_placing
from fairhand.planning.desk_time import clock_minutes
from fairhand.planning.placing import Placing, place_steps
from fairhand.planning.workload import Workload

MOST_MOVED = 3
"""How many papers may leave the former order before the new plan is taken as it is."""


def keep_order(work: Workload, best: Aimed, former: Plan) -> Placing:
    """The former order, placed from now on, but for the few papers that must leave it to do as well as the best plan.

    Steps placed in the order of their former endings come to stand where they stood. New steps, and those of a paper
    that is taken out, go before the first step that the best plan ends later than them. It does as well where it loses
    no more, has no greater lateness, and leaves half the slack or more: for less the order is not worth upsetting.
    """
    moved: set[int] = set()
    kept = _placed(work, best, former, moved)
    while not _does_as_well(kept[0], best.key):
        rest = [paper for paper in range(len(work.papers)) if paper not in moved]
        if len(moved) == MOST_MOVED or not rest:
            return best.placing
        tried = {paper: _placed(work, best, former, {*moved, paper}) for paper in rest}
        first = min(rest, key=lambda paper: tried[paper][0])
        moved.add(first)
        kept = tried[first]
    return kept[1]


def _does_as_well(key: Key, best: Key) -> bool:
    """Whether a placing is near enough to the best one."""
    return key[0] <= best[0] and key[1] <= best[1] and -key[3] * 2 >= -best[3]


def _placed(work: Workload, best: Aimed, former: Plan, moved: Collection[int]) -> tuple[Key, Placing]:
    """The steps in their former order, but for those of the papers that are moved."""
    endings = {sitting.step: clock_minutes(sitting.end) for sitting in former.sittings}
    kept = [number for number, step in enumerate(work.steps) if step.id in endings and work.owner[number] not in moved]
    kept.sort(key=lambda number: endings[work.steps[number].id])
    ends = [work.far if end is None else end for end in best.placing.ended]
    latest: list[int] = []
    for number in kept:
        latest.append(max(ends[number], latest[-1] if latest else 0))
    ranks = [bisect_right(latest, end) - 1 + end / (work.far + 1) for end in ends]
    for place, number in enumerate(kept):
        ranks[number] = place
    placing = place_steps(work, ranks)
    return judge_placing(work, placing), placing
