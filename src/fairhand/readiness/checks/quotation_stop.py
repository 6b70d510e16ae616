"""``quotation-stop``: a full stop or comma after the closing mark, where the style has it before."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.copyedit.form.pairs import find_stops_outside
from fairhand.model.finding import Instead
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark

AMERICAN = ("mla", "apa", "chicago")
"""The manuals that set both within the marks."""


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each of them, in the American styles; none in a paper in British English."""
    if analysis.style_rules.manual not in AMERICAN or analysis.is_british:
        return
    text = analysis.manuscript.text
    for _, place in find_stops_outside(analysis.manuscript):
        mark, stop = text[place.start], text[place.end - 1]
        what = "comma" if stop == "," else "full stop"
        says = f"The {what} stands after the closing quotation mark; the style sets it before."
        yield Remark(place, says, instead=(Instead(place, stop + mark),))
