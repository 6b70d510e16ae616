"""``dash``: a hyphen where a dash belongs, a dash with a blank on one side, dashes of several kinds."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.copyedit.form.dash_blanks import find_mixture, find_one_sided, has_blanks
from fairhand.copyedit.form.dashes import find_hyphen_dashes
from fairhand.model.finding import Instead
from fairhand.model.span import Span
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each of them in the writer's own prose, with the dash of the country; several kinds are asked about once."""
    dash = " – " if analysis.is_british else "—"
    spaced = has_blanks(analysis.own_prose, british=analysis.is_british)
    for own in analysis.own_prose:
        for span in find_hyphen_dashes(own):
            whole = Span(span.start - 1, span.end + 1)
            says = "A hyphen stands where a dash belongs, or the two words are one with the hyphen between them."
            yield Remark(whole, says, instead=(Instead(whole, dash),))
        for span, instead in find_one_sided(own, spaced=spaced):
            says = "The dash has a blank on one side alone; it has one on both sides, or on none."
            yield Remark(span, says, instead=(instead,))
    mixture = find_mixture(analysis.own_prose)
    if mixture is not None:
        named = " and ".join(f"{kind} ({times})" for kind, times in mixture.counts)
        says = f"The paper has {named} for the same thing. Should one of them stand throughout?"
        yield Remark(mixture.first_odd, says, weight="query")
