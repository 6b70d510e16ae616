"""``quotation-unchecked``: quotations that could not be looked for, since no text of their source is at hand."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.language.counts import count_of
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark


def find(analysis: Analysis) -> Iterator[Remark]:
    """One remark that names the sources."""
    unread = [looked_up for looked_up in analysis.looked_up if looked_up.match.outcome == "no-text"]
    ids = tuple(dict.fromkeys(u.entry for u in unread if u.entry is not None))
    if ids:
        names = "; ".join(analysis.names[i] for i in ids)
        yield Remark(
            None,
            f"{count_of(len(unread), 'quotation')} could not be looked for: no text is at hand of {names}. "
            "Check against the source itself, or put its file into sources/.",
            concerns=ids,
        )
