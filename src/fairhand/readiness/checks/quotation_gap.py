"""``quotation-gap``: words dropped from a quotation without a mark."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark
from fairhand.readiness.quoting import remarks_on


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each quotation that leaves words out silently."""
    return remarks_on(
        analysis,
        "gap",
        "Words of the source, {}, are left out without a mark.",
        "Restore them, or mark the gap with an ellipsis.",
    )
