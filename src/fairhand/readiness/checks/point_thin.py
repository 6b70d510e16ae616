"""``point-thin``: a point that rests on fewer independent sources than the writer's own rule wants."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.language.counts import count_of
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each point with too few sources, whatever they depend on."""
    if not analysis.asks_for_sources:
        return
    for support in analysis.support:
        if len(support.sources) >= support.needed:
            continue
        names = "; ".join(analysis.names[i] for i in support.sources) or "no source"
        lost = f" Not on the list of sources: {', '.join(support.missing)}." if support.missing else ""
        yield Remark(
            None,
            f"The {support.point.weight} point “{support.point.text}” ({support.point.id}) rests on {names}; "
            f"your rule wants {count_of(support.needed, 'source')}.{lost}",
            concerns=(support.point.id, *support.sources),
        )
