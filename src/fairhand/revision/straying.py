"""Paragraphs that seem to stray from the paper's focus: asked about, never judged.

**Source**: unity of a paragraph with the thesis, as handbooks have it (common practice); the measure and its bounds are
our own, set by ``tests/outside/test_argument.py``.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from fairhand.model.span import Span
from fairhand.revision.body import BodyParagraph
from fairhand.revision.likeness import Weights, count_stems, weigh

FEWEST_PARAGRAPHS = 5
"""Paragraphs of a paper from which it can be told that one of them strays."""
SHARED = 0.36
"""Share of a paragraph's words that other paragraphs have too, below which it may stray (from trial)."""
SHARED_UNCITED = 0.24
"""The same in a paper of which most paragraphs cite nothing, so that to cite nothing tells nothing (from trial)."""
NAMED = 0.15
"""Share of its words that the focus, thesis, title and points have, below which it may stray (from trial)."""
NAMED_ALONE = 0.2
"""The same, where it stands alone."""
ALONE = 0.035
"""Likeness to the other paragraphs, on the average, below which it may stand alone (from trial)."""
ALONE_LIKEST = 0.08
"""The same, to the one that it is most like."""
ALONE_BESIDE = 0.045
"""The same, to those before and after it."""


@dataclass(frozen=True, slots=True)
class Strays:
    """A paragraph that may be off the focus."""

    paragraph: int
    """Its place in the body."""
    span: Span
    shared: float
    """Share of its words that other paragraphs of the paper have too."""
    named: float
    """Share of its words that the focus, thesis, title and points have."""
    alone: bool
    """Whether it is only that no other paragraph is like it: it has the paper's nouns, and another matter."""


def find_strays(body: Sequence[BodyParagraph], texts: Sequence[str], aims: str) -> Iterator[Strays]:
    """Each paragraph between the opening and the closing that cites nothing and has little of the paper's matter.

    Either few of its words stand elsewhere in the paper, or no other paragraph is like it by what its words tell.

    Args:
        body: The paragraphs that argue.
        texts: The words of each of them.
        aims: What the paper is about, as far as the writer has set it down: focus, thesis, title, points.
    """
    if len(body) < FEWEST_PARAGRAPHS:
        return
    weights = weigh(tuple(texts))
    citing = sum(bool(paragraph.cites) for paragraph in body)
    least = SHARED if 2 * citing >= len(body) else SHARED_UNCITED
    named_stems = set(count_stems(aims))
    for at, paragraph in enumerate(body):
        if paragraph.role != "body" or paragraph.cites:
            continue
        counts = count_stems(texts[at])
        total = sum(counts.values())
        if not total:
            continue
        shared = sum(many for stem, many in counts.items() if weights.among[stem] > 1) / total
        named = sum(many for stem, many in counts.items() if stem in named_stems) / total
        few = shared < least and named < NAMED
        alone = named < NAMED_ALONE and _is_alone(at, texts, weights)
        if few or alone:
            yield Strays(at, paragraph.own_span, shared, named, not few)


def _is_alone(at: int, texts: Sequence[str], weights: Weights) -> bool:
    """Whether no other paragraph is like this one."""
    if weights.mean_likeness(texts[at]) >= ALONE:
        return False
    if any(
        weights.likeness(beside, texts[at]) >= ALONE_BESIDE for beside in (*texts[at - 1 : at], *texts[at + 1 : at + 2])
    ):
        return False
    return all(weights.likeness(other, texts[at]) < ALONE_LIKEST for number, other in enumerate(texts) if number != at)
