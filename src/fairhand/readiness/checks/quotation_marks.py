"""``quotation-marks``: quotations in the other kind of marks."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.copyedit.form.mark_kinds import marks_of_other_kind
from fairhand.language.counts import count_of
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark


def find(analysis: Analysis) -> Iterator[Remark]:
    """The first of them, with how many there are; in American English, or where British has both kinds."""
    british = analysis.is_british
    if not british and analysis.style_rules.manual not in ("mla", "apa", "chicago"):
        return
    places = marks_of_other_kind(analysis.manuscript, british=british)
    if places:
        rest = f", and at {count_of(len(places) - 1, 'more place')}" if len(places) > 1 else ""
        kind = "Single" if analysis.manuscript.text[places[0].start] in "'‘’‚" else "Double"
        usual = "most of the paper has the other kind" if british else "the style has double ones, single within them"
        yield Remark(places[0], f"{kind} quotation marks stand here{rest}; {usual}.")
