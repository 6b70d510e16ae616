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
from fairhand.revision.likeness import Weights, count_stems

CLOSE = 0.4
"""Share of what a point says that a passage must have, to argue it whatever else it argues (from trial)."""
NEAREST = 0.12
"""The same, where the passage is nearer to this point than to any other whose sources it cites (from trial)."""


@dataclass(frozen=True, slots=True)
class Argued:
    """A point, and the paragraph that comes nearest to arguing it."""

    point: Point
    paragraph: int | None
    """Its place in the body; None where no paragraph between opening and closing cites one of its sources."""
    closeness: float
    """Share of what the point says that the paragraph has."""
    is_argued: bool


def find_argued(
    points: Sequence[Point], body: Sequence[BodyParagraph], texts: Sequence[str], sources: Mapping[str, SourceText]
) -> tuple[Argued, ...]:
    """How each point that names sources stands in the body; points without sources are left out.

    Args:
        points: The points of the paper.
        body: The paragraphs that argue.
        texts: The words of each of them, quotations included.
        sources: The sources' texts, which tell whether they have pages.
    """
    weights = Weights(texts)
    wanted = [frozenset(count_stems(point.text)) for point in points]
    closeness: dict[tuple[int, int], float] = {}
    at_page: set[tuple[int, int]] = set()
    for at, paragraph in enumerate(body):
        if paragraph.role != "body":
            continue
        had = count_stems(texts[at])
        for number, point in enumerate(points):
            fits = {_fit(cited, point, sources) for cited in paragraph.cites}
            if fits & {"page", "source"}:
                closeness[number, at] = weights.share(wanted[number], had)
            if "page" in fits:
                at_page.add((number, at))
    nearest = {
        max((one for one in at_page if one[1] == at), key=lambda one: closeness[one])
        for at in {at for _, at in at_page}
    }
    found = []
    for number, point in enumerate(points):
        if not point.support:
            continue
        places = sorted((-closeness[one], one[1]) for one in closeness if one[0] == number)
        argued = [at for low, at in places if -low >= CLOSE or ((number, at) in nearest and -low >= NEAREST)]
        best = argued[0] if argued else places[0][1] if places else None
        found.append(Argued(point, best, closeness.get((number, best), 0.0) if best is not None else 0.0, bool(argued)))
    return tuple(found)


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
