"""``apostrophe``: a possessive without its apostrophe, or a plain plural with one."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.copyedit.grammar.signs.plural_apostrophe import find_decades, find_plurals_with_apostrophe
from fairhand.copyedit.grammar.signs.possessive import find_missing_apostrophes
from fairhand.copyedit.words.spelling import names_in
from fairhand.model.finding import Instead
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each such word of the writer's own prose; decades are asked about."""
    sign = "’" if "’" in analysis.manuscript.text else "'"
    names = frozenset(name.family for entry in analysis.paper.entries for name in entry.authors)
    names = names.union(*(names_in(own.text) for own in analysis.own_prose))
    for clause in analysis.clauses:
        for found in find_missing_apostrophes(clause, names):
            meant, other = _curled(found.instead), _curled(found.other)
            also = f" (or “{other}”)" if other else ""
            what = "possessive" if found.owned else "contraction"
            says = f"An apostrophe is missing from the {what}: was “{meant}”{also} meant?"
            yield Remark(found.span, says, instead=(Instead(found.span, found.instead.replace("'", sign)),))
        for found in find_plurals_with_apostrophe(clause):
            says = (
                f"An apostrophe too many: plain plurals and possessive pronouns have none. Was “{found.instead}” meant?"
            )
            yield Remark(found.span, says, instead=(Instead(found.span, found.instead),))
    for own in analysis.own_prose:
        for place, decade in find_decades(own.text):
            span = place.shifted(own.start)
            says = f"A decade has no apostrophe before its s in MLA, APA and Chicago: “{decade}”."
            yield Remark(span, says, weight="query", instead=(Instead(span, decade),))


def _curled(word: str) -> str:
    return word.replace("'", "’")
