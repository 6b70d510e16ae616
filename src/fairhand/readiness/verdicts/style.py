"""Whether the fair copy is set in the style that the sheet asks."""

from __future__ import annotations

from fairhand.citing.styles import find_style, style_for
from fairhand.model.requirement import Requirement
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.judgement import Judgement


def judge(requirement: Requirement, analysis: Analysis) -> Judgement:
    """The style that the paper is set in, against the one that is asked."""
    in_use = analysis.style_rules.follows
    if requirement.values.get("style") == "any-consistent":
        return Judgement("met", in_use, f"Any style will do; every citation is set by one, the {in_use}")
    wanted = style_for(requirement.values)
    if wanted == analysis.paper.style:
        return Judgement("met", in_use, f"The fair copy sets every citation by the {in_use}")
    asked = find_style(wanted).edition_says
    return Judgement(
        "unmet", in_use, f"The paper is set by the {in_use} ({analysis.paper.style_why}); the sheet asks for {asked}"
    )
