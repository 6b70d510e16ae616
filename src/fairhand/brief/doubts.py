"""What a sheet leaves open or says twice, put as questions that only the teacher can answer."""

from __future__ import annotations

import re
from collections.abc import Sequence

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
    """What cannot be kept beside what the sheet said before: another day for the paper, a length apart from it."""
    questions = []
    firsts: dict[tuple[object, ...], Requirement] = {}
    for requirement in found:
        if requirement.kind in {"due", "length"}:
            values = requirement.values
            first = firsts.setdefault(
                (requirement.kind, values.get("what"), values.get("part"), values.get("unit")), requirement
            )
            if _contradict(first, requirement):
                questions.append(f"“{_quoted(first)}” and “{_quoted(requirement)}” cannot both hold: which does?")
    return questions


def _quoted(requirement: Requirement) -> str:
    return " ".join(requirement.evidence.split())


def _contradict(first: Requirement, second: Requirement) -> bool:
    """Whether two requirements of one kind, thing, part and unit cannot both be kept."""
    a, b = first.values, second.values
    if first.kind == "due":
        days = {a.get("on"), b.get("on")}
        return a.get("what") == "final" and None not in days and len(days) == 2
    if a.get("part") != "paper":
        return False
    least = max(_bound(values.get("min"), 0) for values in (a, b))
    return least > min(_bound(values.get("max"), 1e9) for values in (a, b))


def _bound(value: object, unsaid: float) -> float:
    return float(value) if isinstance(value, int | float) else unsaid
