"""What is said of a quotation that is not as its source has it."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.fidelity.match import Outcome
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark
from fairhand.readiness.naming import name_place


def remarks_on(analysis: Analysis, outcome: Outcome, lead: str, mend: str) -> Iterator[Remark]:
    """A remark, with both wordings, on each quotation with that outcome.

    Args:
        analysis: The paper.
        outcome: ``differs`` or ``gap``.
        lead: What is wrong, ``{}`` standing for the source and page.
        mend: What to do about it, where the match says nothing of its own.
    """
    for looked_up in analysis.looked_up:
        match = looked_up.match
        if match.outcome != outcome or match.source is None:
            continue
        place = name_place(analysis.names[match.source], match.pages)
        also = " The page cited is another one." if match.wrong_page else ""
        yield Remark(
            looked_up.quotation.span,
            f"{lead.format(place)} {match.says or mend}{also}",
            wordings=match.wordings,
            concerns=(match.source,),
        )
