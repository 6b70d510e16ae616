"""``semicolon``: a semicolon with a mere part of a sentence beside it, or a colon that parts a verb from its list."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.copyedit.grammar.commas.semicolons import find_misplaced
from fairhand.model.finding import Instead
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark

_SAYS = {
    "opening": "A semicolon after a part of a sentence: “{by}” makes it a subordinate clause. A comma?",
    "part": "A semicolon before a part of a sentence: what “{by}” opens could not stand alone. A comma?",
    "series": "A semicolon before a series that could not stand alone. A colon?",
    "colon": "A colon after “{by}” parts it from what it takes: no mark belongs there.",
}


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each semicolon and colon of the writer's own prose that does not belong where it stands."""
    for clause in analysis.clauses:
        found = find_misplaced(clause)
        if found is not None:
            says = _SAYS[found.kind].format(by=found.by)
            yield Remark(found.span, says, instead=(Instead(found.comma, found.instead),))
