"""``close-wording``: a sentence follows a source's too closely, some of its words changed."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark
from fairhand.readiness.likening import remarks_on_likeness


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each sentence, or long run of words, that a source has in the same order with some of its words changed."""
    return remarks_on_likeness(
        analysis,
        "close",
        "These {words} follow {place} closely, which is cited. Quote it, or say it in words and an order of your own.",
        "These {words} follow {place} closely, which is not cited here. Quote and cite it, or say it in words and an"
        " order of your own and cite it.",
    )
