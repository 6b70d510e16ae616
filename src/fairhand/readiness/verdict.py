"""The verdict: every requirement held against the real thing, what the checks say, and the one thing to do next."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any, Literal

from fairhand.manuscript.counting import WordCount
from fairhand.model.finding import Finding
from fairhand.model.problem import Problem
from fairhand.model.requirement import Requirement
from fairhand.model.span import line_at
from fairhand.readiness.analysis import Analysis, Measured
from fairhand.readiness.check import Check, run_checks
from fairhand.readiness.judgement import Judged, Judgement
from fairhand.readiness.next_step import next_step
from fairhand.readiness.table import CHECKS, JUDGES

Answer = Literal["ready", "not ready", "ask"]


@dataclass(frozen=True)
class Verdict:
    """Whether the paper is ready to be handed in, with the working."""

    answer: Answer
    measured: Measured | None
    words: WordCount
    words_by: str
    """The rule that the words were counted by."""
    judged: tuple[Judged, ...]
    findings: tuple[Finding, ...]
    next_step: str
    problems: tuple[Problem, ...]
    draft: str


def judge_paper(analysis: Analysis, checks: Sequence[Check] = CHECKS) -> Verdict:
    """The verdict on a paper.

    A paper is *not ready* while a *must* is unmet or found; it is to be *asked* about while only questions are open.
    """
    judged = tuple(Judged(r, _judge(r, analysis)) for r in analysis.paper.requirements)
    findings = run_checks(analysis, checks)
    binding = [j for j in judged if j.requirement.force == "must"]
    if not analysis.paper.draft.strip():
        answer: Answer = "not ready"
    elif any(j.judgement.state == "unmet" for j in binding) or any(f.weight == "must" for f in findings):
        answer = "not ready"
    else:
        answer = "ask" if any(j.judgement.state == "ask" for j in binding) else "ready"
    rule = analysis.length_rule
    return Verdict(
        answer=answer,
        measured=analysis.measured,
        words=analysis.words,
        words_by=rule.as_rule if rule else "common practice: all but the list of references",
        judged=judged,
        findings=findings,
        next_step=next_step(analysis, judged, findings),
        problems=analysis.paper.problems,
        draft=analysis.paper.draft,
    )


def _judge(requirement: Requirement, analysis: Analysis) -> Judgement:
    """One requirement's judgement: the writer's word first, then the kind's own file."""
    answer = analysis.paper.answers.get(requirement.id)
    if answer is not None and answer.waived:
        said = f" by {answer.by}" if answer.by else ""
        return Judgement("waived", None, f"Waived{said}{f', {answer.when}' if answer.when else ''}.")
    judgement = JUDGES[requirement.kind](requirement, analysis)
    if judgement.state == "ask" and answer is not None and not answer.values:
        said = f" (answered by {answer.by})" if answer.by else ""
        return Judgement("met", judgement.measured, f"You answered: {answer.note or 'yes'}{said}.")
    return judgement


def verdict_as_json(verdict: Verdict) -> dict[str, Any]:
    """The verdict in the form that other programs rely on.

    Offsets are code points of the draft; ``line`` counts from 1; a finding on the whole document has no place.
    """
    return {
        "verdict": verdict.answer,
        "pages": verdict.measured.sheets if verdict.measured else None,
        "words": {"counted": verdict.words.counted, "by": verdict.words_by, "excluded": dict(verdict.words.excluded)},
        "requirements": [_requirement_as_json(j) for j in verdict.judged],
        "findings": [_finding_as_json(f, verdict.draft) for f in verdict.findings],
    }


def _requirement_as_json(judged: Judged) -> dict[str, Any]:
    requirement, judgement = judged.requirement, judged.judgement
    values = {k: list(v) if isinstance(v, tuple) else v for k, v in requirement.values.items()}
    return {
        "kind": requirement.kind,
        **values,
        "evidence": requirement.evidence,
        "id": requirement.id,
        "force": requirement.force,
        "state": judgement.state,
        "measured": judgement.measured,
        "why": judgement.why,
    }


def _finding_as_json(finding: Finding, draft: str) -> dict[str, Any]:
    span = finding.span
    return {
        "check": finding.check,
        "pass": finding.in_pass,
        "weight": finding.weight,
        "start": span.start if span else None,
        "end": span.end if span else None,
        "line": line_at(draft, span.start) if span else None,
        "quote": span.of(draft) if span else None,
        "says": finding.says,
        "source": finding.rule,
    }
