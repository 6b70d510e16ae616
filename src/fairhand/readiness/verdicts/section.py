"""Whether the draft has each section that the sheet names."""

from __future__ import annotations

import re

from fairhand.language.folding import fold
from fairhand.model.requirement import Requirement
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.judgement import Judgement

MADE_FOR_YOU = frozenset(
    {"title", "title page", "references", "reference list", "list of references", "works cited", "bibliography"}
    | {"literature cited", "sources", "list of works cited", "work cited"}
)
"""Parts that the fair copy makes from the title and the list of sources."""

SAME = (
    frozenset({"method", "methods", "methodology", "materials and methods", "research design"}),
    frozenset({"results", "findings", "results and findings"}),
    frozenset({"conclusion", "conclusions", "concluding remarks"}),
    frozenset({"literature review", "review of literature", "review of the literature", "previous research"}),
    frozenset({"limitations", "limits", "limitations of the study"}),
)
"""Names that handbooks use for one section (common practice)."""


def judge(requirement: Requirement, analysis: Analysis) -> Judgement:
    """Whether a heading of the draft has the section's name."""
    name = str(requirement.values.get("name") or "")
    wanted = _words(name)
    if name in MADE_FOR_YOU:
        return Judgement("met", None, f"The fair copy makes the {name} itself.")
    own = analysis.manuscript.title
    headings = [
        (s.title, _words(s.title)) for s in analysis.manuscript.sections if s.heading and s.heading.content != own
    ]
    ways = next((same for same in SAME if wanted in same), frozenset({wanted}))
    for title, words in headings:
        if words in ways or any(_names(words, way) for way in ways):
            return Judgement("met", None, f"The draft has it: “{title}”.")
    return Judgement(
        "unmet",
        None,
        f"The sheet wants a section “{_as_asked(name, requirement.evidence)}”; the draft has no such heading.",
    )


def _as_asked(name: str, evidence: str) -> str:
    """The section's name with the capitals that the sheet gives it."""
    plain = " ".join(evidence.split())
    at = plain.lower().find(name)
    asked = plain[at : at + len(name)] if at >= 0 else name
    return asked if asked != asked.lower() else asked.capitalize()


def _words(title: str) -> str:
    """A heading without its number, case and punctuation."""
    return " ".join(re.findall(r"[^\W_]+", re.sub(r"^\s*(?:\d+(?:\.\d+)*|[ivxIVX]+)[.)]?\s+", "", fold(title))))


def _names(heading: str, wanted: str) -> bool:
    """Whether a longer heading plainly names the section: ``Limitations of the evidence``."""
    return bool(wanted) and re.search(rf"\b{re.escape(wanted)}\b", heading) is not None
