"""A source's text at a page, with a form to note something from it."""

from __future__ import annotations

from starlette.exceptions import HTTPException
from starlette.responses import Response

from fairhand.model.entry import Entry
from fairhand.model.source import SourceText
from fairhand.session.noting import list_notes, name_note
from fairhand.web.asked import Asked, get
from fairhand.web.notes_page import order_notes

LABELLED = {
    "entry": "as its record has them",
    "pdf": "as the PDF itself has them",
    "file": "as the file itself has them",
    "folio": "as they are printed on them",
    "counted": "counted from 1: hold one against the work itself",
}
"""Where a text's page labels come from, in words."""


def tell_text(text: SourceText | None) -> str:
    """What is at hand of a source's text, and where its page labels come from.

    >>> tell_text(None)
    'No text at hand'
    """
    if text is None:
        return "No text at hand"
    labels = [page.label for page in text.pages if page.label]
    if not text.paged or not labels:
        return "Text at hand, without pages"
    pages = f"page {labels[0]}" if len(labels) == 1 else f"pages {labels[0]}–{labels[-1]}"
    return f"Text at hand, {pages}, {LABELLED.get(text.labels_from, 'as it has them')}"


def find_entry(asked: Asked, entry_id: str) -> Entry:
    """The paper's entry of that id.

    Raises:
        HTTPException: It has none.
    """
    found = asked.paper.opened.look().entries.get(entry_id)
    if found is None:
        raise HTTPException(404)
    return found


def show(asked: Asked) -> Response:
    """One page of the text, the pages beside it one link away."""
    entry = find_entry(asked, asked.name("id"))
    known = asked.paper.opened.look()
    text = known.paper.texts.get(entry.id)
    if text is None:
        return asked.go(asked.to("sources", entry.id))
    at = _find_page(text, asked.query("page"), asked.query("part"))
    page = text.pages[at]
    body = page.text if page.notes_from is None else page.text[: page.notes_from]
    label = (page.label or "") if text.paged else ""
    name = known.names.get(entry.id, entry.id)
    notes = order_notes(list_notes(asked.paper.folder)[0], entry.id, known)
    return asked.page(
        "source_text.html",
        title=f"{name}, page {label}" if label else name,
        step=f"{tell_text(text)}; what you take from it, note below{' with its page' if text.paged else ''}.",
        entry=entry,
        label=label,
        paged=text.paged,
        paragraphs=_paragraphs(body),
        footnotes=_paragraphs(page.text[len(body) :]),
        before=_address(asked, entry, text, at - 1),
        after=_address(asked, entry, text, at + 1),
        notes=[note for note in notes if note.page == label],
        name=name_note,
        texts=known.paper.texts,
        part_open=at + 1,
        place=f"{at + 1} of {len(text.pages)}",
    )


def _paragraphs(text: str) -> list[str]:
    return [part for part in (part.strip() for part in text.split("\n\n")) if part]


def _find_page(text: SourceText, label: str, part: str) -> int:
    """Where the page stands that an address means; the first, where it means none that there is."""
    labels = [page.label for page in text.pages]
    if label in labels:
        return labels.index(label)
    number = int(part) if part.isascii() and part.isdigit() and len(part) < 7 else 1
    return min(max(number, 1), len(labels)) - 1


def _address(asked: Asked, entry: Entry, text: SourceText, at: int) -> str:
    """The address of a page, by its label where that is told from the others; empty where there is no such page."""
    if not 0 <= at < len(text.pages):
        return ""
    label = text.pages[at].label
    if label and [page.label for page in text.pages].count(label) == 1:
        return asked.to("sources", entry.id, "text", page=label)
    return asked.to("sources", entry.id, "text", part=at + 1)


ROUTES = (get("/paper/{slug}/sources/{id:path}/text", show),)
