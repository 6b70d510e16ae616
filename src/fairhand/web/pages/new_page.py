"""A paper begun from its assignment sheet; where the sheet asks for several, the writer says which."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import PurePath
from typing import Any

from starlette.responses import Response

from fairhand.errors import FairhandError
from fairhand.session.beginning import assignments_on, begin_desk, begin_paper
from fairhand.session.demo import PAPER, lay_out_demo
from fairhand.session.schedule.overview import list_courses
from fairhand.web.asked import Asked, address, get, post
from fairhand.web.error_pages import page_of
from fairhand.web.forms import Form, Upload, read_day
from fairhand.web.waiting import Beginning, Waiting, laid_down

PASTED = "brief.txt"
"""The name of a sheet that was pasted as text."""


def show(asked: Asked) -> Response:
    """The form of a new paper."""
    return _form(asked)


def send(asked: Asked) -> Response:
    """A paper begun; or, where the sheet asks for several, the question which."""
    try:
        begun = _read(asked.form)
        with laid_down(begun.sheets) as paths:
            several = assignments_on(paths, begun.given)
        if not asked.papers.is_desk:
            begin_desk(asked.papers.desk, name=asked.form.text("name"))
        if len(several) > 1:
            kept = Beginning(begun.title, begun.sheets, begun.course, begun.given, several)
            return asked.go(address("new", _waiting(asked).keep(kept)))
        return asked.go(address("paper", _begin(asked, begun, begun.title), "brief"))
    except FairhandError as error:
        return _form(asked, fault=str(error), status=page_of(error)[0])


def ask_which(asked: Asked) -> Response:
    """The papers that the sheet asks for."""
    begun = _waiting(asked).find(asked.name("word"))
    if begun is None:
        return asked.go("/new")
    return asked.page("which_papers.html", title="Which of its papers?", begun=begun)


def choose(asked: Asked) -> Response:
    """The papers that were ticked, begun."""
    begun = _waiting(asked).find(asked.name("word"))
    if begun is None:
        return asked.go("/new")
    chosen = [name for name in begun.assignments if name in asked.form.texts("assignment")]
    if not chosen:
        return asked.go(asked.request.url.path)
    for name in chosen:
        slug = _begin(asked, begun, begun.title if len(chosen) == 1 else f"{begun.title}: {name}", name)
    return asked.go(address("paper", slug, "brief") if len(chosen) == 1 else "/")


def show_demo(asked: Asked) -> Response:
    """The demo's paper, laid out on the desk."""
    lay_out_demo(asked.papers.desk)
    return asked.go(address("paper", PAPER))


def about_new_paper(asked: Asked) -> dict[str, Any]:
    """What the form of a new paper is made of: what was written in it, the courses, and where the paper will stand."""
    return {
        "written": {name: asked.form.text(name) for name in ("title", "course", "given", "pasted", "name")},
        "courses": list_courses(asked.papers.desk),
        "is_desk": asked.papers.is_desk,
        "folder": asked.papers.desk,
    }


def _form(asked: Asked, *, fault: str = "", status: int = 200) -> Response:
    return asked.page(
        "new_page.html",
        status=status,
        title="Begin a paper",
        step="Choose the assignment sheet, or drop it on the line below: it says what there is to do.",
        fault=fault,
        **about_new_paper(asked),
    )


def _read(form: Form) -> Beginning:
    """What the form says; without a title, the sheet's name stands for one."""
    sheets = form.uploads("sheet")
    if form.text("pasted"):
        sheets = (*sheets, Upload(PASTED, form.matter("pasted").encode()))
    title = " ".join(form.text("title").split())
    if not title:
        title = _title_of(sheets)
    return Beginning(title, sheets, form.text("course"), read_day(form.text("given")))


def _title_of(sheets: Sequence[Upload]) -> str:
    named = [PurePath(sheet.name).stem for sheet in sheets if sheet.name != PASTED]
    if not named:
        message = "The paper has no title yet: write one; it can be changed at any time."
        raise FairhandError(message)
    return named[0].replace("_", " ").replace("-", " ").strip() or "Paper"


def _begin(asked: Asked, begun: Beginning, title: str, assignment: str = "") -> str:
    """The slug of the paper that now stands on the desk."""
    with laid_down(begun.sheets) as paths:
        return begin_paper(
            asked.papers.desk, title, paths, course=begun.course, given=begun.given, assignment=assignment
        ).folder.name


def _waiting(asked: Asked) -> Waiting:
    found: Waiting = asked.request.app.state.waiting
    return found


ROUTES = (
    get("/new", show),
    post("/new", send),
    post("/new/demo", show_demo),
    get("/new/{word}", ask_which),
    post("/new/{word}", choose),
)
