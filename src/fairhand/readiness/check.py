"""A check: one file that looks, and one row in the table that says how loud it may be."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass

from fairhand.model.finding import Finding, Instead, Pass, Weight, Wordings
from fairhand.model.span import Span
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.language_tools import shut_by
from fairhand.readiness.measure import loudest_allowed

LOUDNESS: tuple[Weight, ...] = ("query", "should", "must")
"""From the quietest to the loudest."""


@dataclass(frozen=True, slots=True)
class Remark:
    """What a check saw; the table adds the check's name, pass and weight."""

    span: Span | None
    """Its place in the draft, or None where it is about the whole document."""
    says: str
    weight: Weight | None = None
    """Where this one is quieter, or louder, than the check's own weight."""
    rule: str | None = None
    """Where this one rests on another rule than the check's own."""
    wordings: Wordings | None = None
    concerns: tuple[str, ...] = ()
    instead: tuple[Instead, ...] = ()


@dataclass(frozen=True, slots=True)
class Check:
    """One row of the table."""

    name: str
    in_pass: Pass
    weight: Weight
    """Its own weight; what was measured may make it quieter, never louder."""
    looks_for: str
    """What it looks for, in a line."""
    rule: str
    """Where its rule comes from."""
    find: Callable[[Analysis], Iterable[Remark]]
    of_manual: bool = False
    """Whether the manual that the paper follows rules, and is named; ``rule`` then tells where each manual has it."""
    of_language: bool = False
    """Whether it looks through the language, and keeps silent while a rule of the sheet on that waits for an answer."""


def run_checks(
    analysis: Analysis, checks: Sequence[Check], allowed: Callable[[str], Weight | None] = loudest_allowed
) -> tuple[Finding, ...]:
    """What the checks say, the whole document first, then in the order of the text.

    Args:
        analysis: The paper.
        checks: The rows of the table that are run.
        allowed: The loudest that a check may be, by its name; None where it is silent.
    """
    findings = []
    for check in checks:
        loudest = allowed(check.name)
        if loudest is None or (check.of_language and shut_by(analysis)):
            continue
        for remark in check.find(analysis):
            weight = min(remark.weight or check.weight, loudest, key=LOUDNESS.index)
            findings.append(
                Finding(
                    check=check.name,
                    in_pass=check.in_pass,
                    weight=weight,
                    span=remark.span,
                    says=remark.says,
                    rule=remark.rule or (analysis.style_rules.follows if check.of_manual else check.rule),
                    wordings=remark.wordings,
                    concerns=remark.concerns,
                    instead=remark.instead,
                )
            )
    findings.sort(key=lambda f: (f.span is not None, f.span or Span(0, 0)))
    return tuple(findings)
