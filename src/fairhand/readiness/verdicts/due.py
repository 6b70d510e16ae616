"""When the paper is due, and how long that is from now."""

from __future__ import annotations

from fairhand.model.requirement import Requirement
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.deadlines import judge_hour
from fairhand.readiness.judgement import Judgement


def judge(requirement: Requirement, analysis: Analysis) -> Judgement:
    """The due hour against the present one."""
    return judge_hour(requirement.values, analysis.paper.now)
