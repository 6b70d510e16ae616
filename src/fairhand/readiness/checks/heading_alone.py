"""``heading-alone``: a heading with nothing under it, or the only one under another."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.copyedit.form.headings import find_empty_sections, find_lone_subsections
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each empty section, and as a query each section that is parted into one."""
    for span, title in find_empty_sections(analysis.manuscript):
        yield Remark(span, f"Nothing stands under the heading “{title}”.")
    for span, title, above in find_lone_subsections(analysis.manuscript):
        says = f"“{title}” is the only heading under “{above}”; a section is parted into two or more, or not at all."
        yield Remark(span, says, weight="query")
