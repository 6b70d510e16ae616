"""A source read at a page: as it is printed where it is a PDF, else its text; its notes in the margin, a form below."""

from __future__ import annotations

from dataclasses import dataclass

from starlette.exceptions import HTTPException
from starlette.responses import Response

from fairhand.model.entry import Entry
from fairhand.model.note import KINDS, Note
from fairhand.model.source import Page, SourceText
from fairhand.model.span import Span
from fairhand.reading.page_picture import Marked, find_on_page
from fairhand.session.research.notes_for import list_served, notes_from
from fairhand.session.research.noting import list_notes, name_note, place_note
from fairhand.session.research.searching import list_open_questions
from fairhand.session.sources.page_pictures import find_pdf, look_at_page, picture_page
from fairhand.web.asked import Asked, get
from fairhand.web.forms import read_number
from fairhand.web.pages.marked_page import cut_page
from fairhand.web.safety import POLICY_OF_FILE, write_policy

LABELLED = {
    "entry": "as its record has them",
    "pdf": "as the PDF itself has them",
    "file": "as the file itself has them",
    "folio": "as they are printed on them",
    "counted": "counted from 1: hold one against the work itself",
}
"""Where a text's page labels come from, in words."""


@dataclass(frozen=True, slots=True)
class Mark:
    """Something marked on the page."""

    span: Span
    note: Note | None
    """What was noted there; None for the sentence that was found."""
    shown: Marked | None
    """Where it stands on the page as it is printed."""


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
    """One page of the source, the pages beside it one link away."""
    entry = find_entry(asked, asked.name("id"))
    known = asked.paper.opened.look()
    text = known.paper.texts.get(entry.id)
    if text is None:
        return asked.go(asked.to("sources", entry.id))
    at = find_page(text, asked.query("page"), asked.query("part"))
    page = text.pages[at]
    body = len(page.text) if page.notes_from is None else page.notes_from
    label = (page.label or "") if text.paged else ""
    name = known.names.get(entry.id, entry.id)
    pdf = find_pdf(asked.paper.opened.source_texts, text)
    picture = look_at_page(pdf, at) if pdf and asked.query("as") != "text" else None
    notes = notes_from(list_notes(asked.paper.folder)[0], entry.id, known)
    here = [(note, place) for note in notes if (place := place_note(note, text)) and place[0] == at]
    found = _read_span(asked, page)
    spans = [(span, None) for span in found] + [(place[1], note) for note, place in here]
    marks = [Mark(span, note, find_on_page(picture, span.of(page.text)) if picture else None) for span, note in spans]
    return asked.page(
        "source_text.html",
        title=f"{name}, page {label}" if label else name,
        step=f"{tell_text(text)}; what you take from it, note below{' with its page' if text.paged else ''}.",
        entry=entry,
        label=label,
        paged=text.paged,
        marks=marks,
        paragraphs=cut_page(page.text, 0, body, [mark.span for mark in marks]),
        footnotes=cut_page(page.text, body, len(page.text), [mark.span for mark in marks]),
        quotation=" ".join(" ".join(span.of(page.text) for span in found).split()),
        before=_address(asked, entry, text, at - 1),
        after=_address(asked, entry, text, at + 1),
        notes=[note for note in notes if note.page == label or any(note is one for one, _ in here)],
        name=name_note,
        blank=Note("", entry.id),
        kinds=KINDS,
        served=list_served(known),
        texts=known.paper.texts,
        part_open=at + 1,
        place=f"{at + 1} of {len(text.pages)}",
        is_pdf=pdf is not None,
        picture=picture,
        drawn=asked.to("sources", entry.id, "picture", part=at + 1, of=pdf.sha256[:12]) if pdf and picture else "",
        otherwise=_address(asked, entry, text, at, **({"as": "text"} if picture else {})),
        questions=list_open_questions(asked.paper.folder),
    )


def show_picture(asked: Asked) -> Response:
    """A page of the source's PDF as it is printed; its address changes with the file."""
    entry = find_entry(asked, asked.name("id"))
    text = asked.paper.opened.look().paper.texts.get(entry.id)
    pdf = find_pdf(asked.paper.opened.source_texts, text) if text else None
    if text is None or pdf is None:
        raise HTTPException(404)
    return Response(
        picture_page(pdf, find_page(text, "", asked.query("part"))),
        media_type="image/png",
        headers={
            "cache-control": "private, max-age=31536000, immutable",
            "content-security-policy": write_policy(POLICY_OF_FILE),
        },
    )


def _read_span(asked: Asked, page: Page) -> list[Span]:
    """The place on the page that the address marks; none where there is no such place."""
    start, end = (read_number(asked.query(name), -1) for name in ("from", "to"))
    return [Span(start, end)] if 0 <= start < end <= len(page.text) else []


def find_page(text: SourceText, label: str, part: str) -> int:
    """Where the page stands that an address means; the first, where it means none that there is."""
    labels = [page.label for page in text.pages]
    if label in labels:
        return labels.index(label)
    return min(max(read_number(part, 1), 1), len(labels)) - 1


def _address(asked: Asked, entry: Entry, text: SourceText, at: int, **more: str) -> str:
    """The address of a page, by its label where that is told from the others; empty where there is no such page."""
    if not 0 <= at < len(text.pages):
        return ""
    label = text.pages[at].label
    if label and [page.label for page in text.pages].count(label) == 1:
        return asked.to("sources", entry.id, "text", page=label, **more)
    return asked.to("sources", entry.id, "text", part=at + 1, **more)


ROUTES = (
    get("/paper/{slug}/sources/{id:path}/text", show),
    get("/paper/{slug}/sources/{id:path}/picture", show_picture),
)
