"""``parallel-series``: a pair or series whose last member has another form than the others."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.copyedit.grammar.constructions.parallel import find_unparallel
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark


def find(analysis: Analysis) -> Iterator[Remark]:
    """The member of each pair or series of the writer's own prose that does not match."""
    for clause in analysis.clauses:
        for found in find_unparallel(clause):
            yield Remark(
                found.span,
                f"Faulty parallelism: “{found.word}” begins a member of a {found.kind} whose others have another form.",
            )
