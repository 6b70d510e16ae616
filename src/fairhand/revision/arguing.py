"""Where each point is argued: a passage of the body that cites one of its sources at its page and is close to it.

**Source**: common practice; how close is close is our own, set by ``tests/outside/test_argument.py``.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from fairhand.model.point import Point
from fairhand.model.source import SourceText
from fairhand.reading.labels import labels_in
from fairhand.revision.body import BodyParagraph, Cited
from fairhand.revision.likeness import count_stems, weigh

CLOSE = 0.4
"""Share of what a point says that a passage must have, to argue it whatever else it argues (from trial)."""
NEAREST = 0.12
"""The same, where the passage is nearer to this point than to any other whose sources it cites (from trial)."""

HARDLY = 0.85
"""Of two points, the share of the nearer one's share from which the other is hardly further (from trial)."""


@dataclass(frozen=True, slots=True)
class Argued:
    """A point, and the paragraph that comes nearest to arguing it."""

    point: Point
    paragraph: int | None
    """Its place in the body; None where no paragraph between opening and closing cites one of its sources."""
    closeness: float
    """Share of what the point says that the paragraph has."""
    is_argued: bool


@dataclass(frozen=True, slots=True)
class Nearness:
    """How near a paragraph is to a point."""

    share: float
    """Share of what the point says that the paragraph has, by the weight of its words."""
    cites: Literal["", "source", "page"]
    """Whether it cites one of the point's sources, and at its page."""


def measure_nearness(
    points: Sequence[Point], body: Sequence[BodyParagraph], texts: Sequence[str], sources: Mapping[str, SourceText]
) -> Mapping[tuple[int, int], Nearness]:
    """How near each paragraph between opening and closing is to each point, by their places; what is not near left out.

    Args:
        points: The points of the paper.
        body: The paragraphs that argue.
        texts: The words of each of them, quotations included.
        sources: The sources' texts, which tell whether they have pages.
    """
    weights = weigh(tuple(texts))
    wanted = [frozenset(count_stems(point.text)) for point in points]
    whole = [weights.total(stems) for stems in wanted]
    near = {}
    for at, paragraph in enumerate(body):
        if paragraph.role != "body":
            continue
        had = count_stems(texts[at])
        for number, point in enumerate(points):
            fits = {_fit(cited, point, sources) for cited in paragraph.cites}
            cites: Literal["", "source", "page"] = "page" if "page" in fits else "source" if "source" in fits else ""
            have = weights.total([stem for stem in wanted[number] if stem in had])
            share = have / whole[number] if whole[number] else 0.0
            if share or cites:
                near[number, at] = Nearness(share, cites)
    return near


def find_argued(points: Sequence[Point], near: Mapping[tuple[int, int], Nearness]) -> tuple[Argued, ...]:
    """How each point that names sources stands in the body; points without sources are left out.

    Args:
        points: The points of the paper.
        near: How near each paragraph is to each of them.
    """
    nearest = find_nearest(near)
    found = []
    for number, point in enumerate(points):
        if not point.support:
            continue
        places = sorted((-one.share, at) for (of, at), one in near.items() if of == number and one.cites)
        argued = [
            at for low, at in places if -low >= CLOSE or (-low >= NEAREST and _is_nearest(number, at, near, nearest))
        ]
        best = argued[0] if argued else places[0][1] if places else None
        found.append(Argued(point, best, near[number, best].share if best is not None else 0.0, bool(argued)))
    return tuple(found)


def _is_nearest(number: int, at: int, near: Mapping[tuple[int, int], Nearness], nearest: Mapping[int, int]) -> bool:
    """Whether a paragraph that cites a point's source at its page is nearer to no other, or hardly nearer."""
    one = near[number, at]
    return one.cites == "page" and one.share >= HARDLY * near[nearest[at], at].share


def find_nearest(near: Mapping[tuple[int, int], Nearness]) -> Mapping[int, int]:
    """Of each paragraph that cites a point's source at its page, the point that it is nearest to, by their places."""
    best: dict[int, tuple[float, int]] = {}
    for (number, at), one in near.items():
        if one.cites == "page" and one.share > best.get(at, (-1.0, 0))[0]:
            best[at] = one.share, number
    return {at: number for at, (_, number) in best.items()}


def _fit(cited: Cited, point: Point, sources: Mapping[str, SourceText]) -> Literal["", "source", "page"]:
    """Whether a citation is of one of the point's sources, and at its page; where it has none to name, it is."""
    fit: Literal["", "source", "page"] = ""
    for support in point.support:
        if cited.entry != support.source:
            continue
        text = sources.get(support.source)
        if not support.page or (text is not None and not text.paged):
            return "page"
        if set(labels_in(support.page)) & set(labels_in(cited.pages)):
            return "page"
        if not cited.pages:
            fit = "source"
    return fit
