"""``claim-unsupported``: a figure or a finding that no source near it vouches for."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark
from fairhand.readiness.naming import name_place


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each such sentence, with what is wanting and, where a source on the list states it, where."""
    if not analysis.asks_for_sources:
        return
    for claim in analysis.argument.unsupported:
        if claim.why == "finding":
            says = f"“{claim.what}”: whose? No source is cited here."
        elif claim.cited is not None:
            says = (
                f"“{claim.what}” has no citation, and {analysis.names[claim.cited]}, cited before it, does not give it."
            )
        else:
            says = f"“{claim.what}” has no citation, and none near it vouches for it."
        concerns: tuple[str, ...] = ()
        if claim.stands is not None:
            label = claim.stands.label
            place = name_place(analysis.names[claim.stands.source], [label] if label else [])
            says += f" It seems to stand in {place}."
            concerns = (claim.stands.source,)
        yield Remark(claim.span, says, concerns=concerns)
