"""``placeholder-left``: a TK still stands in the draft."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each TK of the draft, and what reads like a gap without one, which is told more quietly."""
    for placeholder in analysis.manuscript.placeholders:
        wanted = f" (“{placeholder.text}”)" if placeholder.text else ""
        yield Remark(placeholder.span, f"Matter is still to come here{wanted}. Put it in.")
    for found in analysis.unlabelled:
        if found.kind == "matter":
            yield Remark(found.span, "Matter seems still to come here. Put it in.", weight="should")
