"""``hyphen``: a hyphen that is missing before a noun, in a number or after a prefix, or that follows *-ly*."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.copyedit.grammar.signs.compounds import OPEN_IN_BRITAIN
from fairhand.copyedit.grammar.signs.hyphen import WrongHyphen, find_wrong_hyphens
from fairhand.language.counts import count_of
from fairhand.language.lexicon import find_word
from fairhand.model.finding import Instead
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark

_WHY = {
    "before noun": "A compound modifier has its hyphens before the noun that it describes.",
    "number": "In words, the numbers from twenty-one to ninety-nine have a hyphen.",
    "prefix": "A prefix does not stand alone.",
    "after -ly": "An adverb in -ly takes no hyphen.",
}


def find(analysis: Analysis) -> Iterator[Remark]:
    """The first place of each compound of the writer's own prose, with how many there are."""
    places: dict[str, list[WrongHyphen]] = {}
    for clause in analysis.clauses:
        for found in find_wrong_hyphens(clause):
            places.setdefault(found.instead.casefold(), []).append(found)
    for first, *rest in places.values():
        written = first.instead
        if first.why == "prefix" and _is_closed(written, british=analysis.is_british):
            written = written.replace("-", "")
        more = f" So at {count_of(len(rest), 'more place')}." if rest else ""
        says = f"Was “{written}” meant? {_WHY[first.why]}{more}"
        yield Remark(first.span, says, instead=(Instead(first.span, written),))


def _is_closed(compound: str, *, british: bool) -> bool:
    """Whether the country's dictionaries have a prefix and its word as one: *nonprofit*, in Britain *non-profit*."""
    prefix = compound.partition("-")[0].casefold()
    known = find_word(compound.replace("-", "").casefold())
    return (
        known is not None
        and known.is_spelled("GB" if british else "US")
        and not (british and prefix in OPEN_IN_BRITAIN)
    )
