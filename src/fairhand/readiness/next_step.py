"""The one thing to do now: the argument before the language, and both before the hand-in."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import product

from fairhand.language.counts import count_of
from fairhand.model.finding import Finding
from fairhand.model.span import line_at
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.judgement import Judged

ORDER = (
    ("section-missing", "Write what is missing"),
    ("point-thin", "Find another source for the point that is thin"),
    ("point-dependent", "Look for an independent source for the point"),
    ("length", "Bring the paper to its length"),
    ("placeholder-left", "Put in what is still to come"),
    ("aside-left", "Settle the remarks to yourself"),
    ("quotation-differs", "Check the quotations against their sources"),
    ("quotation-gap", "Check the quotations against their sources"),
    ("quotation-elsewhere", "Check the quotations against their sources"),
    ("quotation-not-found", "Check the quotations against their sources"),
    ("citation-unknown", "Settle the citations that fit no source"),
    ("citation-ambiguous", "Settle the citations that fit several sources"),
    ("citation-year", "Settle the citations whose year is wrong"),
    ("citation-page-missing", "Give the pages of the quotations"),
)
"""What to do about each kind of finding, in the order in which a paper is mended (common practice)."""


@dataclass(frozen=True, slots=True)
class Step:
    """What to do now."""

    says: str
    """It, without a stop."""
    leaf: str
    """The page of the paper where it is done, as ``revision``."""
    more: str = ""
    """What who works on the files themselves needs to know: lines, names of files, a command."""
    why: str = ""
    """What stands behind it, in a sentence, for who has the page before him."""

    def __str__(self) -> str:
        """One sentence, for the terminal.

        >>> str(Step("Begin the draft", "draft", "draft.md is not there yet.")), str(Step("Begin", "draft"))
        ('Begin the draft: draft.md is not there yet.', 'Begin.')
        >>> str(Step("Write what is missing", "draft", "The sheet wants a section “Method”."))
        'Write what is missing. The sheet wants a section “Method”.'
        """
        if not self.more:
            return f"{self.says}."
        return f"{self.says}{'.' if self.more[0].isupper() else ':'} {self.more}"


def next_step(analysis: Analysis, judged: Sequence[Judged], findings: Sequence[Finding]) -> Step:
    """What to do now, and where."""
    paper = analysis.paper
    if not paper.brief.texts:
        folder = "put it into the paper's folder as brief.txt (or .pdf, .docx, .md, .html)."
        return Step("Bring in the assignment sheet", "brief", folder)
    if not paper.draft.strip():
        return Step("Begin the draft", "draft", "draft.md is empty or not there yet.")
    for in_pass, weight in product(("revision", "copy-edit"), ("must", "should")):
        loud = [f for f in findings if (f.in_pass, f.weight) == (in_pass, weight)]
        for check, step in (*ORDER, *((f.check, "Go through what the checks found") for f in loud)):
            these = [f for f in loud if f.check == check]
            if these:
                leaf = "points" if check.startswith("point-") else in_pass
                return Step(step, leaf, *_where(these, paper.draft))
    for state, step, leaf in (("unmet", "Meet what the sheet asks", "verdict"), ("ask", "Answer", "brief")):
        open_ = [j for j in judged if j.judgement.state == state and j.requirement.force == "must"]
        if open_:
            more = f" ({count_of(len(open_) - 1, 'more question', 'more questions')})" if len(open_) > 1 else ""
            why = f"{open_[0].requirement.id}. {open_[0].judgement.why}{more if state == 'ask' else ''}"
            return Step(step, leaf, why, open_[0].judgement.why)
    done = "Print the fair copy and read it once from start to end"
    return Step(done, "fair-copy", f"fairhand print {paper.name}")


def _where(findings: Sequence[Finding], draft: str) -> tuple[str, str]:
    """The lines of some findings of one kind, and how many they are; of those about the whole, what the first says."""
    places = [f.span.start for f in findings if f.span is not None]
    if not places:
        return findings[0].says, findings[0].says
    lines = [str(line) for line in dict.fromkeys(line_at(draft, start) for start in places)]
    named = f"{'line' if len(lines) == 1 else 'lines'} {', '.join(lines)}."
    return named, f"{count_of(len(places), 'place is', 'places are')} marked."
