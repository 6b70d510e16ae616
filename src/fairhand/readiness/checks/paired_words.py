"""``paired-words``: *neither … or*, *both … as well as*, *between … to*: a pair of words with the wrong partner."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.copyedit.grammar.constructions.paired import find_wrong_partners
from fairhand.model.finding import Instead
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each pair of the writer's own prose whose second word does not go with the first."""
    for clause in analysis.clauses:
        for found in find_wrong_partners(clause):
            says = (
                f"A pair of words that does not match: “{found.kind}” goes with “{found.instead.strip()}”, not"
                f" “{found.word.strip()}”."
            )
            yield Remark(found.span, says, instead=(Instead(found.span, found.instead),))
