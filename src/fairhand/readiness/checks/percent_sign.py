"""``percent-sign``: *12 percent* where the style has *12%*, or both in one paper."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.copyedit.form.percent import find_percentages
from fairhand.language.counts import count_of
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark


def find(analysis: Analysis) -> Iterator[Remark]:
    """The first of them, with how many there are: in APA the word, elsewhere the rarer of two that are mixed."""
    found = find_percentages(analysis.own_prose)
    if analysis.style_rules.manual == "apa":
        places, why = found.by_word, "the style has the sign (%) after a numeral"
    else:
        places = min(found.by_word, found.by_sign, key=len)
        why = "the paper has the sign (%) elsewhere" if places is found.by_word else "the paper has the word elsewhere"
    if places:
        rest = f", and at {count_of(len(places) - 1, 'more place')}" if len(places) > 1 else ""
        form = "The word stands after a numeral" if places is found.by_word else "The sign % stands"
        yield Remark(places[0], f"{form} here{rest}; {why}.")
