"""``verb-form``: a verb in a form that the word before it does not take."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.copyedit.grammar.verbs.verb_form import find_wrong_forms
from fairhand.model.finding import Instead
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each verb of the writer's own prose whose form its auxiliary does not take."""
    for clause in analysis.clauses:
        for found in find_wrong_forms(clause):
            says = (
                f"A wrong form of the verb: “{found.after}” does not take “{found.verb}”. Was “{found.instead}” meant?"
            )
            yield Remark(found.span, says, instead=(Instead(found.span, found.instead),))
