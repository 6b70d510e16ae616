"""``citation-year``: a citation whose year is not its source's."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.model.finding import Instead
from fairhand.model.span import Span
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each citation that fits a source but for the year."""
    for resolved in analysis.resolved:
        if resolved.trouble == "year":
            cite, entry = resolved.cite, analysis.entries.get(resolved.entry or "")
            at = analysis.paper.draft.find(cite.year, cite.span.start, cite.span.end)
            year = str(entry.issued.year or "") if entry and entry.issued else ""
            instead = (Instead(Span(at, at + len(cite.year)), year),) if cite.year and at >= 0 else ()
            yield Remark(cite.span, resolved.why, concerns=resolved.candidates, instead=instead)
