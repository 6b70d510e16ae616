"""``citation-year``: a citation whose year is not its source's."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each citation that fits a source but for the year."""
    for resolved in analysis.resolved:
        if resolved.trouble == "year":
            yield Remark(resolved.cite.span, resolved.why, concerns=resolved.candidates)
