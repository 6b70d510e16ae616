"""``abbreviation``: one that is explained twice, or used before it is explained."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.copyedit.form.abbreviations import find_misplaced
from fairhand.manuscript.sections import named_sections
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each of them in the running text; abstract, notes, captions and tables explain their own."""
    manuscript, own_prose = analysis.manuscript, analysis.own_prose
    apart = [section.span for _, section in named_sections(manuscript)]
    running = {
        paragraph.span.start
        for paragraph in manuscript.paragraphs
        if not (paragraph.in_caption or paragraph.in_note or paragraph.in_table)
        and not any(span.contains(paragraph.span) for span in apart)
    }
    for one in find_misplaced([own for own in own_prose if own.start in running], own_prose):
        if one.fault == "again":
            yield Remark(
                one.span, f"“{one.short}” is explained a second time; once, where it is first used, is enough."
            )
        else:
            yield Remark(one.span, f"“{one.short}” stands here before it is explained (“{one.words}”, further on).")
