"""What a sheet leaves open or says twice, put as questions that only the teacher can answer."""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import combinations

from fairhand.brief.dates import find_dates
from fairhand.brief.layout import Sheet
from fairhand.brief.wording import TOLD
from fairhand.model.requirement import Requirement

_IN_WEEK = re.compile(
    r"\b(?:by|due|before|in|until|during|end of|start of|beginning of|than|of)\b[^.;:]{0,20}\b"
    r"(?:teaching |study |term )?week (?:no\.? ?)?\d{1,2}\b(?! ?(?:reading|lecture|of the))",
    re.IGNORECASE,
)
_HANDED_IN = re.compile(
    r"\b(?:due|deadlines?|hand(?:ed|ing)?[- ](?:\w+ )?in|turn(?:ed)? (?:\w+ )?in|submi\w+|upload\w*|goes to|sent?"
    r"|bring)\b",
    re.IGNORECASE,
)


def ask_weeks(sheet: Sheet) -> list[str]:
    """The hand-ins for which the sheet names a week of the term and no date.

    >>> from fairhand.brief.layout import read_sheet
    >>> ask_weeks(read_sheet("a.txt", "Your plan is due by the end of week 6."))
    ['“Your plan is due by the end of week 6.” names a week and no date: on which day is it?']
    """
    return [
        f"“{' '.join(sentence.text.split())}” names a week and no date: on which day is it?"
        for sentence in sheet.sentences
        if _IN_WEEK.search(sentence.text)
        and (_HANDED_IN.search(sentence.text) or _HANDED_IN.search(sentence.passage.key))
        and not find_dates(sentence.text, sheet.given)
        and not TOLD.search(sentence.text)
    ]


def ask_contradictions(found: Sequence[Requirement]) -> list[str]:
    """The pairs of requirements of one sheet that cannot both be kept: two days for the paper, two lengths apart."""
    return [
        f"“{_quoted(first)}” and “{_quoted(second)}” cannot both hold: which does?"
        for first, second in combinations((r for r in found if r.kind in {"due", "length"}), 2)
        if first.kind == second.kind and _contradict(first, second)
    ]


def _quoted(requirement: Requirement) -> str:
    return " ".join(requirement.evidence.split())


def _contradict(first: Requirement, second: Requirement) -> bool:
    a, b = first.values, second.values
    if first.kind == "due":
        return (
            a.get("what") == b.get("what") == "final" and None not in {a.get("on"), b.get("on")} and a["on"] != b["on"]
        )
    if (a.get("part"), a.get("unit")) != (b.get("part"), b.get("unit")) or a.get("part") != "paper":
        return False
    low, high = (
        max(_bound(a.get("min"), 0), _bound(b.get("min"), 0)),
        min(_bound(a.get("max"), 1e9), _bound(b.get("max"), 1e9)),
    )
    return low > high


def _bound(value: object, unsaid: float) -> float:
    return float(value) if isinstance(value, int | float) else unsaid
