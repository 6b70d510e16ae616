"""``paragraph-quoted``: a paragraph that is mostly others' words."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark
from fairhand.revision.quoted_share import find_quoted


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each such paragraph, with its share."""
    body, text = analysis.argument.body, analysis.manuscript.text
    for quoted in find_quoted(body, text):
        yield Remark(
            body[quoted.paragraph].own_span,
            f"{quoted.quoted} of the {quoted.words} words of this paragraph are quoted. What do you say of them?",
        )
