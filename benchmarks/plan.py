"""What a plan costs: 5, 20 and 60 papers, with time enough and with too little, and planned again after one step.

Run as ``python benchmarks/plan.py``. Each paper has seven steps, a night, a reader's days and a book to be fetched. The
load is the work over the free hours up to the last due hour.
"""

from __future__ import annotations

import datetime as dt
import math
import random
import statistics
from collections.abc import Callable
from functools import partial
from itertools import pairwise

from measuring import in_turn, measured
from measuring import over as ratio

from fairhand.model.plan import Free, PaperDue, Plan, Step
from fairhand.planning.sittings import plan_sittings
from fairhand.planning.way_out import find_ways_out

NOW = dt.datetime(2031, 3, 3, 8, tzinfo=dt.UTC)
DAY, HOUR = dt.timedelta(days=1), dt.timedelta(hours=1)
HOURS_A_DAY = 5
RUNS = 5
STEPS = (
    ("read", 60, 240, 0),
    ("outline", 30, 60, 0),
    ("draft", 90, 300, 480),
    ("revise", 60, 150, 0),
    ("reader", 20, 20, 1440),
    ("copy-edit", 30, 120, 480),
    ("proof", 30, 60, 0),
)
"""Each step's name, its least and most minutes, and the rest after it."""

Hand = tuple[list[Step], list[PaperDue], list[Free]]


def by_the_day(due: dt.datetime) -> Callable[[dt.datetime], float]:
    """Five per cent for each day begun, nothing after five."""

    def cost(hour: dt.datetime) -> float:
        days = math.ceil(max(dt.timedelta(), hour - due) / DAY)
        return 0.05 * days if days <= 5 else 1.0

    return cost


def make_hand(count: int, load: float) -> Hand:
    """So many papers, due one after another over the days that the load leaves."""
    chance = random.Random(count)  # noqa: S311 -- the same papers in each run
    steps: list[Step] = []
    for number in range(count):
        before: tuple[str, ...] = ()
        opens = NOW + chance.choice([0, 0, 0, 2]) * DAY
        for name, least, most, rest in STEPS:
            minutes = 5 * chance.randint(least // 5, most // 5)
            steps.append(
                Step(
                    f"p{number}/{name}",
                    f"p{number}",
                    name,
                    minutes,
                    after=before,
                    rest_minutes=rest,
                    earliest=None if before else opens,
                    optional=name == "reader",
                )
            )
            before = (steps[-1].id,)
    days = math.ceil(sum(step.minutes for step in steps) / load / 60 / HOURS_A_DAY)
    papers = []
    for number in range(count):
        due = NOW + max(4, round(days * (number + 1) / count)) * DAY + 9 * HOUR
        papers.append(PaperDue(f"p{number}", due, by_the_day(due), chance.choice([1.0, 1.0, 2.0])))
    free = [Free(NOW + day * DAY + HOUR, NOW + day * DAY + (1 + HOURS_A_DAY) * HOUR) for day in range(days + 42)]
    return steps, papers, free


def share_kept(former: Plan, again: Plan) -> float:
    """How much of the order of the steps is kept: neighbours that are neighbours still, in that order."""
    steps = {sitting.step for sitting in again.sittings}
    order = [[one for one in dict.fromkeys(s.step for s in plan.sittings) if one in steps] for plan in (former, again)]
    pairs = [set(pairwise(one)) for one in order]
    return len(pairs[0] & pairs[1]) / max(1, len(pairs[0]))


def main() -> None:
    """Print seconds, how they grow, and what planning again costs beside planning."""
    print("papers  load  steps   plan s   growth  again s  again/plan  kept   ways out s   lost")
    for load in (0.77, 1.1):
        first = 0.0
        for count in (5, 20, 60):
            steps, papers, free = make_hand(count, load)
            plan = plan_sittings(steps, papers, free, NOW)
            over = plan.sittings[0].end
            rest = [step for step in steps if step.id != plan.sittings[0].step]
            again = plan_sittings(rest, papers, free, over, plan)
            planning, replanning, leaving = in_turn(
                partial(measured, partial(plan_sittings, steps, papers, free, NOW)),
                partial(measured, partial(plan_sittings, rest, papers, free, over, plan)),
                partial(measured, partial(find_ways_out, steps, papers, free, NOW)),
                runs=RUNS,
            )
            first = first or statistics.median(planning)
            print(
                f"{count:6d} {load:5.0%} {len(steps):6d} {statistics.median(planning):8.3f} "
                f"{statistics.median(planning) / first:7.1f} x {statistics.median(replanning):7.3f} "
                f"{ratio(replanning, planning):10.2f} x {share_kept(plan, again):6.0%} "
                f"{statistics.median(leaving):11.3f} {plan.lost:8.2f}"
            )


if __name__ == "__main__":
    main()
