"""``capital``: a word that wants a capital, or has one without need."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.copyedit.words.capital import find_small_letters
from fairhand.copyedit.words.needless_capital import find_needless_capitals
from fairhand.model.finding import Instead
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark

_WHY = {
    "name": "names of peoples, places, languages, days and months have a capital, and so have words made of them",
    "pronoun": "the pronoun has a capital",
    "sentence": "a sentence opens with a capital, unless the stop before it is one too many",
}


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each such word of the writer's own prose."""
    surnames = frozenset(
        name.family for entry in analysis.paper.entries for name in entry.authors if name.family.isalpha()
    )
    for own in analysis.own_prose:
        for found in find_small_letters(own, surnames):
            says = f"A capital is missing: “{found.instead}”; {_WHY[found.kind]}."
            yield Remark(found.span, says, instead=(Instead(found.span, found.instead),))
        for place, word in find_needless_capitals(own):
            says = f"A capital without need: seasons and fields of study are written small, as “{word}”."
            yield Remark(place, says, instead=(Instead(place, word),))
