# ruff: noqa: FURB136 -- in the innermost loop a comparison costs half of what a call does
"""Pieces of work in the order that loses least, where each costs by the minute that it is late (1‖ΣwT)."""

from __future__ import annotations

import math
import random
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import accumulate

from fairhand.planning.one_machine import Piece
from fairhand.planning.tardiness_sets import Figures, order_sets

FIRST_ROUNDS, MORE_ROUNDS = 20, 100
"""How often an order is shaken and mended before the exact part, and after it where that gave up."""


@dataclass(frozen=True, slots=True)
class Ordering:
    """An order, what it costs, and whether nothing can cost less."""

    order: tuple[int, ...]
    """The pieces by their numbers."""
    cost: float
    proven: bool


def order_by_tardiness(pieces: Sequence[Piece], chance: random.Random) -> Ordering:
    """The order of least total weighted tardiness that is found, and whether it is proven the least.

    From a rule of thumb for a start, pieces are moved and exchanged while that helps; the best order is shaken and
    mended again. Sets of pieces, each with its cheapest order, are gone through from the back as long as they are few.

    **Source**: the start is the apparent tardiness cost of Vepsalainen & Morton 1987, Management Science 33; the search
    is an iterated local search as in Congram, Potts & van de Velde 2002, INFORMS Journal on Computing 14, with single
    moves; the exact part is the dynamic programme over sets of Held & Karp 1962 under the dominances of Emmons 1969,
    Operations Research 17. All from memory.

    >>> pieces = [Piece("a", 6, 8), Piece("b", 9, 14), Piece("c", 4, 16), Piece("d", 7, 30)]
    >>> order_by_tardiness(pieces, random.Random(0))
    Ordering(order=(0, 1, 2, 3), cost=4, proven=True)
    """
    work = Figures(
        [piece.minutes for piece in pieces], [piece.weight for piece in pieces], [piece.due for piece in pieces]
    )
    best = _start(work)
    _mend(best, work)
    cost = _shake(best, work, chance, FIRST_ROUNDS)
    exact = order_sets(work, cost) if cost else ()
    if exact is None:
        cost = _shake(best, work, chance, MORE_ROUNDS)
        return Ordering(tuple(best), cost, proven=False)
    order = exact or best
    return Ordering(tuple(order), _cost(order, work), proven=True)


def _ends(order: Sequence[int], work: Figures) -> list[int]:
    """When each place of an order ends."""
    return list(accumulate(work.minutes[number] for number in order))


def _cost(order: Sequence[int], work: Figures) -> float:
    """What an order costs: each piece's minutes late times its weight."""
    return sum(
        work.weights[number] * max(0, end - work.dues[number])
        for number, end in zip(order, _ends(order, work), strict=True)
    )


def _start(work: Figures) -> list[int]:
    """By weight for each minute of work, less the further off the due minute is."""
    left = list(range(len(work.minutes)))
    scale = 2 * sum(work.minutes) / max(1, len(left)) or 1

    def worth(number: int, at: int) -> float:
        early = max(0, work.dues[number] - work.minutes[number] - at)
        return work.weights[number] / max(1, work.minutes[number]) * math.exp(-early / scale)

    order: list[int] = []
    at = 0
    while left:
        first = max(left, key=lambda number: worth(number, at))
        left.remove(first)
        order.append(first)
        at += work.minutes[first]
    return order


def _shake(best: list[int], work: Figures, chance: random.Random, rounds: int) -> float:
    """The best order, in its place, after so many rounds; what it costs."""
    cost = _cost(best, work)
    for _ in range(rounds if len(best) > 1 else 0):
        if not cost:
            break
        order = list(best)
        for _ in range(chance.randint(3, 7)):
            one = chance.randrange(len(order) - 1)
            other = min(len(order) - 1, one + chance.randint(1, 8))
            order[one], order[other] = order[other], order[one]
        _mend(order, work)
        found = _cost(order, work)
        if found <= cost:
            best[:], cost = order, found
    return cost


def _mend(order: list[int], work: Figures) -> None:
    """The order, in its place, until no piece gains by moving and no two by changing places."""
    while _move(order, work) or _exchange(order, work):
        pass


def _move(order: list[int], work: Figures) -> bool:
    """Whether any piece gained by moving; each is put where it gains most.

    A move by several places is a row of exchanges with the next, so that each further place is priced in one step.
    """
    minutes, weights, dues = work
    ends = _ends(order, work)
    gained = False
    for number in tuple(order):
        own, weight, due = minutes[number], weights[number], dues[number]
        place = order.index(number)
        late = ends[place] - due
        before = weight * late if late > 0 else 0
        least, to, price = 0.0, place, -before
        for at in range(place + 1, len(order)):
            end, other = ends[at], order[at]
            late = end - dues[other]
            if late > 0:
                price -= weights[other] * (own if own < late else late)
            late = end - due
            whole = price + weight * late if late > 0 else price
            if whole < least:
                least, to = whole, at
        price = -before
        for at in range(place - 1, -1, -1):
            if price >= least:
                break
            end, other = ends[at] + own, order[at]
            late = end - dues[other]
            if late > 0:
                price += weights[other] * (own if own < late else late)
            late = end - minutes[other] - due
            whole = price + weight * late if late > 0 else price
            if whole < least:
                least, to = whole, at
        if to != place:
            order.insert(to, order.pop(place))
            first, last = min(place, to), max(place, to)
            end = ends[first - 1] if first else 0
            for at in range(first, last + 1):
                end += minutes[order[at]]
                ends[at] = end
            gained = True
    return gained


def _exchange(order: list[int], work: Figures) -> bool:
    """Whether two pieces gained by changing places; the first two that do have changed them."""
    minutes, weights, dues = work
    ends = _ends(order, work)
    for first, one in enumerate(order):
        begin = ends[first] - minutes[one]
        early = ends[first] - dues[one]
        for second in range(first + 1, len(order)):
            other, end = order[second], ends[second]
            shift = minutes[other] - minutes[one]
            late = end - dues[one]
            price = weights[one] * ((late if late > 0 else 0) - (early if early > 0 else 0))
            late = end - dues[other]
            soon = begin + minutes[other] - dues[other]
            price += weights[other] * ((soon if soon > 0 else 0) - (late if late > 0 else 0))
            if shift >= 0 <= price:
                continue
            for at in range(first + 1, second):
                late = ends[at] - dues[order[at]]
                later = late + shift
                price += weights[order[at]] * ((later if later > 0 else 0) - (late if late > 0 else 0))
                if shift >= 0 <= price:
                    break
            if price < 0:
                order[first], order[second] = other, one
                return True
    return False
