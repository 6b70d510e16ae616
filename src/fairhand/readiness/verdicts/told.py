"""Requirements that tell the writer something, or that only the writer can confirm."""

from __future__ import annotations

from fairhand.model.requirement import Requirement
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.judgement import CONFIRM, Judgement


def judge_rubric(requirement: Requirement, analysis: Analysis) -> Judgement:  # noqa: ARG001 - one signature for all
    """A criterion and its weight: nothing to meet, something to know."""
    values = requirement.values
    unit = "%" if values.get("unit") == "percent" else " points"
    return Judgement("met", None, f"“{values.get('criterion')}” carries {values.get('weight'):g}{unit}.")


def judge_late(requirement: Requirement, analysis: Analysis) -> Judgement:  # noqa: ARG001 - one signature for all
    """What lateness costs: nothing to meet, something to know."""
    return Judgement("met", None, f"Told for the plan: “{' '.join(requirement.evidence.split())}”.")


def judge_submit(requirement: Requirement, analysis: Analysis) -> Judgement:  # noqa: ARG001 - one signature for all
    """How the paper is handed in: told again at the hand-in."""
    where = f" to the {requirement.values['where']}" if requirement.values.get("where") else ""
    return Judgement("met", None, f"Hand in by {requirement.values.get('by')}{where}.")


def judge_task(requirement: Requirement, analysis: Analysis) -> Judgement:  # noqa: ARG001 - one signature for all
    """The verb of the question, which no count can answer."""
    return Judgement("ask", None, f"Does the paper {requirement.values.get('verb')}? {CONFIRM}")


def judge_policy(requirement: Requirement, analysis: Analysis) -> Judgement:  # noqa: ARG001 - one signature for all
    """A rule on the writer's conduct; leave that the sheet gives needs no answer."""
    what = {"ai": "artificial intelligence", "collaboration": "working together", "reuse": "work used before"}
    named = what.get(str(requirement.values.get("what")), str(requirement.values.get("what")))
    rule = requirement.values.get("rule")
    if rule == "allowed":
        return Judgement("met", None, f"On {named} the sheet gives leave: “{' '.join(requirement.evidence.split())}”.")
    return Judgement(
        "ask", None, f"The sheet's rule on {named}: “{' '.join(requirement.evidence.split())}”. Kept? {CONFIRM}"
    )
