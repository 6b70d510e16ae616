"""``spelling-mixed``: a word spelled as the other country has it, in a paper that keeps to one."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.copyedit.words.misspelled import find_other_country
from fairhand.language.lexicon import Country
from fairhand.model.finding import Instead
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark
from fairhand.readiness.spelling import spelling_of

COUNTRIES: dict[Country, str] = {"US": "American", "GB": "British"}


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each word of the other country's spelling, once; none where neither desk, sheet nor draft tells which is kept."""
    against = spelling_of(analysis)
    if not against.keeps_to_one:
        return
    mine, other = COUNTRIES[against.country], COUNTRIES["GB" if against.country == "US" else "US"]
    for found in find_other_country(analysis.own_prose, against):
        says = f"“{found.word}” is {other} spelling, and the paper keeps to {mine}: “{found.instead[0]}”."
        yield Remark(found.span, says, instead=(Instead(found.span, found.instead[0]),))
