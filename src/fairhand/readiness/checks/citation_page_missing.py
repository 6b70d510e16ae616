"""``citation-page-missing``: words quoted from a source with pages, and no page given."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.model.span import Span
from fairhand.readiness.analysis import Analysis, LookedUp
from fairhand.readiness.check import Remark
from fairhand.readiness.naming import name_entry, name_pages

UNPAGED = frozenset(
    "webpage post post-weblog personal_communication broadcast motion_picture song speech interview software dataset graphic map".split()
)
"""CSL types of what is cited without a page."""


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each quotation from a paged source whose citation gives no place in it."""
    for looked_up in analysis.looked_up:
        entry = looked_up.resolved.entry
        if looked_up.locator is not None or entry is None or not looked_up.sure:
            continue
        record = analysis.entries[entry]
        text = analysis.paper.texts.get(entry)
        if record.type in UNPAGED or (text is not None and not text.paged):
            continue
        if text is None and not record.page:
            continue  # a book, or a site that lost its type: nobody here can tell whether it has pages
        pages = looked_up.match.pages if looked_up.match.source == entry else ()
        where = f" It stands on {name_pages(pages)}." if pages else ""
        yield Remark(
            _whole(looked_up),
            f"These words are quoted from {name_entry(record)} without a page.{where}",
            rule=analysis.style_rules.follows,
            concerns=(entry,),
        )


def _whole(looked_up: LookedUp) -> Span:
    """From the quotation to its citation, whichever stands first."""
    a, b = looked_up.quotation.span, looked_up.resolved.cite.span
    return Span(min(a.start, b.start), max(a.end, b.end)) if abs(b.start - a.end) < 200 else a
