"""``placeholder-left``: a TK still stands in the draft."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each TK of the draft."""
    for placeholder in analysis.manuscript.placeholders:
        wanted = f" (“{placeholder.text}”)" if placeholder.text else ""
        yield Remark(placeholder.span, f"Matter is still to come here{wanted}. Put it in.")
