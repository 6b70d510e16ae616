"""``point-dependent``: a point whose sources may be one witness."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.language.counts import count_of
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark
from fairhand.readiness.naming import name_tie


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each point with sources enough, of which too few are independent."""
    if not analysis.asks_for_sources:
        return
    for support in analysis.support:
        if len(support.sources) < support.needed or len(support.independent) >= support.needed:
            continue
        ties = "; ".join(name_tie(tie, analysis.names) for tie in support.dependences)
        yield Remark(
            None,
            f"The {support.point.weight} point “{support.point.text}” ({support.point.id}) has "
            f"{count_of(len(support.sources), 'source')}, but they may count as {len(support.independent)}: {ties}. "
            "Whether they are independent is your judgement.",
            concerns=(support.point.id, *support.sources),
        )
