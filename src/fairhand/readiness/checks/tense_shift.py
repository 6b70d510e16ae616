"""``tense-shift``: two deeds of one event in two tenses."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.copyedit.grammar.tense import find_tense_shift
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each verb of the writer's own prose that leaves the tense of the deed beside it."""
    for clause in analysis.clauses:
        for found in find_tense_shift(clause):
            yield Remark(
                found.span,
                f"A shift in verb tense: “{found.word}” leaves the tense of the other verb of its sentence, though both"
                " tell of one event. Is that meant?",
            )
