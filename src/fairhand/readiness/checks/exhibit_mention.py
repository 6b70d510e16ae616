"""``exhibit-mention``: a table or figure that the text does not speak of, has not got, or that has no title."""

from __future__ import annotations

import re
from collections.abc import Iterator

from fairhand.copyedit.form.exhibits import Numbered, find_missing, find_unmentioned
from fairhand.fair_copy.captions import number_exhibits
from fairhand.manuscript.setting import set_blocks
from fairhand.model.inline import plain
from fairhand.model.span import Span
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark

OF_OTHERS = re.compile(
    r"(?:\b(?:his|her|their)|[’']s|s[’']) (?:\w+ )?(?:paper|study|article|report|book|work|chapter)s?\b"
    r"|\b(?:original|this|that|the) (?:article|report|book|chapter)\b",
    re.IGNORECASE,
)
"""Marks of a sentence that speaks of another text, and may mean what stands there."""


def exhibits_of(analysis: Analysis) -> list[Numbered]:
    """The tables and figures of the draft that bear a number."""
    return [
        Numbered(one.kind, int(one.number), one.block.span, bool(plain(one.title).strip()))
        for one in number_exhibits(set_blocks(analysis.manuscript))
        if one.number.isdigit() and one.block.span is not None
    ]


def skipped_of(analysis: Analysis) -> list[Span]:
    """Where the text speaks of a source's tables and figures, or is never printed."""
    manuscript = analysis.manuscript
    cited = [mention.span for mention in analysis.mentions]
    return [*cited, *(quotation.span for quotation in manuscript.quotations), *manuscript.left_matter]


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each of them; a mention where the draft has none of the kind at all is only asked about."""
    manuscript = analysis.manuscript
    exhibits, skipped = exhibits_of(analysis), skipped_of(analysis)
    cited = [mention.span for mention in analysis.mentions]
    for exhibit in find_unmentioned(manuscript, exhibits, skipped):
        says = f"The text never speaks of {exhibit.kind.capitalize()} {exhibit.number}."
        yield Remark(exhibit.span, says)
    for exhibit in exhibits:
        if not exhibit.titled:
            yield Remark(exhibit.span, f"{exhibit.kind.capitalize()} {exhibit.number} has no title.")
    kinds = {exhibit.kind for exhibit in exhibits}
    for mentioned, number in find_missing(manuscript, exhibits, skipped):
        sentence = analysis.sentence_around(mentioned.span)
        if any(span.overlaps(sentence) for span in cited) or OF_OTHERS.search(sentence.of(manuscript.text)):
            continue
        says = f"The text speaks of {mentioned.kind.capitalize()} {number}, and the draft has no such {mentioned.kind}."
        yield Remark(mentioned.span, says, weight=None if mentioned.kind in kinds else "query")
