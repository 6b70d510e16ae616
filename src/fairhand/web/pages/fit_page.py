"""Length: the draft cast off, the ways to the length that is asked, and what a move would break."""

from __future__ import annotations

from starlette.responses import Response

from fairhand.errors import FairhandError
from fairhand.session.drafting.cast_off import cast_off, tell_section
from fairhand.session.drafting.fitting import carry_out, look_at_fit
from fairhand.session.drafting.moving import Move, carry_move, list_movable, look_at_move
from fairhand.session.editing import state_of
from fairhand.web.asked import Asked, get, post
from fairhand.web.error_pages import page_of
from fairhand.web.forms import read_number

END = 10**6
"""The line before which something stands that goes to the end."""


def show(asked: Asked, *, fault: str = "", status: int = 200) -> Response:
    """How long the draft is, and what could be cut or brought back; a move that is asked about, with what it breaks."""
    opened, folder = asked.paper.opened, asked.paper.folder
    known = opened.look()
    fit = look_at_fit(known, folder)
    what, before = (read_number(asked.query(name), 0) for name in ("what", "before"))
    move: Move | None = None
    if what and before and not fault:
        try:
            move = look_at_move(known, what, before)
        except FairhandError as error:
            fault, status = f"{error}.", page_of(error)[0]
    return asked.page(
        "fit_page.html",
        status=status,
        title="Length",
        step=fit.says,
        fit=fit,
        state_of_draft=state_of(known.manuscript.text),
        counts=cast_off(opened) if known.paper.draft.strip() else None,
        tell_section=tell_section,
        movable=list_movable(known.manuscript),
        end=END,
        move=move,
        chosen=(what, before),
        fault=fault,
    )


def send(asked: Asked) -> Response:
    """A way carried out, or a move made."""
    form, folder, known = asked.form, asked.paper.folder, asked.paper.opened.look()
    try:
        if form.text("do") == "move":
            move = look_at_move(known, *(read_number(form.text(name), 0) for name in ("what", "before")))
            if form.text("state") != move.state:
                return show(asked, fault="The draft was changed meanwhile: look at the move again.", status=409)
            carry_move(folder, move)
            return asked.go(asked.to("fit", done="moved"))
        carry_out(folder, known, read_number(form.text("way"), 0) - 1, form.text("state"), asked.papers.now())
    except FairhandError as error:
        return show(asked, fault=f"{error}.", status=page_of(error)[0])
    return asked.go(asked.to("offcuts"))


ROUTES = (get("/paper/{slug}/fit", show), post("/paper/{slug}/fit", send))
