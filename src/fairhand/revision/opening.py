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
from fairhand.revision.likeness import Weights, count_stems

STATES = 0.6
"""Share of what the thesis tells that two sentences in a row must have to state it (from trial)."""
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
