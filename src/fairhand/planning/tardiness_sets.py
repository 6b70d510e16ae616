"""Sets of pieces of work, from the back, each with the cheapest order of those that come after it: exact where few."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

MOST_SETS = 5_000
"""How many sets, equally many pieces in each, are kept side by side before it is given up."""


class Figures(NamedTuple):
    """The pieces' figures, each under the piece's number."""

    minutes: list[int]
    weights: list[float]
    dues: list[int]


def order_sets(work: Figures, cost: float) -> tuple[int, ...] | None:
    """An order cheaper than a cost; empty where there is none; None where too many sets would have to be kept.

    **Source**: the dynamic programme over sets of Held & Karp 1962, from the back, under the dominances of Emmons 1969,
    Operations Research 17; both from memory.

    >>> order_sets(Figures([9, 6], [1, 1], [14, 8]), 8), order_sets(Figures([9, 6], [1, 1], [14, 8]), 1)
    ((1, 0), ())
    """
    minutes, weights, dues = work
    followers = _dominances(work)
    layer: dict[int, tuple[float, int]] = {(1 << len(minutes)) - 1: (0, sum(minutes))}
    backwards: list[dict[int, int]] = []
    for _ in minutes:
        smaller: dict[int, tuple[float, int]] = {}
        last: dict[int, int] = {}
        for held, (spent, end) in layer.items():
            rest = held
            while rest:
                bit = rest & -rest
                rest ^= bit
                number = bit.bit_length() - 1
                if followers[number] & held:
                    continue
                late = end - dues[number]
                price = spent + weights[number] * late if late > 0 else spent
                if price >= cost:
                    continue
                known = smaller.get(held ^ bit)
                if known is None or price < known[0]:
                    smaller[held ^ bit] = (price, end - minutes[number])
                    last[held ^ bit] = number
        if len(smaller) > MOST_SETS:
            return None
        if not smaller:
            return ()
        layer = smaller
        backwards.append(last)
    held = 0
    order = []
    for last in reversed(backwards):
        order.append(last[held])
        held |= 1 << last[held]
    return tuple(order)


def _dominances(work: Figures) -> list[int]:
    """For each piece those, as bits, that follow it in some best order, the same order for all."""
    minutes, weights, dues = work
    total = sum(minutes)
    pairs = [(one, other) for one in range(len(minutes)) for other in range(len(minutes)) if one != other]
    before, after = [0] * len(minutes), [0] * len(minutes)
    ahead, behind = [0] * len(minutes), [0] * len(minutes)
    more = True
    while more:
        more = False
        for one, other in pairs:
            if (before[one] | after[one]) >> other & 1:
                continue
            room = total - behind[one]
            heavier = weights[one] >= weights[other]
            soonest = ahead[other] + minutes[other]
            if (
                dues[other] >= room
                or (heavier and minutes[one] <= minutes[other] and dues[one] <= max(dues[other], soonest))
                or (heavier and dues[one] <= dues[other] and dues[other] >= room - minutes[other])
            ):
                earlier, later = before[one] | 1 << one, after[other] | 1 << other
                for number in _members(earlier):
                    behind[number] += sum(minutes[new] for new in _members(later & ~after[number]))
                    after[number] |= later
                for number in _members(later):
                    ahead[number] += sum(minutes[new] for new in _members(earlier & ~before[number]))
                    before[number] |= earlier
                more = True
    return after


def _members(these: int) -> Iterator[int]:
    """The numbers in a set of bits."""
    while these:
        bit = these & -these
        these ^= bit
        yield bit.bit_length() - 1
