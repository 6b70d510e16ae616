"""The sheet's rule on tools that look through the language: it is not looked at until the writer has answered."""

from __future__ import annotations

import re

from fairhand.model.requirement import Requirement
from fairhand.readiness.analysis import Analysis

_OF_LANGUAGE = re.compile(
    r"\b(?:spell\w*|grammar|grammatical|proof-?read\w*|edit(?:s|ed|ing)?|polish\w*)\b", re.IGNORECASE
)
"""Marks of a rule on artificial intelligence that speaks of the language too."""
USED = (
    "Words were held against American and British dictionaries made from SCOWL, and likely slips, words confused or"
    " doubled and marks set wrong were pointed out, by rules and word counts that run on the writer’s own machine. No"
    " sentence was written or rewritten by the program."
)
"""What the copy-edit does, for a statement of what was used."""


def shut_by(analysis: Analysis) -> Requirement | None:
    """The rule that the writer has still to answer; None where there is none, or it was answered or waived."""
    for requirement in analysis.paper.requirements:
        if requirement.kind != "policy" or requirement.values.get("rule") == "allowed":
            continue
        what = requirement.values.get("what")
        speaks = what == "tools" or (what == "ai" and _OF_LANGUAGE.search(requirement.evidence) is not None)
        if speaks and requirement.id not in analysis.paper.answers:
            return requirement
    return None
