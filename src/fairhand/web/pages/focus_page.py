"""The focus in one sentence, what there is to ask of it, and the questions to read for."""

from __future__ import annotations

from collections.abc import Sequence

from starlette.exceptions import HTTPException
from starlette.responses import Response

from fairhand.errors import DraftChangedOnDisk, FairhandError
from fairhand.language.counts import open_with
from fairhand.model.focus import Focus, Question
from fairhand.model.note import Note
from fairhand.planning.focus_file import WHERE
from fairhand.session.editing import state_of
from fairhand.session.research.focus import (
    ask_of_focus,
    keep_focus,
    keep_question,
    look_at_focus,
    remove_question,
    state_of_focus,
    thesis_of_points,
)
from fairhand.session.research.notes_for import notes_for
from fairhand.session.research.noting import list_notes
from fairhand.web.asked import Asked, get, post
from fairhand.web.error_pages import page_of

SHOWN = 90
"""Letters of a note that are shown to know it by."""


def show(
    asked: Asked, *, fault: str = "", status: int = 200, typed: Focus | None = None, question: str = ""
) -> Response:
    """The sentence, the queries, and every question with its state."""
    folder = asked.paper.folder
    focus, problems = look_at_focus(folder)
    known = asked.paper.opened.look()
    notes = {note.id: note for note in list_notes(folder)[0]}
    other = thesis_of_points(folder) if focus.is_thesis else ""
    return asked.page(
        "focus_page.html",
        status=status,
        title="Focus",
        step=_step(focus),
        problems=problems,
        fault=fault,
        focus=typed or focus,
        now=focus if typed else None,
        was=state_of_focus(focus),
        queries=ask_of_focus(focus, known.paper.requirements),
        other=other if other != focus.focus else "",
        notes=notes,
        taken={one.id: notes_for(tuple(notes.values()), question=one.id) for one in focus.questions},
        named=lambda note: _name_note(note, known.names.get(note.source, note.source)),
        points={point.id: point for point in known.paper.points.points},
        question=question,
    )


def _step(focus: Focus) -> str:
    if not focus.focus:
        return "Write in one sentence what the paper is about; then the questions that you must read for."
    waiting = sum(one.state == "open" for one in focus.questions)
    if not focus.questions:
        return "Write down what you must know before you can say it: each question leads your reading."
    if waiting:
        many = open_with(waiting, "question is open", "questions are open")
        return f"{many}: read for {'it' if waiting == 1 else 'them'}, and mark what answers."
    return "Each question is answered: see which points follow, and whether the sentence still holds."


def _name_note(note: Note, source: str) -> str:
    words = " ".join((note.remark or f"“{note.quotation}”").split())
    words = words if len(words) <= SHOWN else f"{words[:SHOWN].rsplit(' ', 1)[0]} …"
    return f"{source}{f', page {note.page}' if note.page else ''}: {words}"


def send(asked: Asked) -> Response:
    """The focus kept, or a new question; where either cannot be, the page again with what was typed."""
    form = asked.form
    if form.has("question"):
        text = " ".join(form.text("question").split())
        try:
            keep_question(asked.paper.folder, Question("", text))
        except FairhandError as error:
            return show(asked, fault=str(error), status=page_of(error)[0], question=text)
        return asked.go(asked.to("focus", at="questions"))
    typed = Focus(
        " ".join(form.text("focus").split()),
        is_thesis=form.has("thesis"),
        audience=" ".join(form.text("audience").split()),
    )
    try:
        keep_focus(asked.paper.folder, typed, form.text("was"))
    except DraftChangedOnDisk:
        fault = f"Another program changed {WHERE} while you were writing; nothing was overwritten."
        return show(asked, fault=fault, status=409, typed=typed)
    except FairhandError as error:
        return show(asked, fault=str(error), status=page_of(error)[0], typed=typed)
    return asked.go(asked.to("focus"))


def show_question(
    asked: Asked, *, fault: str = "", status: int = 200, typed: Question | None = None, now: Question | None = None
) -> Response:
    """One question: its words, its state, which notes answer it and which points follow."""
    question = now or _find(asked)
    known = asked.paper.opened.look()
    return asked.page(
        "question_page.html",
        status=status,
        title="A question",
        step="Tick the notes that answer it; then the points that follow from the answer.",
        fault=fault,
        question=typed or question,
        now=now,
        was=state_of(question),
        here=asked.to("focus", question.id),
        notes=[
            (note.id, _name_note(note, known.names.get(note.source, note.source)), note.question == question.id)
            for note in sorted(list_notes(asked.paper.folder)[0], key=lambda note: note.question != question.id)
        ],
        points=known.paper.points.points,
    )


def change(asked: Asked) -> Response:
    """The question changed or taken out; where another program changed it meanwhile, both are shown."""
    form, folder = asked.form, asked.paper.folder
    question = _find(asked)
    typed = Question(
        question.id,
        " ".join(form.text("text").split()),
        "answered" if form.text("state") == "answered" else "open",
        form.texts("note"),
        form.texts("point"),
    )
    try:
        if form.text("do") == "remove":
            remove_question(folder, question.id, form.text("was"))
        else:
            keep_question(folder, typed, form.text("was"))
    except DraftChangedOnDisk:
        fault = "Another program changed this question while you were writing; nothing was overwritten."
        return show_question(asked, fault=fault, status=409, typed=typed, now=question)
    except FairhandError as error:
        return show_question(asked, fault=str(error), status=page_of(error)[0], typed=typed)
    return asked.go(asked.to("focus", at="questions"))


def _find(asked: Asked) -> Question:
    questions: Sequence[Question] = look_at_focus(asked.paper.folder)[0].questions
    found = next((one for one in questions if one.id == asked.name("id")), None)
    if found is None:
        raise HTTPException(404)
    return found


ROUTES = (
    get("/paper/{slug}/focus", show),
    post("/paper/{slug}/focus", send),
    get("/paper/{slug}/focus/{id}", show_question),
    post("/paper/{slug}/focus/{id}", change),
)
