"""``dangling-opening``: an opening part whose doer is not the subject of the sentence."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.copyedit.grammar.constructions.dangling import find_dangling
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each opening in the writer's own prose that hangs on a subject which cannot do what it says."""
    for clause in analysis.clauses:
        for found in find_dangling(clause):
            yield Remark(
                found.span,
                f"A dangling modifier: the subject that follows is “{found.instead}”, which is not who is meant by this"
                " opening. Who is?",
            )
