"""Steps placed in the free hours by rank: at each minute the foremost of those that can be worked on."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass
from heapq import heappop, heappush

from fairhand.planning.workload import Workload


@dataclass(frozen=True, slots=True)
class Placing:
    """Where each step came to stand."""

    runs: tuple[tuple[int, int, int], ...]
    """Step, first and last minute at the desk (half-open), in order."""
    ended: tuple[int | None, ...]
    """The clock's minute at which each step is done; None where the free hours do not suffice."""
    ready: tuple[int | None, ...]
    """The same for each paper."""


def place_steps(work: Workload, ranks: Sequence[float], least_minutes: int = 0) -> Placing:
    """Every step placed as early as its rank allows; the lowest rank goes first, and breaks in on what is begun.

    Args:
        work: The work in hand.
        ranks: By step, the lowest first.
        least_minutes: Where fewer than these are left of a session at the desk, nothing is begun or gone on with there
            that does not end there; 0 to use every minute.

    **Source**: preemptive list scheduling; with due hours for ranks it is the preemptive rule of earliest due date,
    which no other beats for the greatest lateness where steps wait only for an hour to come (Horn 1974, Naval Research
    Logistics Quarterly 21; from memory).
    """
    desk, followers, steps = work.desk, work.followers, work.steps
    left = [max(0, step.minutes) for step in steps]
    waits, opens = list(work.waits), list(work.opens)
    ended: list[int | None] = [None] * len(steps)
    runs: list[tuple[int, int, int]] = []
    ready: list[tuple[float, int]] = []
    coming: list[tuple[int, float, int]] = []
    total = desk.total

    def open_steps(these: list[int]) -> None:
        """These wait for nothing but their hour; those that take no time at the desk are done when it comes."""
        while these:
            number = these.pop()
            if left[number]:
                at = desk.desk_minute(opens[number])
                if at < total:
                    heappush(coming, (at, ranks[number], number))
            else:
                these += end_step(number, opens[number])

    def end_step(number: int, end: int) -> list[int]:
        """The step is done; the steps that now wait for nothing more."""
        ended[number] = end
        rested = end + max(0, steps[number].rest_minutes)
        freed = []
        for later in followers[number]:
            opens[later] = max(opens[later], rested)
            waits[later] -= 1
            if not waits[later]:
                freed.append(later)
        return freed

    open_steps([number for number, count in enumerate(waits) if not count])
    at = 0
    while ready or coming:
        if not ready:
            at = max(at, coming[0][0])
        while coming and coming[0][0] <= at:
            _, rank, number = heappop(coming)
            heappush(ready, (rank, number))
        first = heappop(ready)
        number = first[1]
        if least_minutes and at < total:
            close = desk.held[bisect_right(desk.held, at)]
            if close - at < min(least_minutes, left[number]):
                heappush(ready, first)
                at = close
                continue
        until = min(at + left[number], total)
        while coming and coming[0][0] < until:
            here, rank, other = heappop(coming)
            heappush(ready, (rank, other))
            if (rank, other) < first:
                until = here
                break
        runs.append((number, at, until))
        left[number] -= until - at
        at = until
        if not left[number]:
            open_steps(end_step(number, desk.clock_minute(at)))
        elif at < total:
            heappush(ready, first)
        if at >= total:
            break
    return Placing(tuple(runs), tuple(ended), _papers_ready(work, ended))


def _papers_ready(work: Workload, ended: Sequence[int | None]) -> tuple[int | None, ...]:
    """The hour at which the last step of each paper is done."""
    ready: list[int | None] = [work.desk.now] * len(work.papers)
    for paper, end in zip(work.owner, ended, strict=True):
        known = ready[paper]
        ready[paper] = None if end is None or known is None else max(known, end)
    return tuple(ready)
