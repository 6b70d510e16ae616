"""``block-quotation``: a quotation run in that the style sets as a block, or the other way round."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.brief.block_quotations import find_block_rule
from fairhand.copyedit.form.blocks import LETTER_EM, Measure, find_long_run_in, find_short_blocks
from fairhand.fair_copy.layout import PAPER_SIZES_PT
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each of them by the sheet's measure, else the style's; words are counted, lines reckoned and only asked about.

    A short block is asked about where the sheet gives a measure, and in APA; the other manuals let one be set off.
    """
    rules, layout = analysis.style_rules, analysis.layout
    asked = find_block_rule(analysis.paper.brief.texts.values())
    in_words, in_lines, threshold = rules.block_from_words, rules.block_from_lines, rules.block_threshold
    if asked is not None:
        in_words, in_lines = (asked.number, None) if asked.unit == "words" else (None, asked.number)
        threshold = f"{asked.number} {asked.unit} or more"
    if not threshold:
        return
    width = PAPER_SIZES_PT[layout.paper][0] - layout.margins_pt[1] - layout.margins_pt[3]
    measure = Measure(in_words, in_lines, width / (LETTER_EM * layout.size_pt))
    who, rule = ("the sheet", f"the sheet: “{asked.evidence}”") if asked else ("the style", None)
    sure = in_words is not None and (asked is not None or rules.manual == "apa")
    titles = {analysis.manuscript.quotations[index].span for index in analysis.title_quotations}
    for one in find_long_run_in(analysis.manuscript, measure):
        if one.quotation.span not in titles:
            says = (
                f"The quotation has {_long(one.words, one.lines, measure)}; {who} sets one of {threshold} as a block."
            )
            yield Remark(one.quotation.span, says, weight=None if sure else "query", rule=rule)
    if asked is None and not sure:
        return
    for one in find_short_blocks(analysis.manuscript, measure):
        says = f"The block has {_long(one.words, one.lines, measure)}; {who} sets one only from {threshold}."
        yield Remark(one.quotation.span, says, weight="query", rule=rule)


def _long(words: int, lines: float, measure: Measure) -> str:
    """How long it is, in what the style measures by."""
    return f"{words} words" if measure.from_words is not None else f"about {lines:.1f} lines, reckoned by its letters"
