"""``confused-words``: one of two words that are taken for each other, where its neighbours want the other."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.copyedit.words.confused import find_confused
from fairhand.model.finding import Instead
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark
from fairhand.readiness.spelling import spelling_of


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each word of the writer's own prose that was taken for another."""
    for found in find_confused(analysis.own_prose, spelling_of(analysis).country):
        says = f"“{found.word}” does not fit the words around it: was “{found.instead}” meant?"
        yield Remark(found.span, says, instead=(Instead(found.span, found.instead),))
