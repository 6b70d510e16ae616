"""``missing-word``: a small word of the grammar that was left out."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.copyedit.grammar.missing.missing_phrase import find_broken_phrases
from fairhand.copyedit.grammar.missing.missing_word import find_missing_words
from fairhand.model.finding import Instead
from fairhand.model.span import Span
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each place of the writer's own prose where such a word is missing."""
    for clause in analysis.clauses:
        places: set[int] = set()
        for found in (*find_broken_phrases(clause), *find_missing_words(clause)):
            if found.at in places:
                continue
            places.add(found.at)
            also = f" (or “{found.other}”)" if found.other else ""
            says = f"A word is missing: was “{found.word}”{also} meant here?"
            yield Remark(found.span, says, instead=(Instead(Span(found.at, found.at), f" {found.word}"),))
