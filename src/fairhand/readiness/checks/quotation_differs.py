"""``quotation-differs``: the words in quotation marks are not the words of the source."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark
from fairhand.readiness.naming import name_place


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each quotation with words changed and no bracket to say so."""
    for looked_up in analysis.looked_up:
        match = looked_up.match
        if match.outcome == "differs" and match.source is not None:
            place = name_place(analysis.entries[match.source], match.pages)
            also = " The page cited is another one." if match.wrong_page else ""
            yield Remark(
                looked_up.quotation.span,
                f"The quotation differs from its source, {place}. Restore its words, or bracket what is yours.{also}",
                rule=analysis.style_rules.follows,
                wordings=match.wordings,
                concerns=(match.source,),
            )
