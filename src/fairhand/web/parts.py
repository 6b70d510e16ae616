"""The four parts of a paper and their pages, as handbooks name and order them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass


@dataclass(frozen=True)
class Leaf:
    """One page of a paper."""

    name: str
    """The last part of its address."""
    title: str
    within: tuple[Leaf, ...] = ()
    """Pages that serve this one, and are named only where it or one of them lies open."""

    def holds(self, name: str) -> bool:
        """It is the page of this name, or that page stands within it.

        >>> Leaf("draft", "Draft", (Leaf("fit", "Length"),)).holds("fit")
        True
        """
        return self.name == name or any(one.name == name for one in self.within)


@dataclass(frozen=True)
class Part:
    """One part of a paper, with its pages in the order of the work."""

    title: str
    leaves: tuple[Leaf, ...]


PARTS = (
    Part(
        "Preparation",
        (
            Leaf("brief", "Brief"),
            Leaf("jottings", "Jottings"),
            Leaf("focus", "Focus"),
            Leaf("points", "Points"),
            Leaf("plan", "Plan"),
        ),
    ),
    Part(
        "Research",
        (
            Leaf("sources", "Sources", (Leaf("leads", "Leads"), Leaf("find", "Find"))),
            Leaf("notes", "Notes"),
            Leaf("support", "Support"),
        ),
    ),
    Part(
        "Drafting",
        (
            Leaf("rough", "Rough draft"),
            Leaf(
                "draft",
                "Draft",
                (Leaf("fit", "Length"), Leaf("offcuts", "Offcuts"), Leaf("take", "A draft from a file")),
            ),
            Leaf("revision", "Revision"),
            Leaf("readers", "First readers"),
        ),
    ),
    Part(
        "Correction",
        (
            Leaf("copy-edit", "Copy-edit", (Leaf("lapses", "Lapses and words"),)),
            Leaf("proof", "The proof", (Leaf("aloud", "Aloud"),)),
            Leaf("verdict", "Verdict"),
            Leaf("final", "Final reading"),
            Leaf("hand-in", "Hand-in", (Leaf("fair-copy", "Fair copy"),)),
        ),
    ),
)
"""Preparation, Research, Drafting, Correction."""
BESIDES = (Leaf("readers", "First readers"), Leaf("record", "The record"), Leaf("states", "Earlier states"))
"""Pages that are open at any stage, and are named at the foot of each page; first readers belong to two parts."""


def _list_all() -> Iterator[Leaf]:
    for leaf in (*(leaf for part in PARTS for leaf in part.leaves), *BESIDES):
        yield leaf
        yield from leaf.within


LEAVES = {leaf.name: leaf for leaf in _list_all()}
"""Every page of a paper by its name."""


def part_of(name: str) -> Part | None:
    """The part that a page belongs to.

    >>> part_of("leads").title
    'Research'
    """
    return next((part for part in PARTS if any(one.holds(name) for one in part.leaves)), None)


def shown_parts(working: frozenset[str]) -> tuple[Part, ...]:
    """The parts with those of their pages that there are; a part without any is left out.

    >>> [part.title for part in shown_parts(frozenset({"brief", "draft"}))]
    ['Preparation', 'Drafting']
    """
    found = (Part(part.title, _shown(part.leaves, working)) for part in PARTS)
    return tuple(part for part in found if part.leaves)


def _shown(leaves: tuple[Leaf, ...], working: frozenset[str]) -> tuple[Leaf, ...]:
    return tuple(Leaf(leaf.name, leaf.title, _shown(leaf.within, working)) for leaf in leaves if leaf.name in working)
