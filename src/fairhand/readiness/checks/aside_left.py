"""``aside-left``: a remark to oneself still stands in the draft."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each aside of the draft, and what reads like one without a label, which is told more quietly."""
    for aside in analysis.manuscript.asides:
        yield Remark(aside.span, "A remark to yourself is left in the text. Settle it and take it out.")
    for found in analysis.unlabelled:
        if found.kind == "aside":
            says = "This reads like a remark to yourself, and it will print: only what begins with NB does not."
            yield Remark(found.span, says, weight="should")
