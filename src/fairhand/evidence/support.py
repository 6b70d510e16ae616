"""How well each point of the paper is supported, by counting independent sources."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from fairhand.evidence.independence import Dependence, count_independent, find_citations, find_dependences
from fairhand.model.entry import Entry
from fairhand.model.point import Point, Points
from fairhand.model.ruling import Ruling
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
    overruled: tuple[Dependence, ...] = ()
    """Pairs that look dependent, and that the writer holds to be independent."""
    cited: tuple[Dependence, ...] = ()
    """Pairs of which one merely cites the other: they count as two."""

    @property
    def lacking(self) -> int:
        """How many independent sources it still wants by the writer's rule."""
        return max(0, self.needed - len(self.independent))


def weigh_support(
    points: Points,
    entries: Mapping[str, Entry],
    texts: Mapping[str, SourceText],
    *,
    main: int = 2,
    optional: int = 1,
    rulings: Sequence[Ruling] = (),
) -> tuple[PointSupport, ...]:
    """The support of each point, in the order of the plan.

    Args:
        points: The writer's points.
        entries: Entries by id.
        texts: Source texts by id, as far as they are at hand.
        main: Sources that a main point needs (the writer's rule; common practice: two).
        optional: Sources that an optional point needs (common practice: one).
        rulings: What the writer decided of pairs of sources; it wins over what is seen of them.
    """
    out = []
    for point in points.points:
        named = tuple(dict.fromkeys(s.source for s in point.support))
        known = tuple(i for i in named if i in entries)
        dependences, overruled = _rule(known, find_dependences(known, entries, texts), rulings)
        tied = {tie.pair for tie in (*dependences, *overruled)}
        out.append(
            PointSupport(
                point=point,
                needed=main if point.weight == "main" else optional,
                sources=known,
                independent=count_independent(known, dependences),
                dependences=dependences,
                missing=tuple(i for i in named if i not in entries),
                overruled=overruled,
                cited=tuple(tie for tie in find_citations(known, entries, texts) if tie.pair not in tied),
            )
        )
    return tuple(out)


def _rule(
    ids: Sequence[str], seen: Sequence[Dependence], rulings: Sequence[Ruling]
) -> tuple[tuple[Dependence, ...], tuple[Dependence, ...]]:
    """The dependences that hold once the writer has spoken, and those that are overruled."""
    said = {ruling.pair: ruling for ruling in rulings if ruling.pair <= set(ids)}
    apart = {pair for pair, ruling in said.items() if ruling.independent}
    pairs = {tie.pair for tie in seen}
    own = tuple(
        Dependence(ruling.first, ruling.second, "writer", ruling.why)
        for pair, ruling in said.items()
        if not ruling.independent and pair not in pairs
    )
    held = tuple(tie for tie in seen if tie.pair not in apart)
    return held + own, tuple(tie for tie in seen if tie.pair in apart)
