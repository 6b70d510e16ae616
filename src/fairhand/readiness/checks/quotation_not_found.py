"""``quotation-not-found``: the words stand in none of the sources at hand."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark
from fairhand.readiness.naming import name_entry


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each cited quotation that was looked for and not found."""
    for looked_up in analysis.looked_up:
        entry = looked_up.entry
        if looked_up.match.outcome == "not-found" and entry is not None:
            yield Remark(
                looked_up.quotation.span,
                f"These words were not found in {name_entry(analysis.entries[entry])}, nor in another source at hand.",
                weight=None if looked_up.sure else "query",
                concerns=(entry,),
            )
