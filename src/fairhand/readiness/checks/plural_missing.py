"""``plural-missing``: a noun that wants its plural."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.copyedit.grammar.agreeing.plural import find_missing_plurals, find_uncounted
from fairhand.model.finding import Instead
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each noun of the writer's own prose that stands in the singular where only the plural fits."""
    for clause in analysis.clauses:
        for found in find_missing_plurals(clause):
            says = f"The plural is missing: “{found.after}” goes with more than one. Was “{found.instead}” meant?"
            yield Remark(found.span, says, instead=(Instead(found.span, found.instead),))
        for other in find_uncounted(clause):
            says = f"“{other.noun}” is not counted: it has no plural, and “{other.word}” does not go with it."
            meant = (Instead(other.span, other.instead),) if other.instead else ()
            yield Remark(other.span, f"{says} Was “{other.instead}” meant?" if meant else says, instead=meant)
