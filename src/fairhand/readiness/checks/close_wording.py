"""``close-wording``: a sentence follows a source's too closely, some of its words changed."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark
from fairhand.readiness.likening import remarks_on_likeness, remarks_on_reuse


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each sentence, or long run, that a source or the writer's other paper has in the same order, changed a little."""
    yield from remarks_on_likeness(
        analysis,
        "close",
        "These {words} follow {place} closely, which is cited. Quote it, or say it in words and an order of your own.",
        "These {words} follow {place} closely, which is not cited here. Quote and cite it, or say it in words and an"
        " order of your own and cite it.",
    )
    yield from remarks_on_reuse(analysis, "close", "follow closely")
