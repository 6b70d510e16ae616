"""What is said of a quotation that is not as its source has it."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from fairhand.fidelity.match import QuotationMatch
from fairhand.model.finding import Weight
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark
from fairhand.readiness.naming import name_place


def remarks_on(
    analysis: Analysis, when: Callable[[QuotationMatch], bool], lead: str, mend: str = "", weight: Weight | None = None
) -> Iterator[Remark]:
    """A remark, with both wordings, on each quotation that was found so in a source.

    Args:
        analysis: The paper.
        when: Whether a quotation, as it was found, is to be remarked on.
        lead: What is wrong, ``{}`` standing for the source and page.
        mend: What to do about it, where the match says nothing of its own.
        weight: Where it is another than the check's.
    """
    for looked_up in analysis.looked_up:
        match = looked_up.match
        if match.source is None or not when(match):
            continue
        place = name_place(analysis.names[match.source], match.pages)
        also = " The page cited is another one." if match.wrong_page else ""
        yield Remark(
            looked_up.quotation.span,
            f"{lead.format(place)} {match.says or mend}{also}",
            weight=weight,
            wordings=match.wordings,
            concerns=(match.source,),
        )
