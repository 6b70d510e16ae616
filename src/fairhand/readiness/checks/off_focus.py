"""``off-focus``: a paragraph that seems to stray from what the paper is about."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each paragraph that cites nothing and has few words in common with the focus, the points and the other ones."""
    for strays in analysis.argument.strays:
        yield Remark(
            strays.span,
            f"How does this paragraph serve the paper? It cites nothing, {strays.shared:.0%} of its words stand"
            f" elsewhere"
            f" in the draft, and {strays.named:.0%} in its title, thesis, focus and points.",
        )
