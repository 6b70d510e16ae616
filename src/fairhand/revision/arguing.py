"""Where each point is argued: a passage of the body that cites one of its sources at its page and is close to it.

Close is what has the point's own words, above all those that no other point has; and what has, in whatever words, what
the pages that carry it say of it (``carried.py``).

**Source**: common practice; how close is close is our own, set by ``tests/outside/test_argument.py``.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from fairhand.model.point import Point, Support
from fairhand.model.source import SourceText
from fairhand.reading.labels import labels_in
from fairhand.revision.body import BodyParagraph, Cited
from fairhand.revision.carried import find_related, share_of
from fairhand.revision.likeness import count_stems, weigh

CLOSE = 0.4
"""Share of what a point says that a passage must have, to argue it whatever else it argues (from trial)."""
NEAREST = 0.12
"""The same, where the passage is nearer to this point than to any other whose sources it cites (from trial)."""
UNTOLD = 0.04
"""The same, where the pages' text is at hand and has no word of the point, so that words tell little (from trial)."""
HARDLY = 0.85
"""Of two points, the share of the nearer one's share from which the other is hardly further (from trial)."""
WORTH = 0.43
"""Worth of a passage as an argument for a point, where the text of its pages is at hand, and nothing is nearer."""
WORTH_ANYWAY = 0.8
"""The same, whatever else the passage argues."""
OWN = 0.1
"""Share of a point's own words without which a passage of no worth argues it (all three from trial)."""
HELD = 0.4
"""Share of what the pages say of a point that makes up for its own words."""
OWN_ANYWAY = 0.3
"""The same, where it argues another one rather."""
COVER = 0.2
"""What it adds to the worth that every page which carries the point is cited in the passage."""


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
    own: float = 0.0
    """The same share, a word counting the less the more points have it; told where it cites."""
    held: float | None = None
    """Share of what the point's pages say of it; None where they say nothing, or their text is not at hand."""
    covered: float = 0.0
    """Share of the pages that carry the point which it cites."""
    untold: bool = False
    """Whether the pages' text is at hand and has no word of the point, so that words do not tell what argues it."""

    @property
    def worth(self) -> float:
        """What speaks for its arguing the point; where the pages' text is not at hand its own words count twice."""
        return self.own + (self.own if self.held is None else self.held) + COVER * self.covered


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
    among = Counter(stem for stems in wanted for stem in stems)
    owned = [{stem: weights.of(stem) / among[stem] for stem in stems} for stems in wanted]
    related = [find_related(*one, sources) for one in zip(points, owned, strict=True)]
    near = {}
    for at, paragraph in enumerate(body):
        if paragraph.role != "body":
            continue
        had = count_stems(texts[at])
        for number, point in enumerate(points):
            have = weights.total([stem for stem in wanted[number] if stem in had])
            share = have / whole[number] if whole[number] else 0.0
            cites, covered = _fit_all(paragraph.cites, point, sources)
            if not cites:
                if share:
                    near[number, at] = Nearness(share, cites)
                continue
            total = sum(owned[number].values())
            own = sum(weight for stem, weight in owned[number].items() if stem in had) / total if total else 0.0
            says = related[number]
            near[number, at] = Nearness(
                share, cites, own, share_of(says, had, weights) if says else None, covered, says == ()
            )
    return near


def find_argued(points: Sequence[Point], near: Mapping[tuple[int, int], Nearness]) -> tuple[Argued, ...]:
    """How each point that names sources stands in the body; points without sources are left out.

    Args:
        points: The points of the paper.
        near: How near each paragraph is to each of them.
    """
    nearest = find_nearest(near)
    worthiest: dict[int, float] = {}
    for (_, at), one in near.items():
        if one.cites == "page":
            worthiest[at] = max(worthiest.get(at, 0.0), one.worth)
    found = []
    for number, point in enumerate(points):
        if not point.support:
            continue
        places = sorted((-one.share, at) for (of, at), one in near.items() if of == number and one.cites)
        argued = []
        for _, at in places:
            one = near[number, at]
            rival = near[nearest[at], at].share if at in nearest else 0.0
            if _is_near(one, rival) if one.held is None else _is_worth(one, worthiest.get(at, 0.0)):
                argued.append(at)
        best = argued[0] if argued else places[0][1] if places else None
        found.append(Argued(point, best, near[number, best].share if best is not None else 0.0, bool(argued)))
    return tuple(found)


def _is_near(one: Nearness, rival: float) -> bool:
    """Whether a paragraph argues a point of which its pages tell nothing: by the point's words, where these can tell.

    Args:
        one: How near the paragraph is to the point.
        rival: The share that it has of the point to which it is nearest, of those whose pages it cites.
    """
    if one.share >= CLOSE:
        return True
    return one.cites == "page" and one.share >= (UNTOLD if one.untold else max(NEAREST, HARDLY * rival))


def _is_worth(one: Nearness, rival: float) -> bool:
    """Whether a paragraph argues a point, by the point's words and by what its pages say.

    Args:
        one: How near the paragraph is to the point.
        rival: Its greatest worth to any point whose pages it cites.
    """
    if one.worth >= WORTH_ANYWAY and one.own >= (OWN_ANYWAY if one.cites == "page" else CLOSE):
        return True
    tells = one.own >= OWN or (one.held or 0.0) >= HELD
    return one.cites == "page" and tells and one.worth >= max(WORTH, HARDLY * rival)


def find_nearest(near: Mapping[tuple[int, int], Nearness]) -> Mapping[int, int]:
    """Of each paragraph that cites a point's source at its page, the point that it is nearest to, by their places."""
    best: dict[int, tuple[float, int]] = {}
    for (number, at), one in near.items():
        if one.cites == "page" and one.share > best.get(at, (-1.0, 0))[0]:
            best[at] = one.share, number
    return {at: number for at, (_, number) in best.items()}


def _fit_all(
    cites: Sequence[Cited], point: Point, sources: Mapping[str, SourceText]
) -> tuple[Literal["", "source", "page"], float]:
    """Whether any of the citations is of one of the point's sources, and at its page; and the share of pages cited."""
    fits = [max((_fit(cited, support, sources) for cited in cites), default=0) for support in point.support]
    best: Sequence[Literal["", "source", "page"]] = ("", "source", "page", "page")
    return best[max(fits, default=0)], fits.count(3) / max(1, len(fits))


def _fit(cited: Cited, support: Support, sources: Mapping[str, SourceText]) -> int:
    """How well a citation fits one source of a point: 0 not, 1 no page is told, 2 none is to be told, 3 at its page."""
    if cited.entry != support.source:
        return 0
    text = sources.get(support.source)
    if not support.page or (text is not None and not text.paged):
        return 2
    if set(labels_in(support.page)) & set(labels_in(cited.pages)):
        return 3
    return 0 if cited.pages else 1
