"""``tense-shift``: two deeds of one event in two tenses."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.copyedit.grammar.verbs.narrative import find_narrative_shifts
from fairhand.copyedit.grammar.verbs.tense import find_tense_shift
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each verb of the writer's own prose that leaves the tense of the deed beside it, or of its neighbours."""
    for clause in analysis.clauses:
        for found in find_tense_shift(clause):
            yield Remark(
                found.span,
                f"A shift in verb tense: “{found.word}” leaves the tense of the other verb of its sentence, though both"
                " tell of one event. Is that meant?",
            )
    for found in find_narrative_shifts(analysis.clauses):
        yield Remark(
            found.span,
            f"A shift in verb tense: “{found.word}” is in the present, and the sentences around it tell of the past. Is"
            " that meant?",
        )
