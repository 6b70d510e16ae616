"""The work in hand, as figures: what each step takes, waits for and holds up, and what lateness costs."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass, field

from fairhand.model.plan import PaperDue, Step
from fairhand.planning.desk_time import DeskTime, clock_minutes

NEVER = 60 * 24 * 365
"""A paper that the free hours do not hold is reckoned as handed in so many minutes after the last of them: a year."""
LEVELS = 10
"""How many of the hours at which lateness grows dearer are looked at."""


@dataclass(frozen=True, slots=True)
class Workload:
    """All steps and papers, each under a number; hours are minutes of the clock."""

    desk: DeskTime
    steps: tuple[Step, ...]
    papers: tuple[PaperDue, ...]
    """Those with something left to do: by their due hours, then those without one, as their steps came."""
    owner: tuple[int, ...]
    """Each step's paper."""
    opens: tuple[int, ...]
    """The hour before which each step cannot begin."""
    followers: tuple[tuple[int, ...], ...]
    """The steps that come after each."""
    waits: tuple[int, ...]
    """How many steps each comes after."""
    due: tuple[int | None, ...]
    """Each paper's due hour."""
    milestones: tuple[tuple[int, int], ...]
    """Steps with hours of their own."""
    lead: tuple[int, ...]
    """How long before its paper's hour each step should be done: what must still be worked and waited for after it."""
    bound: tuple[int | None, ...]
    """The hour by which each step should be done for a milestone's sake."""
    told: dict[tuple[int, int], float] = field(default_factory=dict)
    """What hand-ins at hours cost, as far as it has been asked."""

    def cost(self, paper: int, end: int | None) -> float:
        """What a paper loses that is ready at a minute of the clock, or (None) never: its share times its worth."""
        at = self.far if end is None else end
        key = (paper, at)
        if key not in self.told:
            one = self.papers[paper]
            self.told[key] = one.cost(self.desk.hour(at)) * one.worth
        return self.told[key]

    @property
    def far(self) -> int:
        """An hour so late that whatever ends then was never done."""
        return self.desk.last + NEVER

    def levels(self, paper: int) -> tuple[int, ...]:
        """The last hours before lateness grows dearer, from the due hour on: the hours worth aiming at."""
        hour = self.due[paper]
        if hour is None:
            return ()
        found = [hour]
        while len(found) < LEVELS and hour < self.desk.last:
            hour = self._level_end(paper, hour + 1)
            found.append(hour)
        return tuple(found)

    def _level_end(self, paper: int, hour: int) -> int:
        """The last minute that costs no more than an hour does; where each minute costs more, a day later."""
        cost = self.cost(paper, hour)
        reach = 60 * 24
        if self.cost(paper, hour + 1) > cost:
            return min(hour + reach, self.desk.last)
        good = hour
        while good < self.desk.last and self.cost(paper, good + reach) <= cost:
            good += reach
            reach *= 2
        if good >= self.desk.last:
            return self.desk.last
        bad = good + reach
        while bad - good > 1:
            middle = (good + bad) // 2
            good, bad = (middle, bad) if self.cost(paper, middle) <= cost else (good, middle)
        return good


def reckon_work(steps: Sequence[Step], papers: Sequence[PaperDue], desk: DeskTime) -> Workload:
    """The work in hand as figures.

    A step that comes after one that is not there (it is done) does not wait for it. Of two steps with one id the first
    counts. A step whose paper is not among the papers belongs to one without a due hour.
    """
    unique = {step.id: step for step in reversed(steps)}
    steps = [step for step in steps if unique.pop(step.id, None) is not None]
    numbers = {step.id: number for number, step in enumerate(steps)}
    known = {paper.paper: paper for paper in papers}
    begun = dict.fromkeys(step.paper for step in steps)
    listed = [known.get(paper) or PaperDue(paper, None, _costs_nothing) for paper in begun]
    listed.sort(key=lambda paper: (paper.due is None, paper.due and clock_minutes(paper.due)))
    places = {paper.paper: number for number, paper in enumerate(listed)}

    before = [sorted({numbers[name] for name in step.after if name in numbers}) for step in steps]
    followers: list[list[int]] = [[] for _ in steps]
    for number, earlier in enumerate(before):
        for one in earlier:
            followers[one].append(number)
    owner = tuple(places[step.paper] for step in steps)
    due = tuple(None if paper.due is None else clock_minutes(paper.due) for paper in listed)
    milestones = tuple((number, clock_minutes(step.due)) for number, step in enumerate(steps) if step.due is not None)
    opens = tuple(
        desk.now if step.earliest is None else max(desk.now, clock_minutes(step.earliest, up=True)) for step in steps
    )
    order = order_steps(followers)
    hours = [due[paper] for paper in owner]
    return Workload(
        desk=desk,
        steps=tuple(steps),
        papers=tuple(listed),
        owner=owner,
        opens=opens,
        followers=tuple(map(tuple, followers)),
        waits=tuple(map(len, before)),
        due=due,
        milestones=milestones,
        lead=_leads(steps, followers, order, owner, [desk.last if hour is None else hour for hour in hours], desk),
        bound=_bounds(steps, followers, order, dict(milestones), desk),
    )


def order_steps(followers: Sequence[Sequence[int]]) -> list[int]:
    """The steps, each before those that come after it; those that wait for one another in a ring are left out.

    >>> order_steps([[1], [], [0], [4], [3]])
    [2, 0, 1]
    """
    waits = [0] * len(followers)
    for later in followers:
        for one in later:
            waits[one] += 1
    order = [number for number, count in enumerate(waits) if not count]
    for number in order:
        for one in followers[number]:
            waits[one] -= 1
            if not waits[one]:
                order.append(one)
    return order


def _costs_nothing(_hour: dt.datetime) -> float:
    """A paper that nobody waits for."""
    return 0.0


def _start_by(step: Step, end: int, desk: DeskTime) -> int:
    """The latest hour at which a step can begin and end by an hour."""
    return desk.clock_minute(desk.desk_minute(end) - step.minutes) if step.minutes > 0 else end


def _leads(
    steps: Sequence[Step],
    followers: Sequence[Sequence[int]],
    order: Sequence[int],
    owner: Sequence[int],
    hours: Sequence[int],
    desk: DeskTime,
) -> tuple[int, ...]:
    """How long before its paper's hour each step should be done, if the free hours were that paper's alone."""
    by = list(hours)
    for number in reversed(order):
        for later in followers[number]:
            if owner[later] == owner[number]:
                by[number] = min(by[number], _start_by(steps[later], by[later], desk) - steps[number].rest_minutes)
    return tuple(hour - end for hour, end in zip(hours, by, strict=True))


def _bounds(
    steps: Sequence[Step],
    followers: Sequence[Sequence[int]],
    order: Sequence[int],
    own: dict[int, int],
    desk: DeskTime,
) -> tuple[int | None, ...]:
    """The hour by which each step should be done, so that no milestone at or after it is late."""
    by = [own.get(number) for number in range(len(steps))]
    for number in reversed(order):
        for later in followers[number]:
            end = by[later]
            if end is not None:
                limit = _start_by(steps[later], end, desk) - steps[number].rest_minutes
                mine = by[number]
                by[number] = limit if mine is None else min(mine, limit)
    return tuple(by)
