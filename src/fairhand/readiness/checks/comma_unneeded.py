"""``comma-unneeded``: a comma that parts what belongs together."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.copyedit.grammar.commas.set_off import find_unset
from fairhand.copyedit.grammar.commas.unneeded import find_unneeded
from fairhand.model.finding import Instead
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark

_WHY = {
    "subject": "it parts the subject, which ends at “{before}”, from its verb",
    "that": "it parts “{before}” from the clause that it takes",
    "such as": "what “{before}” brings in follows without one",
    "although": "the clause that “{before}” opens follows without one",
}


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each comma of the writer's own prose that parts what belongs together."""
    for clause in analysis.clauses:
        for found in find_unneeded(clause):
            if found.kind == "subject" and find_unset(clause) is not None:
                continue  # the other comma of its pair is missing
            says = f"An unnecessary comma: {_WHY[found.kind].format(before=found.before)}."
            yield Remark(found.span, says, instead=(Instead(found.comma),))
