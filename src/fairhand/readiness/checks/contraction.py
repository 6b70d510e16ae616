"""``contraction``: a contraction where the sheet forbids them."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.brief.contractions import contractions_forbidden
from fairhand.copyedit.form.contractions import find_contractions
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each contraction in the writer's own words; none where the sheet says nothing of them."""
    asked = contractions_forbidden(analysis.paper.brief.texts.values())
    if not asked:
        return
    for own in analysis.own_prose:
        for span in find_contractions(own):
            words = span.of(analysis.manuscript.text)
            yield Remark(span, f"“{words}” is a contraction; the sheet wants none.", rule=f"the sheet: “{asked}”")
