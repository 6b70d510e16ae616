"""``section-missing``: a section that the sheet asks for has no heading in the draft."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark
from fairhand.readiness.verdicts.section import judge


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each section that is missing."""
    if not analysis.paper.draft.strip():
        return
    for requirement in analysis.paper.requirements:
        if requirement.kind == "section" and not analysis.is_waived(requirement):
            judgement = judge(requirement, analysis)
            if judgement.state == "unmet":
                yield Remark(None, judgement.why, weight=requirement.weight, rule=requirement.as_rule)
