"""The verdict: every requirement held against the real thing, what the checks say, and the one thing to do next."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from fairhand.manuscript.counting import WordCount
from fairhand.model.finding import Finding
from fairhand.model.problem import Problem
from fairhand.model.requirement import Requirement
from fairhand.model.stet import Stetted
from fairhand.proof.stets import let_stand
from fairhand.readiness.analysis import Analysis, Measured
from fairhand.readiness.check import Check, run_checks
from fairhand.readiness.deadlines import Answer, sum_up
from fairhand.readiness.judgement import NO_DRAFT, Judged, Judgement
from fairhand.readiness.next_step import Step, next_step
from fairhand.readiness.table import CHECKS, JUDGES

OF_THE_DRAFT = frozenset({"length", "section", "element", "sources", "sources_banned"})
"""Kinds of requirement that only a draft can meet."""


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
    """What is still open; what the writer lets stand is in ``stets``."""
    step: Step
    problems: tuple[Problem, ...]
    draft: str
    title: str
    """The paper's title, or the name of its folder."""
    style: str
    """The style that it is set in, and who chose it."""
    answered: tuple[str, ...]
    """Ids of the requirements that the writer has answered or waived."""
    time_zone: str
    """The desk's, by which deadlines are judged."""
    stets: tuple[Stetted, ...] = ()
    """What the checks find and the writer lets stand."""

    @property
    def next_step(self) -> str:
        """The one thing to do now, in a sentence for the terminal."""
        return str(self.step)


def judge_paper(analysis: Analysis, checks: Sequence[Check] = CHECKS) -> Verdict:
    """The verdict on a paper.

    A paper is *not ready* while a *must* is unmet or found; it is to be *asked* about while only questions are open.
    """
    judged = tuple(Judged(r, _judge(r, analysis)) for r in analysis.paper.requirements)
    findings, stetted = let_stand(run_checks(analysis, checks), analysis.paper.stets, analysis.paper.draft)
    binding = [j.judgement.state for j in judged if j.requirement.force == "must"]
    rule = analysis.length_rule
    return Verdict(
        answer=sum_up(binding, [f.weight for f in findings], has_draft=bool(analysis.paper.draft.strip())),
        measured=analysis.measured,
        words=analysis.words,
        words_by=rule.as_rule if rule else "common practice: all but the list of references",
        judged=judged,
        findings=findings,
        stets=stetted,
        step=next_step(analysis, judged, findings),
        problems=analysis.paper.problems,
        draft=analysis.paper.draft,
        title=analysis.title,
        answered=tuple(analysis.paper.answers),
        time_zone=analysis.paper.desk.time_zone,
        style=_tell_style(analysis),
    )


def _tell_style(analysis: Analysis) -> str:
    if analysis.has_plain_page:
        return "a plain manuscript page (no style is named, no sources are asked for, and nothing is cited)"
    return f"{analysis.style_rules.follows} ({analysis.paper.style_why})"


def _judge(requirement: Requirement, analysis: Analysis) -> Judgement:
    """One requirement's judgement: the writer's word first, then the kind's own file."""
    answer = analysis.paper.answers.get(requirement.id)
    if answer is not None and answer.waived:
        said = f" by {answer.by}" if answer.by else ""
        return Judgement("waived", None, f"Waived{said}{f', {answer.when}' if answer.when else ''}.")
    if requirement.kind in OF_THE_DRAFT and not analysis.paper.draft.strip():
        return Judgement("unmet", None, NO_DRAFT)
    judgement = JUDGES[requirement.kind](requirement, analysis)
    if judgement.state == "ask" and answer is not None and not answer.values:
        said = f" (answered by {answer.by})" if answer.by else ""
        return Judgement("met", judgement.measured, f"You answered: {answer.note or 'yes'}{said}.")
    return judgement
