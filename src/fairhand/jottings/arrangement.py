"""The jottings as they are sorted: by the program first, and from the first move on as the writer put them."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass, replace

from fairhand.jottings.grouping import LEAST, MOST, group_texts
from fairhand.jottings.jotting import Jotting
from fairhand.jottings.likeness import liken_jottings
from fairhand.jottings.naming import name_groups
from fairhand.language.meaning import Meanings

ALIKE = 70
"""Percent of its letters by which a jotting is known again after it was changed."""


@dataclass(frozen=True, slots=True)
class Group:
    """Jottings that belong together, and a phrase for them out of their own words."""

    phrase: str
    jottings: tuple[Jotting, ...]


@dataclass(frozen=True, slots=True)
class Arrangement:
    """Every jotting in its place."""

    groups: tuple[Group, ...] = ()
    apart: tuple[Jotting, ...] = ()
    """Those in no group."""


@dataclass(frozen=True, slots=True)
class KeptGroups:
    """What ``groups.toml`` holds: the jottings of each group by their words."""

    groups: tuple[tuple[str, tuple[str, ...]], ...] = ()
    """Each group's phrase and its jottings."""
    apart: tuple[str, ...] = ()


def sort_jottings(jottings: Sequence[Jotting], meanings: Meanings | None) -> Arrangement:
    r"""The jottings as the program would group them; what is like no other stands apart.

    >>> from fairhand.jottings.jotting import read_jottings
    >>> found = sort_jottings(read_jottings("printers struck\npaper dear\nthe printer's strike\nfog"), None)
    >>> [(group.phrase, len(group.jottings)) for group in found.groups], len(found.apart)
    ([('printers struck', 2)], 2)
    """
    groups = group_texts([one.words for one in jottings], meanings)
    together = [tuple(jottings[n] for n in group) for group in groups if len(group) > 1]
    return Arrangement(
        tuple(
            Group(phrase, own)
            for phrase, own in zip(name_groups([[one.words for one in own] for own in together]), together, strict=True)
        ),
        tuple(jottings[group[0]] for group in groups if len(group) == 1),
    )


def place_jottings(jottings: Sequence[Jotting], kept: KeptGroups, meanings: Meanings | None) -> Arrangement:
    """The jottings where the writer put them; one that is new with those it is likest to, or apart.

    One whose words were changed is known again by most of them.
    """
    places = [(words, n) for n, (_, own) in enumerate(kept.groups) for words in own]
    places += [(words, len(kept.groups)) for words in kept.apart]
    at = _find_places(jottings, places)
    groups: list[list[int]] = [[] for _ in (*kept.groups, "apart")]
    for number in range(len(jottings)):
        if number in at:
            groups[at[number]].append(number)
    new = [number for number in range(min(len(jottings), MOST)) if number not in at]
    alike = liken_jottings([one.words for one in jottings[:MOST]], meanings) if new else []
    for number in new:
        likeness = [
            sum(alike[number][other] for other in group if other < MOST) / len(group) if group else 0.0
            for group in groups[:-1]
        ]
        best = max(range(len(likeness)), key=likeness.__getitem__, default=-1)
        groups[best if best >= 0 and likeness[best] > LEAST else -1].append(number)
    groups[-1] += [number for number in range(MOST, len(jottings)) if number not in at]
    named = zip((phrase for phrase, _ in kept.groups), groups, strict=False)
    return Arrangement(
        tuple(Group(phrase, tuple(jottings[n] for n in group)) for phrase, group in named if group),
        tuple(jottings[n] for n in groups[-1]),
    )


def _find_places(jottings: Sequence[Jotting], places: Iterable[tuple[str, int]]) -> dict[int, int]:
    """The place of each jotting that is known again: the same words first, then the likest."""
    from rapidfuzz import fuzz

    at: dict[int, int] = {}
    by_words: dict[str, list[int]] = {}
    for number, jotting in enumerate(jottings):
        by_words.setdefault(jotting.words, []).append(number)
    gone = []
    for words, place in places:
        if by_words.get(words):
            at[by_words[words].pop(0)] = place
        else:
            gone.append((words, place))
    new = [number for number in range(len(jottings)) if number not in at]
    pairs = [
        (like, number, lost)
        for lost, (words, _) in enumerate(gone[:MOST])
        for number in new[:MOST]
        if (like := fuzz.ratio(words, jottings[number].words, score_cutoff=ALIKE))
    ]
    found: set[int] = set()
    for _, number, lost in sorted(pairs, key=lambda pair: (-pair[0], pair[1], pair[2])):
        if number not in at and lost not in found:
            at[number] = gone[lost][1]
            found.add(lost)
    return at


def move_jottings(arrangement: Arrangement, numbers: Collection[int], to: int | None) -> Arrangement:
    """The jottings that are numbered stand in another group.

    Args:
        arrangement: Where they stand now.
        numbers: Theirs in the order of ``list_all``, from 0.
        to: The number of the group, from 0; one more than there are for a group of their own; None to set them apart.
    """
    every = list_all(arrangement)
    moved = [jotting for number, jotting in enumerate(every) if number in numbers]
    left = iter(range(len(every)))
    groups = [
        replace(group, jottings=tuple(one for one in group.jottings if next(left) not in numbers))
        for group in arrangement.groups
    ]
    apart = tuple(one for one in arrangement.apart if next(left) not in numbers)
    if to is None:
        apart = (*apart, *moved)
    elif to < len(groups):
        groups[to] = replace(groups[to], jottings=(*groups[to].jottings, *moved))
    elif moved:
        others = [[one.words for one in group.jottings] for group in groups if group.jottings]
        phrase = name_groups([[one.words for one in moved], *others])[0]
        groups.append(Group(phrase, tuple(moved)))
    return Arrangement(tuple(group for group in groups if group.jottings), apart)


def list_all(arrangement: Arrangement) -> tuple[Jotting, ...]:
    """Every jotting in the order in which it is shown."""
    return (*(one for group in arrangement.groups for one in group.jottings), *arrangement.apart)
