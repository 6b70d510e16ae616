"""``quotation-mechanics``: a mark in or beside a quotation that does not belong there, or is wanting."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.copyedit.form.quotation_mechanics import find_mark_faults
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark

SAYS = {
    "mark within": "The “{}” stands within the closing quotation mark; it belongs after it.",
    "stop twice": "The quotation ends with “{}”, and a full stop follows; one mark ends the sentence.",
    "same marks": "A quotation within a quotation has the same marks; the inner one has the other kind.",
    "comma wanting": "A whole sentence is quoted after a verb of saying; a comma stands between the two.",
    "comma after that": "No comma stands between “that” and the words quoted: they are part of the sentence.",
    "block in marks": "A block quotation has no quotation marks around it; being set off says that it is quoted.",
}


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each of them."""
    american = analysis.style_rules.manual != "" and not analysis.is_british
    for one in find_mark_faults(analysis.manuscript, analysis.title_quotations, american=american):
        yield Remark(one.span, SAYS[one.fault].format(one.mark), instead=one.instead)
