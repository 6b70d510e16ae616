"""``range-hyphen``: a range of numbers with a hyphen, where the style has an en dash."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.copyedit.form.dashes import find_hyphen_ranges
from fairhand.model.finding import Instead
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each range outside citations, in the styles of APA and Chicago; MLA has the hyphen, other styles their own."""
    if analysis.style_rules.manual not in ("apa", "chicago"):
        return
    for own in analysis.own_prose:
        for found in find_hyphen_ranges(own):
            says = f"The range from {found.first} to {found.last} has a hyphen; the style sets an en dash (–)."
            yield Remark(found.span, says, instead=(Instead(found.hyphen, "–"),))
