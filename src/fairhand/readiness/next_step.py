"""The one thing to do now: the argument before the language, and both before the hand-in."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import product

from fairhand.model.finding import Finding
from fairhand.model.span import line_at
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.judgement import Judged
from fairhand.readiness.naming import count_of

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


def next_step(analysis: Analysis, judged: Sequence[Judged], findings: Sequence[Finding]) -> str:
    """One sentence: what to do now, and where."""
    paper = analysis.paper
    if not paper.brief.texts:
        return "Put the assignment sheet into the paper's folder as brief.txt (or .pdf, .docx, .md, .html)."
    if not paper.draft.strip():
        return "Begin the draft: draft.md is empty or not there yet."
    for in_pass, weight in product(("revision", "copy-edit"), ("must", "should")):
        loud = [f for f in findings if (f.in_pass, f.weight) == (in_pass, weight)]
        for check, step in (*ORDER, *((f.check, "Go through what the checks found") for f in loud)):
            these = [f for f in loud if f.check == check]
            if these:
                return f"{step}{_where(these, paper.draft)}"
    for state, step in (("unmet", "Meet what the sheet asks"), ("ask", "Answer")):
        open_ = [j for j in judged if j.judgement.state == state and j.requirement.force == "must"]
        if open_:
            more = f" ({count_of(len(open_) - 1, 'more question', 'more questions')})" if len(open_) > 1 else ""
            return f"{step}: {open_[0].requirement.id}. {open_[0].judgement.why}{more if state == 'ask' else ''}"
    return f"Print the fair copy and read it once from start to end: fairhand print {paper.name}"


def _where(findings: Sequence[Finding], draft: str) -> str:
    """The places of some findings of one kind; of those about the whole document, what the first says."""
    lines = [str(line) for line in dict.fromkeys(line_at(draft, f.span.start) for f in findings if f.span is not None)]
    if not lines:
        return f". {findings[0].says}"
    return f": {'line' if len(lines) == 1 else 'lines'} {', '.join(lines)}."
