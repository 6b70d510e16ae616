"""``point-dependent``: a point whose sources may be one witness."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.evidence.independence import Dependence
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark
from fairhand.readiness.naming import count_of


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each point with sources enough, of which too few are independent."""
    if not analysis.asks_for_sources:
        return
    for support in analysis.support:
        if len(support.sources) < support.needed or len(support.independent) >= support.needed:
            continue
        ties = "; ".join(_say(analysis, tie) for tie in support.dependences)
        yield Remark(
            None,
            f"The {support.point.weight} point “{support.point.text}” ({support.point.id}) has "
            f"{count_of(len(support.sources), 'source')}, but they may count as {len(support.independent)}: {ties}. "
            "Whether they are independent is your judgement.",
            concerns=(support.point.id, *support.sources),
        )


def _say(analysis: Analysis, tie: Dependence) -> str:
    """One tie between two sources, in words."""
    first, second = analysis.names[tie.first], analysis.names[tie.second]
    if tie.kind == "cites":
        return f"{first} cites {second} (“{tie.why}”)"
    return f"{first} and {second} are both by {tie.why}"
