"""The notes: by source and page, those without a page in a list of their own."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from starlette.exceptions import HTTPException
from starlette.responses import Response

from fairhand.errors import DraftChangedOnDisk, FairhandError
from fairhand.language.counts import open_with
from fairhand.model.note import KINDS, Note
from fairhand.model.source import SourceText
from fairhand.readiness.noted import tell_held
from fairhand.session.editing import state_of
from fairhand.session.research.annotated import set_annotated
from fairhand.session.research.notes_for import Served, lacks_page, list_served, notes_for, order_notes
from fairhand.session.research.noting import keep_note, list_notes, name_note, remove_note
from fairhand.web.asked import Asked, get, post
from fairhand.web.error_pages import page_of
from fairhand.web.pages.fair_copy_page import KINDS as COPIES
from fairhand.web.pages.fair_copy_page import send_copy


def show(asked: Asked, *, fault: str = "", status: int = 200, note: Note | None = None) -> Response:
    """Every note, and a form for the next one."""
    known = asked.paper.opened.look()
    taken, problems = list_notes(asked.paper.folder)
    served = list_served(known)
    wanted = {what: asked.query(what) for what in ("question", "point")}
    notes = notes_for(taken, **wanted)
    unpaged = [one for one in notes if lacks_page(one, known)]
    paged = [one for one in notes if not lacks_page(one, known)]
    step = "Note what you read as you read it: whose words, which page, and what you say of it."
    if unpaged:
        many = open_with(len(unpaged), "note has", "notes have")
        step = f"{many} no page yet, though the source has pages: look it up while you know where it is."
    return asked.page(
        "notes_page.html",
        status=status,
        title="Notes",
        step=step,
        lists=[("", order_notes(paged, known)), ("Without a page", order_notes(unpaged, known))],
        problems=problems,
        copies=COPIES,
        only=_tell_only(served, Note("", "", **wanted)),
        sources=known.names,
        kinds=KINDS,
        served=served,
        texts=known.paper.texts,
        name=name_note,
        held={note.id: tell_held(known, note) for note in notes},
        fault=fault,
        note=note or Note("", source=asked.query("source"), **wanted),
    )


def _tell_only(served: Served, wanted: Note) -> str:
    """Which notes alone are shown, as the end of a sentence; nothing where all are."""
    told = served.tell(wanted)
    return told[:1].lower() + told[1:]


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
    known = asked.paper.opened.look()
    return asked.page(
        "note_page.html",
        status=status,
        title="A note",
        step="Correct it, or take it out; what it was stays among the earlier states.",
        sources=known.names,
        kinds=KINDS,
        served=list_served(known),
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
        question=form.text("question", note.question),
        point=form.text("point", note.point),
    )


def hand_out_bibliography(asked: Asked) -> Response:
    """The annotated bibliography in one form; a PDF can be looked at in the page."""
    kind = asked.name("kind")
    if kind not in COPIES:
        raise HTTPException(404)
    return send_copy(set_annotated(asked.paper.opened, kind), kind, look=asked.query("look") == "yes")


ROUTES = (
    get("/paper/{slug}/notes/bibliography/{kind}", hand_out_bibliography),
    get("/paper/{slug}/notes", show),
    post("/paper/{slug}/notes", add),
    get("/paper/{slug}/notes/{name}", show_note),
    post("/paper/{slug}/notes/{name}", change),
)
