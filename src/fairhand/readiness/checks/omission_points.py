"""``omission-points``: points of omission set in two ways in one paper."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.copyedit.form.points import find_mixed_points
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark


def find(analysis: Analysis) -> Iterator[Remark]:
    """One query a paper, at the first of the fewer kind."""
    found = find_mixed_points(analysis.manuscript)
    if found is not None:
        span, close, spaced = found
        says = (
            f"Points of omission are set close ({close}) and with blanks ({spaced}); should they be alike throughout?"
        )
        yield Remark(span, says)
