"""A draft that was printed here, worked on elsewhere, and comes back: what it was when it was printed."""

from __future__ import annotations

from pathlib import Path

from fairhand.desk.record import list_states
from fairhand.errors import FairhandError
from fairhand.language.content_words import list_words
from fairhand.manuscript.draft import read_manuscript
from fairhand.press.pandoc import run_pandoc
from fairhand.reading.taking import read_taken, take_request
from fairhand.session.editing import DRAFT
from fairhand.session.hand_in.printing import FORMS
from fairhand.session.opened import OpenPaper
from fairhand.session.record.states import text_of

MOST_STATES = 40
"""So many of the latest states of the draft are held against the file."""
SHARE = 0.5
"""Share of the printed sentences that the file must have for it to be that print, worked on."""


def find_printed(folder: Path, taken: str, ending: str) -> str | None:
    """The draft as it would have come in from the print of an earlier state; None where the file is no such print.

    Of the states that the record keeps, the latest is taken that has most sentences in common with the file.

    Args:
        folder: The paper's folder.
        taken: The draft that now comes in.
        ending: The ending of its file.
    """
    kind = ending.lstrip(".")
    wanted = _sentences(taken)
    best, most = "", 0
    seen: set[str] = set()
    for state in [*reversed(list_states(folder, DRAFT))][:MOST_STATES]:
        if state.sha256 in seen:
            continue
        seen.add(state.sha256)
        text = text_of(folder, state.seq)
        if (shared := len(_sentences(text) & wanted)) > most:
            best, most = text, shared
    if not best or kind not in FORMS:
        return None
    try:
        data = FORMS[kind](OpenPaper(folder, draft=best).fair_copy())
        printed, _ = read_taken(run_pandoc(take_request(data, ending)))
    except FairhandError:
        return None
    told = _sentences(printed)
    return printed if told and len(told & wanted) >= SHARE * len(told) else None


def _sentences(text: str) -> set[str]:
    """The sentences of a draft by their words alone."""
    manuscript = read_manuscript(text)
    spans = (span for paragraph in manuscript.paragraphs for span in paragraph.sentences)
    return {" ".join(list_words(span.of(text))) for span in spans}
