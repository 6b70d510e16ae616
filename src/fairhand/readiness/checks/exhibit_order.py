"""``exhibit-order``: tables and figures whose numbers are not in order."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.copyedit.form.exhibit_order import find_mentioned_early, find_misnumbered
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark
from fairhand.readiness.checks.exhibit_mention import exhibits_of, skipped_of


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each number that stands after a higher one; as a query, a kind that the text speaks of out of order."""
    exhibits = exhibits_of(analysis)
    wrong = list(find_misnumbered(exhibits))
    for exhibit, before in wrong:
        kind = exhibit.kind.capitalize()
        says = (
            f"Two exhibits are called {kind} {before}."
            if exhibit.number == before
            else f"{kind} {exhibit.number} stands after {kind} {before}; they are numbered in their order."
        )
        yield Remark(exhibit.span, says)
    if wrong:
        return
    for mentioned, number, lower in find_mentioned_early(analysis.manuscript, exhibits, skipped_of(analysis)):
        kind = mentioned.kind.capitalize()
        says = f"The text speaks of {kind} {number} before {kind} {lower}; should their numbers be exchanged?"
        yield Remark(mentioned.span, says, weight="query")
