"""``spelling``: a word that no dictionary of the paper's country has, with what was meant."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.copyedit.words.misspelled import find_misspelled
from fairhand.model.finding import Instead
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark
from fairhand.readiness.spelling import spelling_of


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each slip of spelling in the writer's own words."""
    for found in find_misspelled(analysis.own_prose, spelling_of(analysis)):
        first, *rest = (f"“{word}”" for word in found.instead[:3])
        says = f"No dictionary has “{found.word}”. Was {' or '.join((first, *rest))} meant?"
        yield Remark(found.span, says, instead=(Instead(found.span, found.instead[0]),))
