"""Which hour each paper is best aimed at, when not every paper can be ready by its own."""

from __future__ import annotations

import random
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from fairhand.planning.one_machine import Piece, order_for_fewest_late
from fairhand.planning.placing import Placing, place_steps
from fairhand.planning.workload import Workload

EFFORT = 60_000
"""How many steps are placed, over all trials, before the search rests: it ends by count, never by the clock."""
TRIALS = 400
"""How many trials there are at most for each paper."""
SEED = 14
NEAR = 12
"""How many other papers, nearest in time, each late paper is tried against."""

Key = tuple[float, int, int, int]


@dataclass(frozen=True, slots=True)
class Aimed:
    """A placing, with the hours that were aimed at."""

    aims: tuple[int, ...]
    placing: Placing
    key: Key


def judge_placing(work: Workload, placing: Placing) -> Key:
    """What is to be as little as can be: the cost of lateness, the greatest lateness, all lateness, the slack's lack.

    Lateness counts milestones too. The slack is that of the paper on time that has the least of it.
    """
    lost = 0.0
    greatest = whole = 0
    slack = work.far
    for paper, end in enumerate(placing.ready):
        lost += work.cost(paper, end)
        due = work.due[paper]
        if due is not None:
            late = (work.far if end is None else end) - due
            if late > 0:
                greatest = max(greatest, late)
                whole += late
            else:
                slack = min(slack, -late)
    for number, due in work.milestones:
        end = placing.ended[number]
        late = (work.far if end is None else end) - due
        if late > 0:
            greatest = max(greatest, late)
            whole += late
    return round(lost, 9), greatest, whole, -slack


def aim_papers(work: Workload, effort: int = EFFORT) -> Aimed:
    """The papers aimed at the hours that lose least, as far as a search of bounded effort finds them.

    It starts from each paper's own due hour, or with some papers given up so that the others can be ready within so
    many days. While a paper is late, another is put off to the end of a day that costs it no more, or the two change
    places; from time to time a few are shaken, by a generator with a fixed seed.

    **Source**: iterated local search over the due hours that are aimed at (Lourenço, Martin & Stützle 2003, Handbook of
    Metaheuristics); the rest is common practice.
    """
    trials = max(1, min(effort // max(1, len(work.steps)), TRIALS * len(work.papers)))
    search = _Search(work, trials)
    best = search.tried(_own_hours(work))
    if best.key[0]:
        best = min([best, *map(search.tried, _given_up(work))], key=lambda found: found.key)
    best = search.descend(best)
    chance = random.Random(SEED)  # noqa: S311 -- the same plan each time
    while best.key[1] > 0 and search.left > 0:
        found = search.descend(search.tried(_shaken(work, best, chance)))
        if found.key < best.key:
            best = found
    return best


def rank_steps(work: Workload, aims: Sequence[int]) -> list[float]:
    """The hour by which each step should be done, if its paper is to be ready by the hour that it is aimed at."""
    ranks: list[float] = []
    for paper, lead, bound in zip(work.owner, work.lead, work.bound, strict=True):
        hour = aims[paper] - lead
        ranks.append(hour if bound is None or hour < bound else bound)
    return ranks


class _Search:
    """The trials of one search, counted."""

    def __init__(self, work: Workload, trials: int) -> None:
        """Nothing is tried yet."""
        self.work = work
        self.left = trials

    def tried(self, aims: tuple[int, ...]) -> Aimed:
        """The papers placed with these aims."""
        self.left -= 1
        placing = place_steps(self.work, rank_steps(self.work, aims))
        return Aimed(aims, placing, judge_placing(self.work, placing))

    def descend(self, best: Aimed) -> Aimed:
        """The best that is reached by changes of one or two aims, each for the better."""
        better = True
        while better and self.left > 0:
            better = False
            for aims in _changes(self.work, best):
                if self.left <= 0:
                    break
                found = self.tried(aims)
                if found.key < best.key:
                    best, better = found, True
                    break
        return best


def _own_hours(work: Workload) -> tuple[int, ...]:
    """Each paper's due hour; those without one after all others, in order."""
    after = work.far
    return tuple(after * (number + 1) if due is None else due for number, due in enumerate(work.due))


def _given_up(work: Workload) -> Iterator[tuple[int, ...]]:
    """The papers' hours, but for those that come after all others so that these can be ready by a later hour each."""
    own = _own_hours(work)
    minutes = [0] * len(own)
    for step, paper in zip(work.steps, work.owner, strict=True):
        minutes[paper] += max(0, step.minutes)
    dated = [paper for paper, due in enumerate(work.due) if due is not None and work.papers[paper].worth > 0]
    levels = [work.levels(paper) for paper in dated]
    for level in range(max(map(len, levels), default=0)):
        pieces = [
            Piece(
                name=str(paper),
                minutes=minutes[paper],
                due=work.desk.desk_minute(hours[min(level, len(hours) - 1)]),
                weight=work.papers[paper].worth,
            )
            for paper, hours in zip(dated, levels, strict=True)
        ]
        late = {int(piece.name) for piece in order_for_fewest_late(pieces)[1]}
        yield tuple(work.far if paper in late else hour for paper, hour in enumerate(own))


def _changes(work: Workload, now: Aimed) -> Iterator[tuple[int, ...]]:
    """The aims with one or two changed, those first that promise most."""
    aims, ready = now.aims, [work.far if end is None else end for end in now.placing.ready]
    dated = [paper for paper, due in enumerate(work.due) if due is not None]
    late = {paper: ready[paper] - (work.due[paper] or 0) for paper in dated}
    worst = (
        sorted(
            (paper for paper in dated if late[paper] > 0),
            key=lambda paper: (-work.cost(paper, ready[paper]), -late[paper]),
        )
        or sorted(dated, key=lambda paper: -late[paper])[:1]
    )
    for paper in worst:
        near = sorted((other for other in dated if other != paper), key=lambda other: abs(ready[other] - ready[paper]))
        for other in near[:NEAR]:
            for hour in _later_hours(work, other, aims[other]):
                yield _with(aims, other, hour)
            yield _with(aims, paper, aims[other] - 1)
            swapped = list(aims)
            swapped[paper], swapped[other] = aims[other], aims[paper]
            yield tuple(swapped)
        for hour in _later_hours(work, paper, aims[paper]):
            yield _with(aims, paper, hour)


def _later_hours(work: Workload, paper: int, hour: int) -> tuple[int, ...]:
    """Where a paper might be put off to: the next two hours before it grows dearer, or after all the others."""
    later = [level for level in work.levels(paper) if level > hour]
    return (*later[:2], work.far) if hour < work.far else ()


def _with(aims: tuple[int, ...], paper: int, hour: int) -> tuple[int, ...]:
    """The aims with one changed."""
    return (*aims[:paper], hour, *aims[paper + 1 :])


def _shaken(work: Workload, best: Aimed, chance: random.Random) -> tuple[int, ...]:
    """The aims with a few changed at hazard."""
    aims = list(best.aims)
    dated = [paper for paper, due in enumerate(work.due) if due is not None]
    for paper in chance.sample(dated, min(len(dated), 3)):
        aims[paper] = chance.choice((*work.levels(paper), aims[chance.choice(dated)]))
    return tuple(aims)
