"""``copied-unmarked``: a source's words stand in the draft with no quotation marks."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark
from fairhand.readiness.likening import remarks_on_likeness, remarks_on_reuse


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each run of words that a source, or another paper of the writer's, has too, all but a few, outside quotations."""
    yield from remarks_on_likeness(
        analysis,
        "copied",
        "These {words} stand {exactly} in {place}, which is cited but not quoted. Set its words in quotation marks, or"
        " say it in your own.",
        "These {words} stand {exactly} in {place}, which is neither quoted nor cited here. Quote and cite it, or say it"
        " in your own words and cite it.",
    )
    yield from remarks_on_reuse(analysis, "copied", "stand {exactly} in")
