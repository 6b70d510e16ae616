"""How much of what there is to be found has been found, estimated from what was found more than once.

Each estimate is a lower bound, or rests on an assumption that is said beside it.
"""

from __future__ import annotations

import math
from collections.abc import Collection, Sequence
from dataclasses import dataclass

NORMAL_95 = 1.96
"""Standard errors on either side of an estimate within which it lies nineteen times in twenty."""
FEWEST_SHARED = 3
"""Below so many found by both routes there is too little to tell. **Source**: common practice."""
FEWEST_SEEN = 10
"""Below so many sightings there is too little to tell. **Source**: common practice."""


@dataclass(frozen=True, slots=True)
class Estimate:
    """How many there are in all, it may be."""

    total: float
    found: int
    low: float
    """The lower end of the range, before it is held to what was found."""
    high: float
    error: float
    """The standard error."""
    enough: bool
    """Whether there is enough to tell."""

    @property
    def share(self) -> float:
        """The share that has been found, from 0 to 1."""
        return min(1.0, self.found / self.total) if self.total else 1.0

    @property
    def at_least(self) -> float:
        """The lower end of the range: never below what was found."""
        return max(self.low, self.found)


def estimate_by_two_routes(first: int, second: int, both: int) -> Estimate:
    """The number of sources that there are, from two independent routes to them.

    Args:
        first: Relevant sources that the one route found.
        second: Relevant sources that the other found.
        both: Those that both found.

    **Source**: Chapman 1951; as a rule for stopping, Kastner et al. 2009, Journal of Clinical Epidemiology 62.

    >>> round(estimate_by_two_routes(24, 20, 12).total, 1)
    39.4
    """
    more, others, shared = first + 1, second + 1, both + 1
    total = more * others / shared - 1
    error = math.sqrt(more * others * (first - both) * (second - both) / (shared**2 * (shared + 1)))
    found = first + second - both
    reach = NORMAL_95 * error
    return Estimate(total, found, total - reach, total + reach, error, enough=both >= FEWEST_SHARED)


def routes_meet(first: Collection[str], second: Collection[str]) -> Estimate:
    """The same from the ids that each route found."""
    one, other = frozenset(first), frozenset(second)
    return estimate_by_two_routes(len(one), len(other), len(one & other))


def coverage_of(counts: Sequence[int]) -> float:
    """The share of all sightings to come that would be of things seen already: 1 − f₁/n.

    Args:
        counts: How often each thing was seen.

    **Source**: Good 1953, Biometrika 40.

    >>> round(coverage_of([0, 1, 1, 4, 2, 5, 2, 4, 1, 2]), 4)
    0.8636
    """
    seen = sum(counts)
    return 1 - _seen_times(counts, 1) / seen if seen else 0.0


def estimate_richness(counts: Sequence[int], *, corrected: bool = True) -> Estimate:
    """How many things there are at least, from how often each one was seen.

    Args:
        counts: How often each thing was seen.
        corrected: The bias-corrected form; the plain one is not defined where nothing was seen twice, and gives way.

    **Source**: Chao 1984, Scandinavian Journal of Statistics 11; the range after Chao 1987, Biometrics 43 (from
    memory).

    >>> estimate_richness([0, 1, 1, 4, 2, 5, 2, 4, 1, 2]).total
    9.75
    """
    found = sum(count > 0 for count in counts)
    once, twice = _seen_times(counts, 1), _seen_times(counts, 2)
    unseen = once * (once - 1) / (2 * (twice + 1)) if corrected or not twice else once**2 / (2 * twice)
    ratio = once / twice if twice else 0.0
    variance = twice * (ratio**4 / 4 + ratio**3 + ratio**2 / 2)
    spread = math.exp(NORMAL_95 * math.sqrt(math.log1p(variance / unseen**2))) if unseen else 1.0
    low, high = found + unseen / spread, found + unseen * spread
    enough = sum(counts) >= FEWEST_SEEN and twice > 0 and once > 1
    return Estimate(found + unseen, found, low, high, math.sqrt(variance), enough)


def _seen_times(counts: Sequence[int], times: int) -> int:
    return sum(count == times for count in counts)
