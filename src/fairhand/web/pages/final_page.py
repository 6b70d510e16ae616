"""The final reading: the fair copy alone on the page, and after it one question."""

from __future__ import annotations

import datetime as dt

from starlette.responses import Response

from fairhand.errors import FairhandError, MatterLeft, NothingToPrint
from fairhand.proof.marked_lines import cut_lines
from fairhand.session.correction.final import answer_final, read_copy, tell_final
from fairhand.session.editing import DRAFT, read_text
from fairhand.web.asked import Asked, get, post
from fairhand.web.error_pages import page_of


def show(asked: Asked) -> Response:
    """What the last one said, and the way to the next; where it cannot be read yet, why not."""
    try:
        copy = read_copy(asked.paper.opened)
    except (MatterLeft, NothingToPrint) as left:
        step = "There is no draft yet: write it first." if isinstance(left, NothingToPrint) else _say_left(left)
        return asked.page(
            "final_page.html", title="Final reading", step=step, can=False, left=isinstance(left, MatterLeft)
        )
    return asked.page("final_page.html", title="Final reading", step=tell_final(asked.paper.folder, copy), can=True)


def _say_left(left: MatterLeft) -> str:
    """What is left and where, as the final reading is concerned with it."""
    return f"{str(left).partition(';')[0]}; settle them first, and read then."


def read(asked: Asked, *, fault: FairhandError | None = None) -> Response:
    """The fair copy and nothing else; the question stands after its last line.

    Args:
        asked: The request.
        fault: Why the answer could not be kept; what was typed is then still there.
    """
    form = asked.form
    return asked.page(
        "final_copy.html",
        status=page_of(fault)[0] if fault else 200,
        title="Final reading",
        pages=cut_lines(read_copy(asked.paper.opened), {}),
        begun=form.text("begun") or asked.papers.now().isoformat(timespec="seconds"),
        draft=read_text(asked.paper.folder, DRAFT).seen or "",
        why=form.matter("why"),
        fault=f"{fault}." if fault else "",
    )


def answer(asked: Asked) -> Response:
    """Fit to hand in, or not and why; it is kept."""
    form = asked.form
    try:
        answer_final(
            asked.paper.folder,
            asked.papers.now(),
            fit=form.text("fit") == "yes",
            why=form.text("why"),
            begun=_moment(form.text("begun")),
            draft=form.text("draft"),
        )
    except FairhandError as fault:
        return read(asked, fault=fault)
    return asked.go(asked.to("final"))


def _moment(said: str) -> str:
    """When it was begun, as it was sent; nothing where that is no moment."""
    try:
        return dt.datetime.fromisoformat(said).isoformat(timespec="seconds") if said else ""
    except ValueError:
        return ""


ROUTES = (
    get("/paper/{slug}/final", show),
    get("/paper/{slug}/final/reading", read),
    post("/paper/{slug}/final/reading", answer),
)
