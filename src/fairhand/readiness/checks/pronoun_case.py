"""``pronoun-case``: a pronoun in the case of a subject where an object belongs, or the other way about."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from fairhand.copyedit.grammar.pronouns.pronoun_case import find_case_slips
from fairhand.model.finding import Instead
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark

_SAYS: Mapping[str, str] = {
    "object": "Pronoun case: “{word}” is an object here, of a preposition or a verb",
    "subject": "Pronoun case: “{word}” is a subject here",
    "reflexive": "A reflexive pronoun out of place: “{word}” points back to nobody in its sentence",
    "who": "Pronoun case: “{word}” is the subject of the verb that follows",
    "whom": "Pronoun case: “{word}” is an object here, of a preposition or of the verb that follows",
}


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each pronoun of the writer's own prose in the wrong case."""
    for clause in analysis.clauses:
        for found in find_case_slips(clause):
            says = f"{_SAYS[found.kind].format(word=found.word)}. Was “{found.instead}” meant?"
            yield Remark(found.span, says, instead=(Instead(found.span, found.instead),))
