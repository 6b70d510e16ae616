"""How well each point of the paper is supported, by counting independent sources."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from fairhand.evidence.independence import Dependence, count_independent, find_dependences
from fairhand.model.entry import Entry
from fairhand.model.point import Point, Points
from fairhand.model.source import SourceText


@dataclass(frozen=True, slots=True)
class PointSupport:
    """One point, and what carries it."""

    point: Point
    needed: int
    """How many sources the writer's own rule wants for it."""
    sources: tuple[str, ...]
    """Ids of its sources, each once, those not in the list of sources left out."""
    independent: tuple[str, ...]
    """The largest set of them no two of which depend on each other."""
    dependences: tuple[Dependence, ...]
    missing: tuple[str, ...]
    """Ids that the point names and the list of sources lacks."""


def weigh_support(
    points: Points,
    entries: Mapping[str, Entry],
    texts: Mapping[str, SourceText],
    *,
    main: int = 2,
    optional: int = 1,
) -> tuple[PointSupport, ...]:
    """The support of each point, in the order of the plan.

    Args:
        points: The writer's points.
        entries: Entries by id.
        texts: Source texts by id, as far as they are at hand.
        main: Sources that a main point needs (the writer's rule; common practice: two).
        optional: Sources that an optional point needs (common practice: one).
    """
    out = []
    for point in points.points:
        named = tuple(dict.fromkeys(s.source for s in point.support))
        known = tuple(i for i in named if i in entries)
        dependences = find_dependences(known, entries, texts)
        out.append(
            PointSupport(
                point=point,
                needed=main if point.weight == "main" else optional,
                sources=known,
                independent=count_independent(known, dependences),
                dependences=dependences,
                missing=tuple(i for i in named if i not in entries),
            )
        )
    return tuple(out)
