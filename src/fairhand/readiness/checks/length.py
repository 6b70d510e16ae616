"""``length``: the paper is longer or shorter than the sheet allows."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark
from fairhand.readiness.verdicts.length import judge


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each rule on length that is not met."""
    if not analysis.paper.draft.strip():
        return
    for requirement in analysis.paper.requirements:
        if requirement.kind == "length" and not analysis.is_waived(requirement):
            judgement = judge(requirement, analysis)
            if judgement.state == "unmet":
                yield Remark(None, judgement.why, weight=requirement.weight, rule=requirement.as_rule)
