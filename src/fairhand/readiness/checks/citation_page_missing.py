"""``citation-page-missing``: words quoted from a source with pages, and no page given."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.model.finding import Instead
from fairhand.model.span import Span
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.bare_quotations import list_bare
from fairhand.readiness.check import Remark
from fairhand.readiness.naming import name_pages


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each quotation from a paged source whose citation, or whose paragraph that names it, gives no place in it."""
    named = {
        bare.quotation.span
        for bare in list_bare(analysis)
        if bare.entry in analysis.spoken.of(bare.quotation.paragraph)
    }
    for looked_up in analysis.looked_up:
        entry = looked_up.entry
        if looked_up.locator is not None or entry is None:
            continue
        if not looked_up.sure and looked_up.quotation.span not in named:
            continue
        if not analysis.has_pages(entry) or not analysis.style_rules.page_with_quotation:
            continue
        pages = looked_up.match.pages if looked_up.match.source == entry else ()
        where = f" They stand on {name_pages(pages)}." if pages else ""
        place = looked_up.with_citation
        missing = Span(place.end - 1, place.end - 1)
        is_closed = analysis.paper.draft.endswith(")", place.start, place.end) and looked_up.citation is not None
        yield Remark(
            place,
            f"These words are quoted from {analysis.names[entry]} without a page.{where}",
            concerns=(entry,),
            instead=(Instead(missing, ", ".join(pages)),) if is_closed else (),
        )
