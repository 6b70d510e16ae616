"""``section-missing``: a section that the sheet asks for has no heading in the draft."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark
from fairhand.readiness.verdicts import element, section


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each section that is missing, a conclusion or another element that is a section included."""
    if not analysis.paper.draft.strip():
        return
    for requirement in analysis.paper.requirements:
        is_part = requirement.kind == "element" and requirement.values.get("what") in element.PARTS
        if (requirement.kind != "section" and not is_part) or analysis.is_waived(requirement):
            continue
        judgement = (element if is_part else section).judge(requirement, analysis)
        if judgement.state == "unmet":
            yield Remark(None, judgement.why, weight=requirement.weight, rule=requirement.as_rule)
