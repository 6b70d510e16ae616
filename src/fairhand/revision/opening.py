"""How far the opening of a paper reaches: as far as the paragraph that states the thesis.

Where no heading says so an opening may be of several paragraphs. The one that states the thesis has the words of every
point, and argues none of them yet.

**Source**: the thesis closes the introduction (common practice); what states it is our own, from trial.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

from fairhand.revision.body import BodyParagraph
from fairhand.revision.likeness import Weights, count_stems, weigh

STATES = 0.6
"""Share of what the thesis tells that two sentences in a row must have to state it (from trial)."""
PROMISES = 0.4
"""Share of what a point says that a paragraph of the opening must have to promise it (from trial)."""
WITHIN = 3
"""One paragraph in so many, from the first on, may belong to the opening."""


def open_until_thesis(body: Sequence[BodyParagraph], thesis: str) -> tuple[BodyParagraph, ...]:
    """The paragraphs, with all of them in the opening that stand before the thesis or state it, at the paper's start.

    Args:
        body: The paragraphs that argue.
        thesis: The thesis, as the writer has set it down; empty where it is not settled.
    """
    wanted = frozenset(count_stems(thesis))
    if not wanted:
        return tuple(body)
    weights = Weights([paragraph.own for paragraph in body])
    stated = [at for at in range(len(body) // WITHIN) if body[at].role == "body" and _states(body[at], wanted, weights)]
    until = stated[0] if stated and all(one.section == body[0].section for one in body[: stated[0] + 1]) else -1
    return tuple(replace(one, role="opening") if at <= until else one for at, one in enumerate(body))


def _states(paragraph: BodyParagraph, wanted: frozenset[str], weights: Weights) -> bool:
    stems = [frozenset(count_stems(sentence.own)) for sentence in paragraph.sentences]
    return any(weights.share(wanted, one | other) >= STATES for one, other in pairwise([*stems, frozenset()]))


def find_promise(point: str, body: Sequence[BodyParagraph], texts: Sequence[str]) -> int | None:
    """Where the opening says that a point will be argued, by the paragraph's place; None where it does not.

    Args:
        point: What the point says.
        body: The paragraphs that argue.
        texts: The words of each of them.
    """
    wanted = frozenset(count_stems(point))
    weights = weigh(tuple(texts))
    opening = [at for at, paragraph in enumerate(body) if paragraph.role == "opening"]
    shares = {at: weights.share(wanted, count_stems(texts[at])) for at in opening}
    best = max(shares, key=lambda at: shares[at], default=None)
    return best if best is not None and shares[best] >= PROMISES else None
