"""``mixed-construction``: a sentence that begins in one construction and goes on in another."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from fairhand.copyedit.grammar.constructions.construction import Kind
from fairhand.copyedit.grammar.constructions.mixed import find_mixed
from fairhand.model.finding import Instead
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark

_SAYS: Mapping[Kind, str] = {
    "reason because": "Faulty predication: “reason … because” says the cause twice; a reason is that something is so",
    "reason due": "Faulty predication: “reason … due to” says the cause twice",
    "is when": "Faulty predication: a definition wants a noun after “is”, not a clause with “{word}”",
    "no subject": "A mixed construction: the opening phrase cannot be the subject of “{word}”, and no other is there",
    "subject twice": "A double subject: “{word}” names again what stands before it",
    "it says": "A mixed construction: “{word}” stands for nothing here; the work itself, or its author, says it",
    "joined twice": "A mixed construction: the sentence opens with a joining word, and “{word}” joins a second time",
    "question order": "A mixed construction: an indirect question has the order of a statement, without “{word}”",
    "preposition twice": "The preposition stands twice: before “{word}” and at the end of its clause",
}


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each place in the writer's own prose where a sentence's construction breaks."""
    for clause in analysis.clauses:
        for found in find_mixed(clause):
            meant = f" Was “{found.instead}” meant?" if found.instead else ""
            yield Remark(
                found.span,
                f"{_SAYS[found.kind].format(word=found.word)}.{meant}",
                "query" if found.kind == "it says" else None,  # it may stand for what was named before
                instead=(Instead(found.at, found.instead),) if found.instead else (),
            )
