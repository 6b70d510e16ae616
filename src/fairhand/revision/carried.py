"""What the pages that carry a point say of it: a passage that has it argues the point, in whatever words.

A point is put in a line, and its passage tells the facts of the sources. *Traffic fell, and then grew* is argued by a
paragraph of tonnages, which shares hardly a word with it, but has what the cited page says on that matter.

**Source**: that a text's own words widen a question: Rocchio 1971, *Relevance feedback*; how much each sentence of the
page tells is our own, set by ``tests/outside/test_argument.py``.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache

from fairhand.language.sentences import split_sentences
from fairhand.model.point import Point
from fairhand.model.source import SourceText
from fairhand.reading.labels import labels_in
from fairhand.revision.likeness import Weights, count_stems

MOST_READ = 12_000
"""Characters of the longest text that is taken for what carries a point, some four pages."""
FULLY = 0.25
"""Share of the point that one of the page's sentences has, from which the page surely speaks of it (from trial)."""
FEWEST_STEMS = 3
"""Words of a sentence that says something."""


@dataclass(frozen=True, slots=True)
class Related:
    """A sentence of a page that carries a point."""

    relation: float
    """Share of the point that it has, by the weight of the point's own words; above 0."""
    stems: frozenset[str]


def find_related(
    point: Point, own: Mapping[str, float], sources: Mapping[str, SourceText]
) -> tuple[Related, ...] | None:
    """The sentences of the pages that carry a point which speak of it; None where no text is at hand, or too much.

    Args:
        point: The point.
        own: What each of its words tells, by stem.
        sources: The sources' texts by id.

    >>> from fairhand.model.point import Support
    >>> from fairhand.model.source import Page
    >>> tide = SourceText("lind", (Page("7", "In May trade grew by half. It rained at the quay."),), paged=True)
    >>> point = Point("p1", "Trade grew.", support=(Support("lind", "7"),))
    >>> [sorted(one.stems) for one in find_related(point, {"trade": 1.0, "grow": 1.0}, {"lind": tide})]
    [['grow', 'half', 'trade']]
    """
    whole = sum(own.values())
    pages = list(_pages(point, sources))
    if not whole or not pages or sum(map(len, pages)) > MOST_READ:
        return None
    told = [
        Related(sum(own[stem] for stem in own if stem in stems) / whole, stems)
        for page in pages
        for stems in _read_sentences(page)
    ]
    return tuple(one for one in told if one.relation)


def share_of(related: tuple[Related, ...], had: Collection[str], weights: Weights) -> float:
    """How much of what is said there a passage has, each sentence as far as it speaks of the point: 0 to 1.

    Args:
        related: What the pages say of the point; something.
        had: The stems of the passage.
        weights: What each word tells in the paper.
    """
    told = sum(one.relation * weights.share(one.stems, had) for one in related)
    trust = min(1.0, max(one.relation for one in related) / FULLY)
    return trust * told / sum(one.relation for one in related)


def _pages(point: Point, sources: Mapping[str, SourceText]) -> Iterator[str]:
    for support in point.support:
        text = sources.get(support.source)
        if text is None:
            continue
        wanted = set(labels_in(support.page)) if text.paged else None
        yield from (page.text for page in text.pages if not wanted or page.label in wanted)


@lru_cache(maxsize=1024)
def _read_sentences(page: str) -> tuple[frozenset[str], ...]:
    plain = " ".join(page.split())
    stems = (frozenset(count_stems(span.of(plain))) for span in split_sentences(plain))
    return tuple(one for one in stems if len(one) >= FEWEST_STEMS)
