"""Arguments made twice: two paragraphs that rest on the same pages and say much the same. Asked about, never judged.

**Source**: common practice; the measure and its bounds are our own, set by ``tests/outside/test_argument.py``.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from fairhand.revision.body import BodyParagraph
from fairhand.revision.likeness import Weights, count_stems, weigh

ALIKE = 0.33
"""Likeness of two paragraphs from which they may make one argument, whatever they cite (from trial)."""
ALIKE_AND_CITED = 0.18
"""The same, where the later one cites nothing that the earlier one does not cite at the same page (from trial)."""
FEW = 6
"""Paragraphs that may have a word which tells two of them from the others; in a longer one one in eight may."""
MOST_FEW = 16
"""Such paragraphs at most, however long the paper."""
FEWEST_RARE = 3
"""Such words that two paragraphs share before they are compared at all."""
FEWEST_SHARED = 5
"""Words that say something and that both must have."""


@dataclass(frozen=True, slots=True)
class Repeats:
    """A paragraph that may make an earlier one's argument again."""

    earlier: int
    """Their places in the body."""
    later: int
    likeness: float
    shared: tuple[str, ...]
    """Words that both have, as the later one has them, the most telling first."""
    same_pages: bool
    """Whether the later one rests on what the earlier one rests on."""


def find_repeats(body: Sequence[BodyParagraph], texts: Sequence[str]) -> Iterator[Repeats]:
    """Each paragraph between opening and closing that repeats an earlier one there, with the likest.

    Args:
        body: The paragraphs that argue.
        texts: The words of each of them.
    """
    weights = weigh(tuple(texts))
    pages = [frozenset((cited.entry, cited.pages) for cited in one.cites if cited.entry) for one in body]
    for later, earlier_ones in enumerate(_worth_comparing(body, texts, weights)):
        best: tuple[float, int, bool] | None = None
        for earlier in earlier_ones:
            likeness = weights.likeness(texts[earlier], texts[later])
            same = bool(pages[later]) and pages[later] <= pages[earlier]
            if likeness >= (ALIKE_AND_CITED if same else ALIKE) and (best is None or likeness > best[0]):
                best = likeness, earlier, same
        if best is None:
            continue
        shared = set(count_stems(texts[best[1]])) & set(count_stems(texts[later]))
        if len(shared) >= FEWEST_SHARED:
            told = tuple(sorted(shared, key=lambda stem: -weights.of(stem)))
            yield Repeats(best[1], later, best[0], told, best[2])


def _worth_comparing(body: Sequence[BodyParagraph], texts: Sequence[str], weights: Weights) -> Iterator[list[int]]:
    """Of each paragraph those before it, between opening and closing, that share a few words which few others have."""
    few = min(max(FEW, len(body) // 8), MOST_FEW)
    holders: dict[str, list[int]] = {}
    for at, paragraph in enumerate(body):
        if paragraph.role != "body":
            yield []
            continue
        rare = [stem for stem in count_stems(texts[at]) if 1 < weights.among[stem] <= few]
        shared = Counter(earlier for stem in rare for earlier in holders.get(stem, ()))
        yield sorted(earlier for earlier, many in shared.items() if many >= FEWEST_RARE)
        for stem in rare:
            holders.setdefault(stem, []).append(at)
