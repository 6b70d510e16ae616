"""Jottings in groups, each of such as are more alike than chance would have them."""

from __future__ import annotations

from collections.abc import Sequence

from fairhand.jottings.likeness import liken_jottings
from fairhand.language.meaning import Meanings

LEAST = 0.04
"""How alike on average two groups must be to be joined; chance is about nought."""
MOST = 600
"""Jottings that are grouped; further ones stand apart."""


def group_texts(texts: Sequence[str], meanings: Meanings | None) -> tuple[tuple[int, ...], ...]:
    """The groups of the texts by their numbers, in the order of their first ones; one that is like no other alone.

    Args:
        texts: The jottings' words.
        meanings: The encoder; None to go by words.

    >>> group_texts(["printers struck", "the printer's strike", "paper dear", "dear paper!"], None)
    ((0, 1), (2, 3))
    """
    read = texts[:MOST]
    return (*part_by_likeness(liken_jottings(read, meanings)), *((number,) for number in range(len(read), len(texts))))


def part_by_likeness(alike: Sequence[Sequence[float]]) -> tuple[tuple[int, ...], ...]:
    """The groups that the likenesses make.

    The two groups whose members are likest on average are joined, again and again, until no two are left that are more
    alike than two jottings of one set are by chance.

    **Source**: average linkage: Sokal and Michener 1958; the bound was chosen on jottings of our own making.

    Args:
        alike: How alike each is to each other, the same both ways.

    >>> part_by_likeness([[1, 0.9, 0], [0.9, 1, 0.05], [0, 0.05, 1]])
    ((0, 1), (2,))
    """
    groups = {number: [number] for number in range(len(alike))}
    sums = [list(row) for row in alike]
    nearest = {number: _find_nearest(number, sums, groups) for number in groups}
    while len(groups) > 1:
        first = max(nearest, key=lambda number: (nearest[number][0], -number))
        like, second = nearest[first]
        if like <= LEAST:
            break
        first, second = min(first, second), max(first, second)
        groups[first] += groups.pop(second)
        for other in groups:
            sums[first][other] += sums[second][other]
            sums[other][first] = sums[first][other]
        del nearest[second]
        for number, (_, near) in nearest.items():
            if number == first or near in {first, second}:
                nearest[number] = _find_nearest(number, sums, groups)
            else:
                nearest[number] = max(nearest[number], (_liken(number, first, sums, groups), first), key=_by_likeness)
    return tuple(sorted(tuple(sorted(group)) for group in groups.values()))


def _by_likeness(near: tuple[float, int]) -> tuple[float, int]:
    return near[0], -near[1]


def _liken(one: int, other: int, sums: Sequence[Sequence[float]], groups: dict[int, list[int]]) -> float:
    return sums[one][other] / (len(groups[one]) * len(groups[other]))


def _find_nearest(number: int, sums: Sequence[Sequence[float]], groups: dict[int, list[int]]) -> tuple[float, int]:
    """How alike the likest other group is, and which it is."""
    return max(
        ((_liken(number, other, sums, groups), other) for other in groups if other != number),
        key=_by_likeness,
        default=(0.0, number),
    )
