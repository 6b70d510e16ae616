"""Paragraphs that seem to stray from the paper's focus: asked about, never judged.

**Source**: unity of a paragraph with the thesis, as handbooks have it (common practice); the measure and its bounds are
our own, set by ``tests/outside/test_argument.py``.
"""

from __future__ import annotations

import re
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
FEWEST_ALONE = 25
"""Words that say something of a paragraph of which it can be told that no other is like it (from trial)."""
_OWN = re.compile(r"\b(?:I|[Mm]y|[Tt]his (?:paper|essay))\b")
"""What marks a passage as the writer's own reasoning or asking, which resembles nothing and strays nowhere."""


@dataclass(frozen=True, slots=True)
class _Alone:
    """Bounds below which a paragraph stands alone (from trial)."""

    mean: float
    """Likeness to the other paragraphs, on the average."""
    likest: float
    """Likeness to the one that it is most like."""
    beside: float
    """Likeness to those before and after it."""
    named: float
    """Share of its words that the focus, thesis, title and points have."""


_STRICT = _Alone(0.035, 0.08, 0.045, 0.2)
_LOOSE = _Alone(0.05, 0.095, 0.06, 0.25)
"""The same in a paper of which most paragraphs cite."""


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
    most_cite = 2 * citing >= len(body)
    least = SHARED if most_cite else SHARED_UNCITED
    bounds = _LOOSE if most_cite else _STRICT
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
        alone = (
            total >= FEWEST_ALONE
            and named < bounds.named
            and not _is_at_work(paragraph)
            and _is_alone(at, texts, weights, bounds)
        )
        if few or alone:
            yield Strays(at, paragraph.own_span, shared, named, not few)


def _is_at_work(paragraph: BodyParagraph) -> bool:
    """Whether it names a source or quotes, or speaks of the paper or as *I*."""
    return _OWN.search(paragraph.own) is not None or any(one.named or one.quoted for one in paragraph.sentences)


def _is_alone(at: int, texts: Sequence[str], weights: Weights, bounds: _Alone) -> bool:
    """Whether no other paragraph is like this one."""
    if weights.mean_likeness(texts[at]) >= bounds.mean:
        return False
    beside = (*texts[at - 1 : at], *texts[at + 1 : at + 2])
    if any(weights.likeness(other, texts[at]) >= bounds.beside for other in beside):
        return False
    others = (other for number, other in enumerate(texts) if number != at)
    return all(weights.likeness(other, texts[at]) < bounds.likest for other in others)
