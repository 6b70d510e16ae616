"""``citation-unknown``: a citation of something that is not on the list of sources."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each citation that no source on the list fits."""
    for resolved in analysis.resolved:
        if resolved.trouble == "unknown" and not analysis.repeats_trouble(resolved):
            yield Remark(resolved.cite.span, resolved.why, concerns=resolved.candidates)
