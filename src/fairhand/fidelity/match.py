"""What became of a quotation when it was looked for in the sources."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from fairhand.model.finding import Wordings
from fairhand.model.span import Span

Outcome = Literal["verbatim", "allowed", "differs", "gap", "elsewhere", "other-source", "not-found", "no-text"]
"""``allowed``: changed only as the manuals let one; ``gap``: words dropped without a mark; ``elsewhere``: on another
page of the source cited; ``other-source``: in another source; ``no-text``: no text of the source is at hand."""


@dataclass(frozen=True, slots=True)
class QuotationMatch:
    """Where a quotation was found, and how it differs."""

    outcome: Outcome
    source: str | None = None
    """The id of the source that it was found in."""
    pages: tuple[str, ...] = ()
    """Labels of the pages that it stands on; empty for a source without pages."""
    place: tuple[tuple[int, Span], ...] = ()
    """Each page's index in the source and the interval of its text that matches."""
    wordings: Wordings | None = None
    """Both wordings, where they differ."""
    wrong_page: bool = False
    """Whether, whatever the outcome, it is not on the page cited."""
    likeness: float = 1.0
    """Share of the words that agree, 0 to 1."""
    says: str = ""
    """What is wrong beyond the differing words, in one sentence: an ellipsis where nothing was left out, say."""
    points: bool = False
    """Whether punctuation, capitals or the spacing of words within it differ from the source's."""
    broken_speech: bool = False
    """Whether it runs together a speech that the source breaks to say who speaks; ``says`` and ``wordings`` tell of it
    where nothing worse is wrong."""
