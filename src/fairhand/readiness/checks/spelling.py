"""``spelling``: a word that no dictionary of the paper's country has, with what was meant."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.copyedit.words.misspelled import find_misspelled
from fairhand.model.finding import Instead
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark
from fairhand.readiness.spelling import country_asked, other_country, spelling_of


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each slip of spelling in the writer's own words; the other country's too, where desk or sheet asks for one."""
    against = spelling_of(analysis)
    for found in find_misspelled(analysis.own_prose, against):
        first, *rest = (f"“{word}”" for word in found.instead[:3])
        says = f"No dictionary has “{found.word}”. Was {' or '.join((first, *rest))} meant?"
        yield Remark(found.span, says, instead=(Instead(found.span, found.instead[0]),))
    if country_asked(analysis) is not None:
        yield from other_country(analysis, against, "desk or sheet asks for")
