"""``latin-abbreviation``: *e.g.*, *i.e.*, *etc.* in a sentence, where APA has them in brackets alone."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.copyedit.form.latin import WRITTEN_OUT, find_latin
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark


def find(analysis: Analysis) -> Iterator[Remark]:
    """One query a paper, at the first."""
    if analysis.style_rules.manual != "apa":
        return
    found = list(find_latin(analysis.manuscript, analysis.own_prose))
    if not found:
        return
    span, short = found[0]
    also = f", and at {len(found) - 1} more place{'s' if len(found) > 2 else ''}" if len(found) > 1 else ""
    says = (
        f"“{short}” stands outside brackets here{also}; the style keeps Latin abbreviations for brackets, and writes"
        f" “{WRITTEN_OUT[short]}” in the sentence."
    )
    yield Remark(span, says)
