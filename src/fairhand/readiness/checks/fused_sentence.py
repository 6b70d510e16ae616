"""``fused-sentence``: two sentences with nothing between them."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.copyedit.grammar.joining.fused import find_fused
from fairhand.model.finding import Instead
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each place of the writer's own prose where a sentence runs into the next."""
    for clause in analysis.clauses:
        found = find_fused(clause)
        if found is not None:
            why = f" “{found.adverb.capitalize()}” does not join them as “and” or “but” would." if found.adverb else ""
            says = f"A fused sentence: a second one begins at “{found.opens}”.{why} A full stop or a semicolon?"
            yield Remark(found.span, says, instead=(Instead(found.comma, ";"),))
