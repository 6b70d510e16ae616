"""Arguments made twice: two paragraphs that rest on the same pages and say much the same. Asked about, never judged.

**Source**: common practice; the measure and its bounds are our own, set by ``tests/outside/test_argument.py``.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from fairhand.revision.body import BodyParagraph
from fairhand.revision.likeness import Weights, count_stems, weigh

AGAIN = 1.15
"""What speaks for two paragraphs' making one argument from which it is asked, whatever they cite (from trial)."""
AGAIN_CITED = 0.75
"""The same, where the later one cites nothing that the earlier one does not cite at the same page (from trial)."""
BESIDE = 0.15
"""What more must speak for it where one follows the other, since an argument is carried on there (from trial)."""
CONTAINED = 2
"""How much more it tells that the later one's words stand in the earlier than that both are alike (from trial)."""
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
    """How alike they are: 0 to 1."""
    contained: float
    """Share of what the later one's words tell that the earlier one has."""
    shared: tuple[str, ...]
    """Words that both have, as the later one has them, the most telling first."""
    same_pages: bool
    """Whether the later one rests on what the earlier one rests on."""

    @property
    def again(self) -> float:
        """What speaks for their making one argument: the likeness, and what the later one has of the earlier."""
        return self.likeness + CONTAINED * self.contained


def find_repeats(body: Sequence[BodyParagraph], texts: Sequence[str]) -> Iterator[Repeats]:
    """Each paragraph between opening and closing that repeats an earlier one there, with the likest.

    Args:
        body: The paragraphs that argue.
        texts: The words of each of them.
    """
    weights = weigh(tuple(texts))
    pages = [frozenset((cited.entry, cited.pages) for cited in one.cites if cited.entry) for one in body]
    for later, earlier_ones in enumerate(_worth_comparing(body, texts, weights)):
        found = [_compare(earlier, later, texts, weights, pages) for earlier in earlier_ones]
        best = max((one for one in found if one is not None), key=lambda one: one.again, default=None)
        if best is not None and len(best.shared) >= FEWEST_SHARED:
            yield best


def _compare(
    earlier: int, later: int, texts: Sequence[str], weights: Weights, pages: Sequence[frozenset[tuple[str | None, str]]]
) -> Repeats | None:
    """The two paragraphs, where the later one may make the earlier one's argument again."""
    had, said = count_stems(texts[earlier]), count_stems(texts[later])
    same = bool(pages[later]) and pages[later] <= pages[earlier]
    least = (AGAIN_CITED if same else AGAIN) + (BESIDE if later == earlier + 1 else 0.0)
    likeness = weights.likeness(texts[earlier], texts[later])
    contained = weights.share(said, had)
    if likeness + CONTAINED * contained < least:
        return None
    told = tuple(sorted(set(had) & set(said), key=lambda stem: (-weights.of(stem), stem)))
    return Repeats(earlier, later, likeness, contained, told, same)


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
