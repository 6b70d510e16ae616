"""When to stop looking: what each point still lacks by the writer's own rule, the most needed first."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from fairhand.evidence.support import PointSupport
from fairhand.language.counts import count_of

NAMED = 2
"""How many needs the sentence names."""


@dataclass(frozen=True, slots=True)
class Need:
    """A point that wants more independent sources."""

    support: PointSupport
    lacking: int
    """How many."""


def list_needs(support: Sequence[PointSupport]) -> tuple[Need, ...]:
    """What is still to be found: main points before optional ones, and those that lack most before the others.

    **Source**: the order is common practice.
    """
    needs = [Need(one, one.lacking) for one in support if one.lacking]
    needs.sort(key=lambda need: (need.support.point.weight != "main", -need.lacking))
    return tuple(needs)


def holes_first(support: Sequence[PointSupport]) -> tuple[PointSupport, ...]:
    """The points with those that lack sources first, the most needed at the head; the others as the plan has them."""
    return (*(need.support for need in list_needs(support)), *(one for one in support if not one.lacking))


def say_when_to_stop(support: Sequence[PointSupport]) -> str:
    """One plain sentence: stop, or look for these things.

    >>> from fairhand.model.point import Point
    >>> say_when_to_stop([PointSupport(Point("p1", "Ebb tides scour."), 2, ("a",), ("a",), (), ())])
    'Look for 1 more independent source for “Ebb tides scour”.'
    """
    if not support:
        return "Write down the points of the paper first: sources are counted for each of them."
    needs = list_needs(support)
    if not needs:
        return "Stop looking: each point has the independent sources that your rule asks."
    named = " and ".join(
        f"{count_of(need.lacking, 'more independent source')} for “{need.support.point.text.rstrip('.')}”"
        for need in needs[:NAMED]
    )
    after = len(needs) - NAMED
    later = f"; {count_of(after, 'point')} more can wait until then." if after > 0 else "."
    return f"Look for {named}{later}"
