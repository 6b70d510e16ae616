"""What lateness costs: nothing to meet, something to know."""

from __future__ import annotations

import datetime as dt

from fairhand.brief.late_rule import late_rule_of
from fairhand.model.requirement import Requirement
from fairhand.planning.lateness import LIKELY_MARK, marks_lost
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.deadlines import due_hour
from fairhand.readiness.judgement import Judgement

_DAYS = (1, 2, 7)
"""Days after the hour of which the cost is told."""


def judge(requirement: Requirement, analysis: Analysis) -> Judgement:
    """The sheet's words, and what its rule takes off a paper of a likely mark, with the working."""
    told = f"Told for the plan: “{' '.join(requirement.evidence.split())}”."
    rule = late_rule_of(requirement.values)
    now = analysis.paper.now
    hours = (
        due_hour(r.values, now.tzinfo if now else None)
        for r in analysis.paper.requirements
        if r.kind == "due" and r.values.get("what") == "final"
    )
    due = next((hour for hour in hours if hour), None)
    if rule is None or due is None:
        return Judgement("met", None, told)
    workings = dict.fromkeys(
        marks_lost(rule, due, due + days * dt.timedelta(days=1), mark=LIKELY_MARK).working for days in _DAYS
    )
    return Judgement("met", None, f"{told} For example: {'. '.join(workings)}.")
