"""What a verdict says of lateness and of length: the figures, with their rule."""

from __future__ import annotations

import datetime as dt

from fairhand.brief.read import read_brief
from fairhand.model.paper import Paper
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.judgement import Judgement
from fairhand.readiness.table import JUDGES

NOW = dt.datetime(2027, 2, 1, 9, tzinfo=dt.UTC)
DRAFT = """# Bells

The bell rang twice.[^1] Nobody heard it at all.

> A block of six quoted words.

[^1]: Ada Orr, *Bells* (Hull: Tern Press, 1998), 12.

## Bibliography

Orr, Ada. *Bells*. Tern Press, 1998.
"""


def _judged(sheet: str, kind: str) -> Judgement:
    brief = read_brief([("a.txt", sheet)], NOW.date())
    paper = Paper(name="p", draft=DRAFT, brief=brief, requirements=brief.requirements, now=NOW)
    (asked,) = (r for r in brief.requirements if r.kind == kind)
    return JUDGES[asked.kind](asked, Analysis(paper, lambda _: None))


def test_lateness_is_told_with_its_working() -> None:
    """A day, two days and a week late are reckoned from the due hour by the sheet's rule."""
    late = "Late papers lose 5% of the mark per working day; nothing is accepted after 5 working days."
    why = _judged(f"The essay is due on Friday 5 March 2027 at 15:00. {late}", "late").why
    assert "1 working day late, 5 % of the mark: 70 becomes 66.5" in why
    assert "5 working days late, 5 % of the mark each: 70 becomes 52.5" in why
    assert "70 becomes" not in _judged(late, "late").why


def test_the_length_is_counted_by_the_sheets_switches() -> None:
    """Notes that only cite are left out, or the list of references counted, where the sheet says so."""
    assert _judged("Write 100 words.", "length").measured == 24
    assert _judged("Write 100 words. Purely bibliographic notes do not count.", "length").measured == 16
    assert _judged("Write 100 words, including the reference list.", "length").measured == 31
    why = _judged("Write 100 words. Quotations set in blocks do not count.", "length").why
    assert "without 6 of block quotes" in why


def test_a_block_quotation_is_looked_for() -> None:
    """One that is asked for is counted among the block quotations."""
    assert _judged("Include at least one block quotation.", "element").state == "met"
    assert _judged("Include at least two block quotations.", "element").state == "unmet"
