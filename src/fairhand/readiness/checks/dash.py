"""``dash``: a hyphen where a dash belongs."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.copyedit.form.dashes import find_hyphen_dashes
from fairhand.model.finding import Instead
from fairhand.model.span import Span
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each hyphen between two blanks in the writer's own prose, with the dash of the country."""
    dash = " – " if analysis.is_british else "—"
    for own in analysis.own_prose:
        for span in find_hyphen_dashes(own):
            whole = Span(span.start - 1, span.end + 1)
            says = "A hyphen stands where a dash belongs, or the two words are one with the hyphen between them."
            yield Remark(whole, says, instead=(Instead(whole, dash),))
