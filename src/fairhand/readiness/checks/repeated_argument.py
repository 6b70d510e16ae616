"""``repeated-argument``: a paragraph that seems to make the argument of an earlier one again."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.model.span import line_at
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each such paragraph, with the earlier one."""
    text = analysis.manuscript.text
    for repeats in analysis.argument.repeats:
        earlier, later = analysis.argument.body[repeats.earlier], analysis.argument.body[repeats.later]
        rests = ", and rests on nothing else than what is cited there" if repeats.same_pages else ""
        yield Remark(
            later.own_span,
            f"Is this the argument of the paragraph on line {line_at(text, earlier.span.start)} again? It shares many"
            f" of"
            f" its words{rests}.",
        )
