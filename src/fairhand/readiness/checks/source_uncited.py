"""``source-uncited``: a source on the list that the draft never cites."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark


def find(analysis: Analysis) -> Iterator[Remark]:
    """One remark that names them all: a *must* where the sheet wants every source cited, else a query.

    Where the sheet asks for no sources, a text that is quoted need not be cited; a source read for its references
    only need not be cited either.
    """
    if not analysis.paper.draft.strip():
        return
    used = analysis.cited if analysis.asks_for_sources else analysis.cited | {u.entry for u in analysis.looked_up}
    uncited = [entry for entry in analysis.paper.entries if entry.id not in used and not entry.is_for_references]
    if not uncited:
        return
    demand = next((r for r in analysis.paper.requirements if r.values.get("cited") == "all"), None)
    names = "; ".join(analysis.names[entry.id] for entry in uncited)
    are = "is on your list and is" if len(uncited) == 1 else "are on your list and are"
    if demand:
        says = f"{names} {are} never cited. The sheet wants every source on the list cited."
    else:
        says = f"{names} {are} never cited. Cite, or leave off the list?"
    yield Remark(
        None,
        says,
        weight="must" if demand else "query",
        rule=demand.as_rule if demand else None,
        concerns=tuple(entry.id for entry in uncited),
    )
