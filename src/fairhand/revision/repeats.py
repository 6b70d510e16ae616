"""Arguments made twice: two paragraphs that rest on the same pages and say much the same. Asked about, never judged.

**Source**: common practice; the measure and its bounds are our own, set by ``tests/outside/test_argument.py``.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from fairhand.revision.body import BodyParagraph
from fairhand.revision.likeness import Weights, count_stems

ALIKE = 0.33
"""Likeness of two paragraphs from which they may make one argument, whatever they cite (from trial)."""
ALIKE_AND_CITED = 0.18
"""The same, where the later one cites nothing that the earlier one does not cite at the same page (from trial)."""
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
    weights = Weights(texts)
    pages = [frozenset((cited.entry, cited.pages) for cited in one.cites if cited.entry) for one in body]
    for later, paragraph in enumerate(body):
        best: tuple[float, int, bool] | None = None
        for earlier in range(later):
            if paragraph.role != "body" or body[earlier].role != "body":
                continue
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
