"""The notes: by source and page, those without a page in a list of their own."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from starlette.exceptions import HTTPException
from starlette.responses import Response

from fairhand.errors import DraftChangedOnDisk, FairhandError
from fairhand.language.counts import open_with
from fairhand.model.note import KINDS, Note
from fairhand.model.source import SourceText
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.noted import doubt_note
from fairhand.session.editing import state_of
from fairhand.session.noting import keep_note, list_notes, name_note, remove_note
from fairhand.web.asked import Asked, get, post
from fairhand.web.error_pages import page_of


@dataclass(frozen=True, slots=True)
class Group:
    """The notes from one source, in the order of its pages."""

    source: str
    name: str
    notes: tuple[Note, ...]


def show(asked: Asked, *, fault: str = "", status: int = 200, note: Note | None = None) -> Response:
    """Every note, and a form for the next one."""
    known = asked.paper.opened.look()
    notes, problems = list_notes(asked.paper.folder)
    unpaged = [one for one in notes if _lacks_page(one, known)]
    paged = [one for one in notes if not _lacks_page(one, known)]
    step = "Note what you read as you read it: whose words, which page, and what you say of it."
    if unpaged:
        many = open_with(len(unpaged), "note has", "notes have")
        step = f"{many} no page yet, though the source has pages: look it up while you know where it is."
    return asked.page(
        "notes_page.html",
        status=status,
        title="Notes",
        step=step,
        lists=[("", _group(paged, known)), ("Without a page", _group(unpaged, known))],
        problems=problems,
        sources=known.names,
        kinds=KINDS,
        texts=known.paper.texts,
        name=name_note,
        doubts={note.id: doubt_note(known, note) for note in notes},
        fault=fault,
        note=note or Note("", source=asked.query("source")),
    )


def _lacks_page(note: Note, known: Analysis) -> bool:
    return not note.page and note.source in known.entries and known.has_pages(note.source)


def _group(notes: Sequence[Note], known: Analysis) -> tuple[Group, ...]:
    """The notes by source, in the order of the list of sources; those of no source in it last."""
    order = [*known.entries, *sorted({note.source for note in notes} - set(known.entries))]
    groups = (Group(i, known.names.get(i, i), order_notes(notes, i, known)) for i in order)
    return tuple(group for group in groups if group.notes)


def order_notes(notes: Sequence[Note], source: str, known: Analysis) -> tuple[Note, ...]:
    """The notes of a source by its pages as its text has them; by the order in which they were taken, otherwise."""
    own = [note for note in notes if note.source == source]
    text = known.paper.texts.get(source) if own else None
    places = {page.label: n for n, page in enumerate(text.pages)} if text else {}
    return tuple(sorted(own, key=lambda note: (places.get(note.page, len(places)), _number(note.page))))


def _number(label: str) -> int:
    return int(label) if label.isascii() and label.isdigit() and len(label) < 7 else 0


def add(asked: Asked) -> Response:
    """A new note; then the page that it was taken on."""
    note = _written(asked, Note("", ""))
    try:
        _keep(asked, note, "")
    except FairhandError as error:
        return show(asked, fault=str(error), status=page_of(error)[0], note=note)
    if asked.form.text("from") == "text":
        part = {"part": asked.form.text("part")} if asked.form.text("part") else {}
        return asked.go(asked.to("sources", note.source, "text", **({"page": note.page} if note.page else part)))
    return asked.go(asked.to("notes"))


def show_note(
    asked: Asked, *, fault: str = "", status: int = 200, typed: Note | None = None, now: Note | None = None
) -> Response:
    """One note, to be corrected or taken out."""
    note = now or _find(asked)
    if note is None:
        raise HTTPException(404)
    return asked.page(
        "note_page.html",
        status=status,
        title="A note",
        step="Correct it, or take it out; what it was stays among the earlier states.",
        sources=asked.paper.opened.look().names,
        kinds=KINDS,
        note=typed or note,
        now=now,
        was=state_of(note),
        fault=fault,
        here=asked.to("notes", asked.name("name")),
    )


def change(asked: Asked) -> Response:
    """A note corrected or taken out; where another program changed it meanwhile, both are shown."""
    note, was = _find(asked), asked.form.text("was")
    if note is None:
        fault = (
            "Another program took this note out while you were writing; what you typed stands below, to note it again."
        )
        return show(asked, fault=fault, status=409, note=_written(asked, Note("", "")))
    typed = _written(asked, note)
    try:
        if asked.form.text("do") == "remove":
            remove_note(asked.paper.folder, note.id, was)
        else:
            _keep(asked, typed, was or "-")
    except DraftChangedOnDisk:
        fault = "Another program changed this note while you were writing; nothing was overwritten."
        return show_note(asked, fault=fault, status=409, typed=typed, now=note)
    except FairhandError as error:
        return show_note(asked, fault=str(error), status=page_of(error)[0], typed=typed)
    return asked.go(asked.to("notes", at=name_note(note)))


def _keep(asked: Asked, note: Note, was: str) -> None:
    keep_note(asked.paper.folder, note, was, _texts(asked), asked.papers.now())


def _texts(asked: Asked) -> Mapping[str, SourceText]:
    return asked.paper.opened.look().paper.texts


def _find(asked: Asked) -> Note | None:
    notes, _ = list_notes(asked.paper.folder)
    return next((note for note in notes if name_note(note) == asked.name("name")), None)


def _written(asked: Asked, note: Note) -> Note:
    form = asked.form
    kind = form.text("kind", note.kind)
    return replace(
        note,
        kind=kind if kind in KINDS else "",
        source=form.text("source"),
        page=form.text("page"),
        quotation=form.text("quotation"),
        remark=form.text("remark"),
    )


ROUTES = (
    get("/paper/{slug}/notes", show),
    post("/paper/{slug}/notes", add),
    get("/paper/{slug}/notes/{name}", show_note),
    post("/paper/{slug}/notes/{name}", change),
)
