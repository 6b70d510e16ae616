"""``quotation-not-found``: the words stand in none of the sources at hand."""

from __future__ import annotations

import re
from collections.abc import Iterator

from fairhand.readiness.analysis import Analysis, LookedUp
from fairhand.readiness.check import Remark

IN_PASSING = 3
"""So few words in quotation marks, with no citation at them, may be the writer's own (scare quotes): asked."""

_WORD = re.compile(r"\w")


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each cited quotation that was looked for and not found."""
    for looked_up in analysis.looked_up:
        entry = looked_up.entry
        if looked_up.match.outcome == "not-found" and entry is not None:
            yield Remark(
                looked_up.quotation.span,
                f"These words were not found in {analysis.names[entry]}, nor in another source at hand.",
                weight=None if looked_up.sure and not _is_in_passing(analysis, looked_up) else "query",
                concerns=(entry,),
            )


def _is_in_passing(analysis: Analysis, looked_up: LookedUp) -> bool:
    """Whether a few words are quoted with other words between them and their citation."""
    if len(looked_up.quotation.text.split()) > IN_PASSING or looked_up.citation is None:
        return False
    between = analysis.paper.draft[looked_up.quotation.span.end : looked_up.citation.start]
    return bool(_WORD.search(between))
