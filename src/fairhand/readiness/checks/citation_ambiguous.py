"""``citation-ambiguous``: a citation that fits several sources."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each citation that neither initials, year, title nor its sentence tells apart from another."""
    for resolved in analysis.resolved:
        if resolved.trouble == "ambiguous" and not analysis.repeats_trouble(resolved):
            yield Remark(resolved.cite.span, resolved.why, concerns=resolved.candidates)
