"""``comma-nonrestrictive``: a comma missing beside what could be left out."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.copyedit.grammar.commas.set_off import find_unset
from fairhand.model.finding import Instead
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark

_WHY = {
    "name": "“{about}” names one alone, so that the clause after it only adds to it",
    "relative": "the clause that “{about}” opens has a comma before it and wants one after it",
    "apposition": "“{about}” only adds to the subject; what it opens has a comma before it and wants one after it",
    "adverb": "“{about}” has a comma before it and wants one after it",
    "adverb before": "“{about}” has a comma after it and wants one before it",
}


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each sentence of the writer's own prose where what could be left out has no comma on one side."""
    for clause in analysis.clauses:
        found = find_unset(clause)
        if found is not None:
            says = f"A comma with a nonrestrictive element is missing: {_WHY[found.kind].format(about=found.about)}."
            yield Remark(found.span, says, instead=(Instead(found.comma, ","),))
