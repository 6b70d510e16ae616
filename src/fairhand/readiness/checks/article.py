"""``article``: *a* where *an* belongs, or the other way about."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.copyedit.grammar.article import find_wrong_articles
from fairhand.model.finding import Instead
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each article of the writer's own prose that does not go with the sound after it."""
    for found in find_wrong_articles(analysis.own_prose):
        says = f"The wrong article: “{found.instead.lower()}” goes with “{found.word}”, by its sound."
        yield Remark(found.span, says, instead=(Instead(found.span, found.instead),))
