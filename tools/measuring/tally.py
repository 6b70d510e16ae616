"""Alarms counted: how many were right, and what was spoiled and seen."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field

from fairhand.model.finding import Finding
from fairhand.model.paper import Paper
from fairhand.model.span import Span
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import run_checks
from fairhand.readiness.measure import wilson_lower_bound
from fairhand.readiness.table import CHECKS

MEASURED = (
    "point-dependent",
    "quotation-differs",
    "quotation-gap",
    "quotation-elsewhere",
    "quotation-not-found",
    "copied-unmarked",
    "close-wording",
    "citation-unknown",
    "citation-ambiguous",
    "citation-year",
    "citation-page-missing",
    "quotation-uncited",
    "spelling",
    "spelling-mixed",
    "confused-words",
    "doubled-word",
)
"""The checks that can be wrong about what stands in the file."""
ARGUING = ("point-missing", "claim-unsupported", "off-focus", "repeated-argument")
"""Those of the argument, which hear only papers that argue: the others are made of sentences that do not."""

SENTENCES = (
    *("quotation-alone", "pronoun-case", "pronoun-agreement", "mixed-construction", "paired-words", "parallel-series"),
    *("dangling-opening", "tense-shift"),
)
"""Those of the sentence as a whole, its pronouns and its quotations, which hear the same."""
SIGNS = ("apostrophe", "missing-word", "capital", "hyphen", "number-form")
"""Those of signs and small words, which hear the same."""
COMMAS = ("comma-opening", "fused-sentence", "comma-unneeded", "comma-nonrestrictive", "semicolon", "comma-compound")
"""Those of commas and semicolons, which hear the same."""
PARSING = (
    "plural-missing",
    "agreement",
    "comma-splice",
    "fragment",
    "verb-form",
    "article",
    *SENTENCES,
    *SIGNS,
    *COMMAS,
)
"""Those of grammar, which parse each sentence and hear found prose alone."""
FORMING = (
    *("mark-spacing", "dash", "range-hyphen", "numeral-opening", "mark-unpaired", "quotation-stop"),
    *("quotation-marks", "percent-sign", "latin-abbreviation"),
)
"""Those of form, which hear prose as it was typed."""
QUOTED = ("quotation-mechanics",)
"""Those of the marks of quotations, which hear made papers that quote."""
PAPERS = ("exhibit-mention", "abbreviation", "heading-form")
"""Those that hear whole articles."""


@dataclass(frozen=True, slots=True)
class Spoiled:
    """A fault that was set into a paper."""

    check: str
    """The check that should speak."""
    span: Span | None
    """Its place in the draft, or None where it is about a point."""
    concerns: str = ""
    """The id of the point that it is about."""


@dataclass
class Tally:
    """What the checks said of one kind of paper."""

    on: str
    """What the papers are, in a few words."""
    right: Counter[str] = field(default_factory=Counter)
    alarms: Counter[str] = field(default_factory=Counter)
    spoiled: Counter[str] = field(default_factory=Counter)
    seen: Counter[str] = field(default_factory=Counter)
    """How many of the faults that were set had a right alarm."""
    wrong: list[tuple[str, str, str, str]] = field(default_factory=list)
    """Check, paper, the words, and what was said, of each wrong alarm."""
    missed: list[tuple[str, str, str]] = field(default_factory=list)

    def bound(self, check: str) -> float:
        """The lower end of the precision's interval."""
        return wilson_lower_bound(self.right[check], self.alarms[check])

    def count(self, check: str, *, right: bool) -> None:
        """One alarm more."""
        self.alarms[check] += 1
        self.right[check] += right


def findings_in(paper: Paper, named: Sequence[str] = MEASURED) -> tuple[Finding, ...]:
    """What the checks of these names say of a paper, however loud they may be."""
    run = [check for check in CHECKS if check.name in named]
    return run_checks(Analysis(paper, lambda _: None), run, allowed=lambda _: "must")


def judge_paper(
    tally: Tally,
    name: str,
    paper: Paper,
    spoiled: Sequence[Spoiled],
    named: Sequence[str] = MEASURED,
    read: Callable[[Finding, str], bool] = lambda _finding, _draft: False,
) -> None:
    """Each alarm is right where it names a fault that was set, at its place, or was read and found right."""
    findings = findings_in(paper, named)
    for finding in findings:
        right = any(_tells(finding, fault) for fault in spoiled) or read(finding, paper.draft)
        tally.count(finding.check, right=right)
        if not right:
            words = finding.span.of(paper.draft) if finding.span else ""
            tally.wrong.append((finding.check, name, words, finding.says))
    for fault in spoiled:
        tally.spoiled[fault.check] += 1
        if any(_tells(finding, fault) for finding in findings):
            tally.seen[fault.check] += 1
        else:
            tally.missed.append((fault.check, name, fault.span.of(paper.draft) if fault.span else fault.concerns))


def _tells(finding: Finding, fault: Spoiled) -> bool:
    if finding.check != fault.check:
        return False
    if fault.span is None or finding.span is None:
        return fault.span is finding.span and fault.concerns in finding.concerns
    return finding.span.overlaps(fault.span)
