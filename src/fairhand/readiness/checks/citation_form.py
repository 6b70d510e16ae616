"""``citation-form``: citations that were typed in another form than the style's, asked about once a paper."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from fairhand.copyedit.form.citation_forms import find_departures
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark

MOST = 4
"""Kinds that are named."""


def find(analysis: Analysis) -> Iterator[Remark]:
    """One query at the first of them, with each kind and how often it stands: the fair copy sets them right."""
    rules = analysis.style_rules
    found = list(find_departures(analysis.manuscript, analysis.mentions, analysis.resolved, analysis.entries, rules))
    if not found:
        return
    examples = {one.kind: f", as {one.example}" for one in reversed(found) if one.example}
    counts = Counter(one.kind for one in found).most_common()
    named = "; ".join(
        f"{kind}{f' ({times})' if times > 1 else ''}{examples.get(kind, '')}" for kind, times in counts[:MOST]
    )
    more = f"; and {len(counts) - MOST} more" if len(counts) > MOST else ""
    says = (
        f"Citations are typed in another form than the style’s, which is {rules.example}: {named}{more}. The fair copy"
        " sets right those that a source answers to; the draft itself stays as it is."
    )
    yield Remark(min(one.span for one in found), says)
