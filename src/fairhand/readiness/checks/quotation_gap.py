"""``quotation-gap``: words dropped from a quotation without a mark."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.fidelity.match import QuotationMatch
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark
from fairhand.readiness.quoting import remarks_on


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each quotation that leaves words out silently; where these only say who speaks, that is asked."""
    yield from remarks_on(
        analysis,
        lambda match: match.outcome == "gap",
        "Words of the source, {}, are left out without a mark.",
        "Restore them, or mark the gap with an ellipsis.",
    )
    yield from remarks_on(
        analysis, _runs_speech_together, "Words of the source, {}, are left out without a mark.", weight="query"
    )


def _runs_speech_together(match: QuotationMatch) -> bool:
    """Whether nothing but who speaks is left out."""
    return match.broken_speech and match.outcome in ("allowed", "elsewhere")
