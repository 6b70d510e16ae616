"""The text of a source, page by page."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Page:
    """One page, or one unnumbered part, of a source."""

    label: str | None
    """The page label as it is cited (``"342"``, ``"xiv"``, ``"B2"``), or None where the source has no pages."""
    text: str
    """Its running text, line-end hyphens joined; its footnotes last."""
    notes_from: int | None = None
    """Where in ``text`` its footnotes begin, or None where none were told apart."""


@dataclass(frozen=True, slots=True)
class SourceText:
    """All that could be read of one source."""

    id: str
    """The entry's id."""
    pages: tuple[Page, ...]
    paged: bool
    """Whether the labels are page numbers that a reader could look up."""
    file: str = ""
    """The file that it was read from, relative to the paper's folder."""
    labels_from: str = ""
    """Where the labels come from: ``"entry"``, ``"pdf"``, ``"file"`` (an EPUB's own), ``"folio"``, ``"counted"`` or
    ``"none"``."""
