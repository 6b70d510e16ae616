"""Requirements that tell the writer something, or that only the writer can confirm."""

from __future__ import annotations

from fairhand.brief.telling import POLICIES, tell_requirement
from fairhand.model.requirement import Requirement
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.judgement import CONFIRM, Judgement


def judge_rubric(requirement: Requirement, analysis: Analysis) -> Judgement:  # noqa: ARG001 - one signature for all
    """A criterion and its weight: nothing to meet, something to know."""
    return Judgement("met", None, f"“{requirement.values.get('criterion')}” carries {tell_requirement(requirement)}.")


def judge_submit(requirement: Requirement, analysis: Analysis) -> Judgement:  # noqa: ARG001 - one signature for all
    """How the paper is handed in: told again at the hand-in."""
    return Judgement("met", None, f"To be handed in {tell_requirement(requirement)}.")


def judge_task(requirement: Requirement, analysis: Analysis) -> Judgement:  # noqa: ARG001 - one signature for all
    """The verb of the question, which no count can answer."""
    return Judgement("ask", None, f"Does the paper {requirement.values.get('verb')}? {CONFIRM}")


def judge_policy(requirement: Requirement, analysis: Analysis) -> Judgement:  # noqa: ARG001 - one signature for all
    """A rule on the writer's conduct; leave that the sheet gives needs no answer."""
    what = str(requirement.values.get("what"))
    named = POLICIES.get(what, what)
    if requirement.values.get("rule") == "allowed":
        return Judgement("met", None, f"On {named} the sheet gives leave: “{' '.join(requirement.evidence.split())}”.")
    return Judgement(
        "ask", None, f"The sheet's rule on {named}: “{' '.join(requirement.evidence.split())}”. Kept? {CONFIRM}"
    )
