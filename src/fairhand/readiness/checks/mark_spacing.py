"""``mark-spacing``: a blank before a mark, none after it, or a mark twice."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.copyedit.form.spacing import find_misset
from fairhand.model.finding import Instead
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark

SAYS = {
    "blank before": "A blank stands before “{}”, where none belongs.",
    "blank inside": "A blank stands inside the bracket, beside “{}”.",
    "no blank after": "No blank stands after “{}”.",
    "twice": "“{}” is followed by a second mark, where one belongs.",
}


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each mark set wrong in the writer's own prose."""
    for own in analysis.own_prose:
        for found in find_misset(own):
            yield Remark(
                found.span, SAYS[found.fault].format(found.mark), instead=(Instead(found.instead, found.words),)
            )
