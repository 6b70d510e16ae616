"""How much a knapsack can be worth at the most, reckoned quickly.

**Source**: G. B. Dantzig 1957, "Discrete-Variable Extremum Problems", Operations Research 5 (the first thing that does
not fit is taken in part); S. Martello & P. Toth 1997, "Upper Bounds and Algorithms for Hard 0-1 Knapsack Problems",
Operations Research 45 (no more things than fit by number).
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence
from itertools import accumulate
from typing import NamedTuple


class Pair(NamedTuple):
    """A weight and a worth, in whole numbers not below nought."""

    weight: int
    worth: int


class Tail:
    """Things in the order of their worth by weight, the best first, and what the first of them come to."""

    def __init__(self, pairs: Sequence[Pair]) -> None:
        """Reckons the sums of the beginnings; ``pairs`` are in that order already."""
        self.pairs = pairs
        self.weights = [0, *accumulate(one.weight for one in pairs)]
        self.worths = [0, *accumulate(one.worth for one in pairs)]

    def bound(self, start: int, room: int) -> tuple[int, int, int]:
        """What the things from ``start`` on can add within a room.

        Returns:
            The end of those that fit wholly, one after another; what they are worth; and what no choice passes.

        >>> Tail([Pair(2, 6), Pair(4, 8), Pair(1, 1)]).bound(0, 4)
        (1, 6, 10)
        """
        end = bisect_right(self.weights, self.weights[start] + room) - 1
        whole = self.worths[end] - self.worths[start]
        if end == len(self.pairs):
            return end, whole, whole
        left = room - (self.weights[end] - self.weights[start])
        weight, worth = self.pairs[end]
        return end, whole, whole + left * worth // weight


_EXACT = 128
"""Binary places to which two ratios are compared: two of numbers below 2**64 differ before them."""


def by_efficiency(pair: Pair) -> tuple[bool, int, int]:
    """The key that puts the worthiest by weight first; what weighs nothing before all."""
    return (pair.weight > 0, -(pair.worth << _EXACT) // pair.weight if pair.weight else 0, -pair.weight)


def bound_by_number(pairs: Sequence[Pair], room: int) -> int:
    """What no choice within a room passes, since no more things fit than do of the lightest.

    With any price on each thing, the number times the price and what the things are worth above their price is a bound;
    the bound falls and then rises with the price, so that the best price is found by halving.

    >>> bound_by_number([Pair(3, 13), Pair(4, 14), Pair(5, 15)], 6)
    16
    """
    lightest = list(accumulate(sorted(pair.weight for pair in pairs)))
    number = bisect_right(lightest, room)

    def priced(price: int) -> int:
        above = [Pair(weight, worth - price) for weight, worth in pairs if worth > price]
        return number * price + Tail(sorted(above, key=by_efficiency)).bound(0, room)[2]

    low, high = 0, max((pair.worth for pair in pairs), default=0)
    while low < high:
        middle = (low + high) // 2
        if priced(middle) <= priced(middle + 1):
            high = middle
        else:
            low = middle + 1
    return priced(low)
