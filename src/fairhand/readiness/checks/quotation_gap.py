"""``quotation-gap``: words dropped from a quotation without a mark."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark
from fairhand.readiness.naming import name_place


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each quotation that leaves words out silently."""
    for looked_up in analysis.looked_up:
        match = looked_up.match
        if match.outcome == "gap" and match.source is not None:
            place = name_place(analysis.entries[match.source], match.pages)
            also = " The page cited is another one." if match.wrong_page else ""
            yield Remark(
                looked_up.quotation.span,
                f"Words of the source, {place}, are left out without an ellipsis. Restore them, or mark the gap.{also}",
                rule=analysis.style_rules.follows,
                wordings=match.wordings,
                concerns=(match.source,),
            )
