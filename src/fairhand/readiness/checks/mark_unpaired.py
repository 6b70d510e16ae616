"""``mark-unpaired``: a bracket or quotation mark of which the other one is missing."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.copyedit.form.pairs import find_open_quotations, find_unpaired_brackets
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each lone bracket of the writer's own prose, and each double mark that nothing closes."""
    text = analysis.manuscript.text
    opened = list(find_open_quotations(analysis.manuscript))
    for span in opened:
        yield Remark(span, f"Nothing closes the quotation mark {span.of(text)} in its paragraph.")
    unsure = [p.span for p in analysis.manuscript.paragraphs if any(p.span.contains(each) for each in opened)]
    for span in find_unpaired_brackets(analysis.manuscript):
        if not any(each.contains(span) for each in unsure):
            what = "closes" if span.of(text) == "(" else "opens"
            yield Remark(span, f"Nothing {what} the bracket “{span.of(text)}” in its paragraph.")
