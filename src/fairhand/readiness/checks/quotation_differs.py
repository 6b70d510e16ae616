"""``quotation-differs``: the words in quotation marks are not the words of the source."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark
from fairhand.readiness.quoting import remarks_on


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each quotation with words changed and no bracket to say so."""
    return remarks_on(
        analysis,
        lambda match: match.outcome == "differs",
        "The quotation differs from its source, {}.",
        "Restore its words, or bracket what is yours.",
    )
