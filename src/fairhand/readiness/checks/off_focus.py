"""``off-focus``: a paragraph that seems to stray from what the paper is about."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each paragraph that cites nothing and has little in common with the focus, the points and the other ones."""
    for strays in analysis.argument.strays:
        apart = (
            "no other paragraph of the draft is like it in what its words tell"
            if strays.alone
            else f"{strays.shared:.0%} of its words stand elsewhere in the draft"
        )
        yield Remark(
            strays.span,
            f"How does this paragraph serve the paper? It cites nothing, {apart}, and {strays.named:.0%} of its words"
            " stand in title, thesis, focus and points.",
        )
