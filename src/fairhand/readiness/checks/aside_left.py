"""``aside-left``: a remark to oneself still stands in the draft."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each aside of the draft."""
    for aside in analysis.manuscript.asides:
        yield Remark(aside.span, "A remark to yourself is left in the text. Settle it and take it out.")
