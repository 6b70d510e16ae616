"""Whether what was noted as a source's words is what stands there: asked while the source is still at hand."""

from __future__ import annotations

from fairhand.fidelity.match import QuotationMatch
from fairhand.fidelity.prepared import prepare
from fairhand.fidelity.quotation import find_quotation
from fairhand.model.note import Note
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.naming import name_pages
from fairhand.reading.labels import labels_in


def doubt_note(analysis: Analysis, note: Note) -> str:
    """What to hold against the source once more, in one sentence; nothing where its words stand where the note says.

    Without a quotation, or a text of its source, there is nothing to doubt.
    """
    match = _look_up(analysis, note)
    return _doubt(match, note) if match else ""


def tell_held(analysis: Analysis, note: Note) -> str:
    """Whether a noted quotation was held against its source, and how it stands there; nothing without a quotation."""
    if not note.quotation or note.source not in analysis.entries:
        return ""
    match = _look_up(analysis, note)
    if match is None:
        return "Not held against the source yet: no text of it is at hand."
    doubt = _doubt(match, note)
    where = f" on {name_pages(match.pages)}" if match.pages and not note.page else ""
    return doubt or f"Held against the source: it stands so{where}."


def _look_up(analysis: Analysis, note: Note) -> QuotationMatch | None:
    """What became of a note's quotation in its source; None where there is no quotation, or no text."""
    text = analysis.paper.texts.get(note.source) if note.quotation else None
    if text is None:
        return None
    return find_quotation(note.quotation, prepare(text), labels_in(note.page), {}, analysis.quotation_rules)


def _doubt(match: QuotationMatch, note: Note) -> str:
    if match.outcome == "not-found":
        return "These words were not found in the text at hand: hold them against it once more."
    if match.outcome in ("differs", "gap") and match.wordings is not None:
        return f"The source has: “{match.wordings.source}”."
    if note.page and match.wrong_page and match.pages:
        return f"In the text at hand these words stand on {name_pages(match.pages)}."
    return ""
