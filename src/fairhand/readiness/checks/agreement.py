"""``agreement``: a verb that does not agree with its subject."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.copyedit.grammar.agreeing.agreement import find_disagreements
from fairhand.model.finding import Instead
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each verb of the writer's own prose that wants another form after its subject."""
    for clause in analysis.clauses:
        for found in find_disagreements(clause):
            what = "one" if found.number == "one" else "more than one"
            says = (
                f"Subject and verb do not agree: “{found.subject}” is {what}, and “{found.verb}” is not."
                f" Was “{found.instead}” meant?"
            )
            yield Remark(found.span, says, instead=(Instead(found.span, found.instead),))
