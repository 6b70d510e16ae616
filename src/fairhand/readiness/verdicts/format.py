"""Whether the fair copy looks as the sheet asks: Fairhand sets it, so most of it is met by printing."""

from __future__ import annotations

from fairhand.fair_copy.layout import layout_notes
from fairhand.fair_copy.sheet_rules import FORMAT_RULES
from fairhand.model.requirement import Requirement
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.judgement import CONFIRM, Judgement, State

PRINTED_AS = {"pdf", "docx", "odt", "html", "md"}
"""The kinds of file that the fair copy is made as."""


def judge(requirement: Requirement, analysis: Analysis) -> Judgement:
    """One rule of the page, held against the layout that the fair copy is set in."""
    what, value = str(requirement.values.get("what")), requirement.values.get("value")
    if what in FORMAT_RULES:
        notes = layout_notes(analysis.layout) if what == "font" else ()
        shown = f"{what.replace('-', ' ')}: {value}" if isinstance(value, str) else what.replace("-", " ")
        return Judgement("met", None, f"The fair copy is set so ({shown}).{''.join(f' {note}' for note in notes)}")
    if what == "file-type":
        kinds = {kind.strip(". ") for kind in str(value).lower().replace(",", " ").split()} & PRINTED_AS
        if kinds:
            kind = min(kinds)
            return Judgement("met", None, f"fairhand print --as {kind} makes one.")
        return Judgement("ask", None, f"Fairhand makes no {value} file: convert one that it makes. {CONFIRM}")
    if what == "file-name":
        return Judgement("ask", None, f"Name the file {value}. Done? {CONFIRM}")
    if what == "headings":
        with_headings = [section for section in analysis.manuscript.sections if section.heading]
        state: State = "met" if len(with_headings) > 1 else "unmet"
        return Judgement(state, len(with_headings), f"The draft has {len(with_headings)} headings, its title included.")
    return Judgement("ask", None, f"The sheet says: “{' '.join(requirement.evidence.split())}”. Done? {CONFIRM}")
