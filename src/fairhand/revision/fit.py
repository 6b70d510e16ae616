"""Length by whole passages: which to cut, or to bring back, with the least loss; never by padding.

**Source**: check-values of the trade, section 6.12; the choice itself: ``knapsack.py``.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from fairhand.revision.knapsack import Thing, choose_best

ALTERNATIVES = 3
"""How many ways are proposed at most."""


@dataclass(frozen=True, slots=True)
class Passage:
    """A passage that may be cut, or brought back."""

    words: int
    """How many of its words count by the sheet's rule."""
    worth: int
    """What the paper has by it."""
    needs: frozenset[int] = frozenset()
    """Indices of the passages without which it cannot stand."""
    stays: bool = False
    """Whether it is not to be cut."""


@dataclass(frozen=True, slots=True)
class Way:
    """One way to the length that is asked."""

    passages: tuple[int, ...]
    """Indices of the passages to cut, or to bring back, in their order."""
    words: int
    """The words that they have."""
    worth: int
    """What they are worth together."""


def cut_least(passages: Sequence[Passage], words: int, count: int = ALTERNATIVES) -> tuple[Way, ...]:
    """The ways to cut at least so many words, the least loss first; of equal losses, the fewer words.

    A passage whose ground is cut is cut as well. Nothing where it cannot be done by whole passages.

    >>> five = [Passage(180, 6), Passage(240, 7), Passage(120, 4), Passage(300, 8), Passage(90, 2)]
    >>> cut_least(five, 350, 2)
    (Way(passages=(3, 4), words=390, worth=10), Way(passages=(1, 2), words=360, worth=11))
    """
    whole = sum(one.words for one in passages)
    stays = sum(one.worth for one in passages) * (whole + 1) + whole + 1
    # What is to stay is worth more than all the rest together, so that it is left out only where it must be.
    kept = [Thing(p.words, p.worth * (whole + 1) + p.words + (stays if p.stays else 0), p.needs) for p in passages]
    ways = (_way(passages, set(range(len(passages))) - best) for best in choose_best(kept, whole - words, count))
    return tuple(way for way in ways if not any(passages[one].stays for one in way.passages))


def gain_fewest(passages: Sequence[Passage], words: int, count: int = ALTERNATIVES) -> tuple[Way, ...]:
    """The ways to bring back at least so many words, the fewest words first; of equal ones, what is worth more.

    A passage comes back with its ground. Nothing where all of them together have too few.

    >>> five = [Passage(180, 6), Passage(240, 7), Passage(120, 4), Passage(300, 8), Passage(90, 2)]
    >>> gain_fewest(five, 350, 1)
    (Way(passages=(1, 2), words=360, worth=11),)
    """
    whole, all_worth = (sum(values) for values in ([p.words for p in passages], [p.worth for p in passages]))
    # What is left out: a passage can be left out only with all that need it.
    needed_by: list[set[int]] = [set() for _ in passages]
    for number, one in enumerate(passages):
        for ground in one.needs:
            needed_by[ground].add(number)
    left = [
        Thing(one.words, one.words * (all_worth + 1) - one.worth if one.words else 0, frozenset(by))
        for one, by in zip(passages, needed_by, strict=True)
    ]
    found = choose_best(left, whole - words, count)
    return tuple(_way(passages, set(range(len(passages))) - best) for best in found)


def _way(passages: Sequence[Passage], chosen: set[int]) -> Way:
    return Way(
        tuple(sorted(chosen)), sum(passages[one].words for one in chosen), sum(passages[one].worth for one in chosen)
    )
