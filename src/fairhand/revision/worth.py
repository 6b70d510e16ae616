"""What each passage is to the paper: the points that it carries, and the sources that only it cites.

**Source**: common practice; a main point weighs three optional ones (our own), and nothing is asked of the writer.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from fairhand.model.point import Point
from fairhand.revision.arguing import Argued
from fairhand.revision.body import BodyParagraph

MAIN, OPTIONAL = 600, 200
"""What a point is worth. It is shared by the passages that carry it, so that numbers that many divide are best."""
ANY = 1
"""What any passage is worth, so that of equal losses the fewer passages go."""
ONLY_CITED = 60
"""What it is worth to be the one passage that cites a source."""
HALF = 0.5
"""What the passage that argues a point has of it; the others that cite its sources share the rest."""


@dataclass(frozen=True, slots=True)
class Carried:
    """What a passage carries."""

    worth: int
    points: tuple[str, ...] = ()
    """Ids of the points that it argues, or whose sources it cites."""
    only_cites: tuple[str, ...] = ()
    """Ids of the sources that no other passage cites."""


def weigh_passages(
    body: Sequence[BodyParagraph], points: Sequence[Point], argued: Sequence[Argued]
) -> tuple[Carried, ...]:
    """What each passage of the body carries, in order.

    Args:
        body: The passages that argue.
        points: The points of the paper.
        argued: Where each of them is argued.
    """
    cited = [frozenset(one.entry for one in passage.cites if one.entry) for passage in body]
    often: dict[str, int] = {}
    for ids in cited:
        for entry in ids:
            often[entry] = often.get(entry, 0) + 1
    best: Mapping[str, int] = {
        one.point.id: one.paragraph for one in argued if one.is_argued and one.paragraph is not None
    }
    shares: list[dict[str, int]] = [{} for _ in body]
    for point in points:
        whole = MAIN if point.weight == "main" else OPTIONAL
        sources = {support.source for support in point.support}
        carriers = {at for at, ids in enumerate(cited) if ids & sources}
        chief = best.get(point.id)
        others = sorted(carriers - {chief})
        if chief is not None:
            shares[chief][point.id] = round(whole * HALF) if others else whole
        for at in others:
            shares[at][point.id] = round(whole * (1 - HALF if chief is not None else 1)) // len(others)
    out = []
    for at, ids in enumerate(cited):
        only = tuple(sorted(entry for entry in ids if often[entry] == 1))
        out.append(Carried(ANY + sum(shares[at].values()) + ONLY_CITED * len(only), tuple(shares[at]), only))
    return tuple(out)


def list_lost(carried: Sequence[Carried], gone: Sequence[int]) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The points that no passage carries any more, and the sources that none cites, where some passages go.

    >>> list_lost([Carried(1, ("p1",)), Carried(1, ("p1", "p2"), ("lind",))], [1])
    (('p2',), ('lind',))
    """
    left = {point for at, one in enumerate(carried) if at not in gone for point in one.points}
    points = dict.fromkeys(point for at in gone for point in carried[at].points if point not in left)
    return tuple(points), tuple(dict.fromkeys(source for at in gone for source in carried[at].only_cites))
