"""Quotations known by their words alone: they stand in a source at hand, and no citation belongs to them."""

from __future__ import annotations

import re
from collections.abc import Iterator

from fairhand.fidelity.prepared import words_of
from fairhand.readiness.analysis import Analysis, LookedUp

FEWEST = 6
"""Words that are nobody's common phrase."""
_CITES = re.compile(r"[\"”’']?[.,;:?!]?\s?(?:[(\[^¹²³⁴-⁹]|\d)")
"""What stands after words that are cited in a way that was not understood."""
_PAGE_ALONE = re.compile(r"\((?:pp?\. ?)?\d{1,4}(?:[–-]\d{1,4})?\)")
"""A page that closes the passage, whatever was understood by it."""


def list_bare(analysis: Analysis) -> Iterator[LookedUp]:
    """Each run-in quotation of six words or more that a source has and that nothing near it cites with a page.

    Words that are cited elsewhere in the draft may be taken up again without a citation, and where the sheet asks for
    no sources a text may be quoted without one.

    **Source**: MLA Handbook, 9th ed., 6.44 and 6.45 (one citation may close a passage of a paragraph; from memory);
    common practice.
    """
    if not analysis.asks_for_sources:
        return
    draft = analysis.paper.draft
    paged = {
        (analysis.mentions[one.mention].paragraph, entry)
        for one in analysis.resolved
        if one.cite.locator is not None
        for entry in ((one.entry,) if one.entry else one.candidates)
    }
    sure = [f" {' '.join(words_of(one.quotation.text))} " for one in analysis.looked_up if one.sure]
    for one in analysis.looked_up:
        quotation, words = one.quotation, words_of(one.quotation.text)
        known = one.match.outcome in {"verbatim", "allowed"} and one.match.source == one.entry
        if one.sure or one.citation is not None or not known or len(words) < FEWEST or quotation.kind != "run-in":
            continue
        end = analysis.manuscript.paragraphs[quotation.paragraph].span.end
        if (quotation.paragraph, one.entry) in paged or _PAGE_ALONE.search(draft, quotation.span.end, end):
            continue
        if _CITES.match(draft, quotation.span.end):
            continue
        if not any(f" {' '.join(words)} " in other for other in sure):
            yield one
