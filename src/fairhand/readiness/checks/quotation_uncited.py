"""``quotation-uncited``: words quoted that a source on the list has, with nothing that says whose they are."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.readiness.analysis import Analysis
from fairhand.readiness.bare_quotations import list_bare
from fairhand.readiness.check import Remark
from fairhand.readiness.naming import name_place


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each quotation that no citation follows and whose source its paragraph neither names nor cites."""
    for bare in list_bare(analysis):
        if bare.entry is None or bare.entry in analysis.spoken.of(bare.quotation.paragraph):
            continue
        place = name_place(analysis.names[bare.entry], bare.match.pages if analysis.has_pages(bare.entry) else ())
        yield Remark(
            bare.quotation.span,
            f"These words are quoted and nothing says from where. They stand in {place}. Cite it.",
            concerns=(bare.entry,),
        )
