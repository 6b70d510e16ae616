"""``pronoun-agreement``: a pronoun of another number or person than what it stands for."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from fairhand.copyedit.grammar.pronouns.pronoun_number import find_number_slips
from fairhand.model.finding import Instead, Weight
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark

_SAYS: Mapping[str, str] = {
    "number": "Pronoun and antecedent do not agree in number: “{word}” stands for the subject of its verb",
    "plain": "Pronoun and antecedent do not agree in number, if “{word}” stands for the subject",
    "person": "A shift in person: “one” has become “{word}”",
}


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each pronoun of the writer's own prose that plainly does not go with its subject; singular *they* is let be."""
    for clause in analysis.clauses:
        for found in find_number_slips(clause):
            says = f"{_SAYS[found.kind].format(word=found.word)}. Was “{found.instead}” meant?"
            asks: Weight | None = "query" if found.kind == "plain" else None  # it may stand for what was named before
            yield Remark(found.span, says, asks, instead=(Instead(found.span, found.instead),))
