"""``heading-form``: a heading that ends in a stop, or is capitalised unlike the others of its level."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.copyedit.form.heading_form import find_mixed_capitals, find_stopped_headings
from fairhand.model.finding import Instead
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each stop, and as a query the first heading of a level that is unlike most of them."""
    for whole, span, mark in find_stopped_headings(analysis.manuscript):
        yield Remark(whole, f"A heading on a line of its own has no “{mark}” at its end.", instead=(Instead(span),))
    for span, _, most in find_mixed_capitals(analysis.manuscript):
        says = f"Other headings of this level are in {most}; should this one be too?"
        yield Remark(span, says, weight="query")
