"""``citation-stop``: a stop, a comma or a blank that is not where it belongs beside a citation."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.copyedit.form.citation_stops import find_notes_before_marks, find_stop_faults
from fairhand.model.finding import Instead
from fairhand.model.span import Span
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark

SAYS = {
    "stop before": "The full stop stands before the citation, which belongs to the sentence; it stands after it.",
    "stop twice": "A full stop stands before the citation and a mark after it; only the one after it belongs there.",
    "stop missing": "The sentence ends with the citation, and no full stop follows it.",
    "comma before": "The comma stands before the citation; it belongs after it, or nowhere.",
    "stop after block": "Under a block quotation the full stop stands before the citation, and none after it.",
    "no blank before": "No blank stands before the citation.",
    "no blank after": "No blank stands after the citation.",
}
NOTE = "The number of the note stands before “{}”; it follows the mark."


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each of them that the fair copy prints: of citations that stay in the text, and of the writer's own notes."""
    rules = analysis.style_rules
    manuscript = analysis.manuscript
    if rules.in_text in ("author-page", "author-date"):
        american = rules.manual != "" and not analysis.is_british
        for found in find_stop_faults(manuscript, analysis.mentions, american=american):
            if found.fault != "stop after block" or rules.manual:
                yield Remark(found.span, SAYS[found.fault], instead=found.instead)
    for own in analysis.own_prose:
        for number, mark in find_notes_before_marks(own, manuscript.text):
            place = Instead(Span(number.start, mark.end), mark.of(manuscript.text) + number.of(manuscript.text))
            yield Remark(Span(number.start, mark.end), NOTE.format(mark.of(manuscript.text)), instead=(place,))
