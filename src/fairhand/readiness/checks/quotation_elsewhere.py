"""``quotation-elsewhere``: the words stand on another page, or in another source, than the one cited."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.model.finding import Instead
from fairhand.model.span import Span
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark
from fairhand.readiness.naming import name_pages, name_place
from fairhand.reading.labels import labels_in


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each quotation that is found, but not where its citation says."""
    for looked_up in analysis.looked_up:
        match = looked_up.match
        if match.source is None:
            continue
        found_in = analysis.names[match.source]
        instead: tuple[Instead, ...] = ()
        if match.outcome == "elsewhere" and looked_up.locator is not None:
            labels = labels_in(looked_up.locator.text) or (looked_up.locator.text,)
            end = looked_up.locator.span.end
            instead = (Instead(Span(end - len(looked_up.locator.text), end), ", ".join(match.pages)),)
            says = f"These words of {found_in} stand on {name_pages(match.pages)}, not on {name_pages(labels)}."
        elif match.outcome == "other-source" and looked_up.entry is not None:
            cited = analysis.names[looked_up.entry]
            says = f"These words are not in {cited}. They stand in {name_place(found_in, match.pages)}."
        else:
            continue
        yield Remark(
            looked_up.with_citation,
            says,
            weight=None if looked_up.sure else "query",
            wordings=match.wordings,
            concerns=(match.source,),
            instead=instead,
        )
