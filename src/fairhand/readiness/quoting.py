"""What is said of a quotation that is not as its source has it."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.fidelity.match import Outcome
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark
from fairhand.readiness.naming import name_place


def remarks_on(analysis: Analysis, outcome: Outcome, lead: str, words: str, points: str) -> Iterator[Remark]:
    """A remark, with both wordings, on each quotation with that outcome.

    Args:
        analysis: The paper.
        outcome: ``differs`` or ``gap``.
        lead: What is wrong, ``{}`` standing for the source and page.
        words: What to do about words.
        points: What to do where only punctuation or capitals differ; a *should*, since no word is another.
    """
    for looked_up in analysis.looked_up:
        match = looked_up.match
        if match.outcome != outcome or match.source is None:
            continue
        place = name_place(analysis.names[match.source], match.pages)
        what = match.says or (points if match.points else words)
        also = " The page cited is another one." if match.wrong_page else ""
        yield Remark(
            looked_up.quotation.span,
            f"{lead.format(place)} {what}{also}",
            weight="should" if match.points else None,
            rule=analysis.style_rules.follows,
            wordings=match.wordings,
            concerns=(match.source,),
        )
