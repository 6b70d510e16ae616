"""``numeral-opening``: a sentence that opens with a numeral."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.copyedit.form.numerals import find_opening_numerals
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark

SPELL_OUT = ("mla", "apa", "chicago")
"""The manuals that want a number in words there."""


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each such sentence of running prose, in the styles of these manuals."""
    if analysis.style_rules.manual not in SPELL_OUT:
        return
    prose = {p.span.start for p in analysis.manuscript.paragraphs if not (p.in_caption or p.in_note or p.in_table)}
    for own in analysis.own_prose:
        if own.start in prose:
            for span in find_opening_numerals(own):
                numeral = span.of(analysis.manuscript.text)
                yield Remark(span, f"The sentence opens with “{numeral}”: write it in words, or turn the sentence.")
