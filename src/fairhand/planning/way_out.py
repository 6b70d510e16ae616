"""When not everything can be met: the ways out that cost least, each found by planning again with one change."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Sequence
from dataclasses import replace

from fairhand.model.plan import Free, PaperDue, Step, WayOut
from fairhand.planning.aiming import EFFORT
from fairhand.planning.concessions import (
    Case,
    Concession,
    be_late,
    leave_more_out,
    list_extensions,
    list_left_out,
    plan_case,
)
from fairhand.planning.desk_time import count_desk_time
from fairhand.planning.shortfall import missing_minutes

CLOSER = 2
"""How many changes of each kind are planned with more effort, after a glance at all."""


def find_ways_out(
    steps: Sequence[Step],
    papers: Sequence[PaperDue],
    free: Iterable[Free],
    now: dt.datetime,
    *,
    longest_minutes: int = 0,
    pause_minutes: int = 0,
    most: int = 3,
    effort: int = EFFORT,
) -> tuple[WayOut, ...]:
    """The ways out that lose least, the cheapest first; none where everything can be met.

    They are: optional steps left out, one alone or, where that is not enough, as many as help; an extension asked for;
    and being late where it loses least, which is the plan as it stands. The best of each kind comes before the second
    best of any.

    Args:
        steps: As for `plan_sittings`, and all that follows.
        papers: When each is due, and what lateness costs.
        free: The hours at the desk.
        now: The present hour.
        longest_minutes: No sitting is longer; 0 for no limit.
        pause_minutes: What is kept free where a longer stretch is parted.
        most: How many are told.
        effort: How many steps may be placed over all trials of the plan; each change is given a quarter of it.

    >>> nine = dt.datetime(2031, 3, 3, 9)
    >>> work = [Step("seals/draft", "seals", "write the draft", 90),
    ...         Step("seals/reader", "seals", "give it to a reader", 60, after=("seals/draft",), optional=True)]
    >>> eleven = PaperDue("seals", nine.replace(hour=11), lambda hour: 0.1 if hour.hour >= 11 else 0.0, title="Seals")
    >>> for way in find_ways_out(work, [eleven], [Free(nine, nine.replace(hour=17))], nine):
    ...     print(f"{way.does} ({way.price}): {way.gains_minutes} minutes")
    Leave out, for “Seals”, give it to a reader (it costs no marks): 30 minutes
    Ask for “Seals” to be due 1 day later (no marks, if it is granted; without it 10 % of its mark): 30 minutes
    Hand in “Seals” 30 minutes late (it loses 10 % of its mark): 30 minutes
    """
    base = plan_case(tuple(steps), tuple(papers), count_desk_time(free, now, longest_minutes, pause_minutes), effort)
    if base.key[1] <= 0:
        return ()
    singly = list_left_out(base)
    leaving = _best(base, singly, effort)
    if not leaving or leaving[0].case.key[1] > 0:
        leaving = _best(base, leave_more_out(base, singly), effort) or leaving
    kinds = (leaving, _best(base, list_extensions(base), effort), [be_late(base)])
    chosen = [kind[0] for kind in kinds if kind]
    chosen += sorted((one for kind in kinds for one in kind[1:]), key=lambda one: one.case.key)
    missing = missing_minutes(base.work)
    return tuple(
        WayOut(
            does=one.does,
            paper=one.paper,
            gains_minutes=max(0, missing - missing_minutes(one.case.work)),
            costs=one.case.key[0],
            price=one.price,
            by=one.by,
        )
        for one in sorted(chosen[:most], key=lambda one: one.case.key[0])
    )


def _best(base: Case, found: Iterable[Concession], effort: int) -> list[Concession]:
    """Of those that help, the ones that do most at a glance, planned with more effort; the best first."""
    closer = []
    for one in sorted(found, key=lambda one: one.case.key)[:CLOSER]:
        case = plan_case(one.case.steps, one.case.papers, base.work.desk, effort // 4)
        closer.append(replace(one, case=min(case, one.case, key=lambda case: case.key)))
    return sorted((one for one in closer if one.case.key < base.key), key=lambda one: one.case.key)
