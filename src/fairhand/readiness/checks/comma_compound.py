"""``comma-compound``: two long sentences joined by a word with no comma before it."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.copyedit.grammar.commas.compound import find_compound
from fairhand.model.finding import Instead
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each compound sentence of the writer's own prose that lacks its comma; British *and* goes without."""
    for clause in analysis.clauses:
        found = find_compound(clause)
        if found is None or (found.joins == "and" and analysis.is_british):
            continue
        says = f"Is the comma of a compound sentence missing? “{found.joins}” joins two that could stand alone."
        yield Remark(found.span, says, instead=(Instead(found.comma, ","),))
