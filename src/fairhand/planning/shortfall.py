"""How many hours are missing before all can be done in time."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Sequence

from fairhand.model.plan import Free, PaperDue, Step
from fairhand.planning.desk_time import count_desk_time
from fairhand.planning.one_machine import Piece, work_by_due
from fairhand.planning.workload import Workload, order_steps, reckon_work


def count_shortfall(
    steps: Sequence[Step],
    papers: Sequence[PaperDue],
    free: Iterable[Free],
    now: dt.datetime,
    *,
    longest_minutes: int = 0,
    pause_minutes: int = 0,
) -> int:
    """How many minutes at the desk are missing at least: with fewer more, something is late whatever the order.

    Args:
        steps: As for `plan_sittings`, and all that follows.
        papers: When each is due.
        free: The hours at the desk.
        now: The present hour.
        longest_minutes: No sitting is longer; 0 for no limit.
        pause_minutes: What is kept free where a longer stretch is parted.

    >>> nine = dt.datetime(2031, 3, 3, 9)
    >>> steps = [Step("seals/draft", "seals", "write the draft", 150)]
    >>> noon = PaperDue("seals", nine.replace(hour=11), lambda hour: 0.0)
    >>> count_shortfall(steps, [noon], [Free(nine, nine.replace(hour=17))], nine)
    30
    """
    return missing_minutes(reckon_work(steps, papers, count_desk_time(free, now, longest_minutes, pause_minutes)))


def missing_minutes(work: Workload) -> int:
    """The same for work that has been reckoned.

    Each step is held to the minutes at the desk between the first hour at which it could be begun and the last at which
    it must be done, were its paper the only one; in these windows the greatest lateness of all is what is missing.

    **Source**: Horn's preemptive earliest due date over windows from heads and tails (Carlier 1982, European Journal of
    Operational Research 11; from memory).
    """
    desk = work.desk
    opens, begin = list(work.opens), [0] * len(work.steps)
    for number in order_steps(work.followers):
        step = work.steps[number]
        begin[number] = desk.desk_minute(opens[number])
        end = desk.clock_minute(begin[number] + step.minutes) if step.minutes > 0 else opens[number]
        for later in work.followers[number]:
            opens[later] = max(opens[later], end + max(0, step.rest_minutes))
    pieces = []
    for number, step in enumerate(work.steps):
        due, bound = work.due[work.owner[number]], work.bound[number]
        hours = [hour for hour in (None if due is None else due - work.lead[number], bound) if hour is not None]
        if hours and step.minutes > 0:
            pieces.append(Piece(step.id, step.minutes, desk.desk_minute(min(hours)), opens=begin[number]))
    return max(0, *(end - piece.due for piece, _, end in work_by_due(pieces)), 0)
