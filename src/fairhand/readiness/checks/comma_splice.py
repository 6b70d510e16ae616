"""``comma-splice``: two sentences that only a comma holds together."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.copyedit.grammar.joining.splice import find_splices
from fairhand.model.finding import Instead
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each comma of the writer's own prose that stands between two sentences."""
    for clause in analysis.clauses:
        for found in find_splices(clause, analysis.parse):
            why = f" “{found.adverb.capitalize()}” does not join them as “and” or “but” would." if found.adverb else ""
            says = f"A comma splice: what stands on either side could be a sentence.{why} A semicolon or a full stop?"
            yield Remark(found.span, says, instead=(Instead(found.comma, ";"),))
