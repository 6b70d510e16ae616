"""The choice of most worth within a room, exactly: a knapsack in which one thing may need another.

**Source**: dynamic programming over choices that no other beats (Nemhauser & Ullmann 1969, Management Science 15), with
bounds (``bounds.py``), and a first answer from the things around the break (Balas & Zemel 1980, Operations Research
28). All numbers are brought to whole ones first, so that no sum is rounded.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import floor, lcm

from fairhand.revision.bounds import Pair
from fairhand.revision.choosing import Node, Search


@dataclass(frozen=True, slots=True)
class Thing:
    """Something that may be chosen."""

    weight: float
    """What it takes of the room; not below nought."""
    worth: float
    """What it is worth; not below nought."""
    needs: frozenset[int] = frozenset()
    """Indices of those that must be chosen with it."""


def choose_most(
    things: Sequence[Thing],
    room: float,
    *,
    keep: Collection[int] = (),
    leave: Collection[int] = (),
    above: float | None = None,
) -> frozenset[int] | None:
    """The indices of the choice that is worth most among those that fit the room; nothing is chosen without its needs.

    Args:
        things: What there is to choose from.
        room: What the chosen may weigh together.
        keep: Indices that are chosen in any case.
        leave: Indices that are not.
        above: What the choice must be worth more than, to be of any interest; whatever it is worth, where it is None.

    Returns:
        The indices; None where what is to be kept does not fit, or needs what is to be left, or nothing is worth that.

    >>> five = [Thing(180, 6), Thing(240, 7), Thing(120, 4), Thing(300, 8), Thing(90, 2)]
    >>> sorted(choose_most(five, 500))
    [0, 3]
    >>> sorted(choose_most([Thing(1, 9, frozenset({1})), Thing(3, 0), Thing(3, 5)], 3))
    [2]
    """
    needs = [with_needs(things, number) for number in range(len(things))]
    left = frozenset(leave)
    kept = frozenset[int]().union(*(needs[number] for number in keep))
    pairs, space, of = _in_whole(things, room)
    space -= sum(pairs[number].weight for number in kept)
    if space < 0 or kept & left:
        return None
    groups: dict[frozenset[int], list[int]] = {}
    for number, all_of in enumerate(needs):
        if number not in kept and not all_of & left:
            groups.setdefault(all_of - kept, []).append(number)
    nodes = [
        Node(tuple(own), frozenset(all_of - set(own)), Pair(*map(sum, zip(*(pairs[one] for one in own), strict=True))))
        for all_of, own in groups.items()
    ]
    search = Search(nodes, space)
    if above is not None:
        search.least = floor(Fraction(str(above)) * of) - sum(pairs[number].worth for number in kept)
    found = search.run()
    return None if found is None else kept.union(*(node.members for node in found))


def choose_best(things: Sequence[Thing], room: float, count: int = 3) -> tuple[frozenset[int], ...]:
    """The best choice, then the next best, and so on; each has something that those before it lack.

    **Source**: E. L. Lawler 1972, "A Procedure for Computing the K Best Solutions", Management Science 18.

    >>> [sorted(one) for one in choose_best([Thing(2, 3), Thing(2, 2), Thing(2, 1)], 4, 2)]
    [[0, 1], [0, 2]]
    """
    first = choose_most(things, room)
    waiting = [(first, frozenset[int](), frozenset[int]())] if first is not None else []
    found: list[frozenset[int]] = []

    def worth(chosen: Iterable[int]) -> float:
        return sum(things[number].worth for number in chosen)

    while waiting and len(found) < count:
        waiting.sort(key=lambda one: worth(one[0]), reverse=True)
        chosen, keep, leave = waiting.pop(0)
        if _is_within(chosen, found):
            continue
        found.append(chosen)
        wanted = count - len(found)
        for number in range(len(things)) if wanted else ():
            if number not in chosen and number not in leave:
                # Of others only those are of interest that are worth more than the last of those still wanted.
                known = sorted({one[0]: worth(one[0]) for one in waiting if not _is_within(one[0], found)}.values())
                above = known[-wanted] if len(known) >= wanted else None
                other = choose_most(things, room, keep=keep | {number}, leave=leave, above=above)
                if other is not None:
                    waiting.append((other, keep | {number}, leave))
                leave = leave | {number}
    return tuple(found)


def _is_within(chosen: frozenset[int], others: Iterable[frozenset[int]]) -> bool:
    """Whether a choice is a part of one of the others."""
    return any(chosen <= other for other in others)


def with_needs(things: Sequence[Thing], number: int) -> frozenset[int]:
    """A thing, what it needs, what that needs, and so on."""
    found, waiting = {number}, [number]
    while waiting:
        new = things[waiting.pop()].needs - found
        found |= new
        waiting += new
    return frozenset(found)


def _in_whole(things: Sequence[Thing], room: float) -> tuple[list[Pair], int, int]:
    """Weights, worths and room as whole numbers, decimals as they are written, and what multiplied the worths."""
    weights = [Fraction(str(thing.weight)) for thing in things]
    worths = [Fraction(str(thing.worth)) for thing in things]
    by, of = (lcm(1, *(one.denominator for one in values)) for values in (weights, worths))
    pairs = [Pair(int(weight * by), int(worth * of)) for weight, worth in zip(weights, worths, strict=True)]
    return pairs, floor(Fraction(str(room)) * by), of
