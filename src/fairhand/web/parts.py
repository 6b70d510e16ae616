"""The four parts of a paper and their pages, as handbooks name and order them."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Leaf:
    """One page of a paper."""

    name: str
    """The last part of its address."""
    title: str


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
            Leaf("sources", "Sources"),
            Leaf("leads", "Leads"),
            Leaf("find", "Find"),
            Leaf("notes", "Notes"),
            Leaf("support", "Support"),
        ),
    ),
    Part(
        "Drafting",
        (
            Leaf("rough", "Rough draft"),
            Leaf("draft", "Draft"),
            Leaf("revision", "Revision"),
            Leaf("fit", "Length"),
            Leaf("offcuts", "Offcuts"),
            Leaf("readers", "First readers"),
        ),
    ),
    Part(
        "Correction",
        (
            Leaf("copy-edit", "Copy-edit"),
            Leaf("proof", "The proof"),
            Leaf("aloud", "Aloud"),
            Leaf("readers", "First readers"),
            Leaf("verdict", "Verdict"),
            Leaf("fair-copy", "Fair copy"),
            Leaf("final", "Final reading"),
            Leaf("hand-in", "Hand-in"),
        ),
    ),
)
"""Preparation, Research, Drafting, Correction."""
BESIDES = (Leaf("record", "The record"), Leaf("states", "Earlier states"), Leaf("take", "A draft from a file"))
"""Pages that belong to no part."""

LEAVES = {leaf.name: leaf for leaves in (*(part.leaves for part in PARTS), BESIDES) for leaf in leaves}
"""Every page of a paper by its name."""


def part_of(leaf: str) -> Part | None:
    """The part that a page belongs to.

    >>> part_of("sources").title
    'Research'
    """
    return next((part for part in PARTS if any(one.name == leaf for one in part.leaves)), None)


def shown_parts(working: frozenset[str]) -> tuple[Part, ...]:
    """The parts with those of their pages that there are; a part without any is left out.

    >>> [part.title for part in shown_parts(frozenset({"brief", "draft"}))]
    ['Preparation', 'Drafting']
    """
    found = (Part(part.title, tuple(leaf for leaf in part.leaves if leaf.name in working)) for part in PARTS)
    return tuple(part for part in found if part.leaves)
