"""The desk: the work in hand on one line of time, and what to do now."""

from __future__ import annotations

from typing import Any

from starlette.responses import Response

from fairhand.session.kept import kept_verdict, told_verdict
from fairhand.session.overview import InHand, due_first, work_in_hand
from fairhand.web.asked import Asked, get
from fairhand.web.line_of_time import draw_line
from fairhand.web.new_page import about_new_paper
from fairhand.web.parts import LEAVES


def show(asked: Asked) -> Response:
    """The papers in the order of the hours when they are due; a verdict that is not known yet comes afterwards."""
    rows = work_in_hand(asked.papers.desk, asked.papers.at)
    first = due_first(rows, asked.papers.now())
    told = kept_verdict(first.folder, at=asked.papers.at) if first else None
    return asked.page(
        "desk_page.html",
        title="Work in hand",
        rows=rows,
        **({} if rows else about_new_paper(asked)),
        line=draw_line(rows, asked.papers.now()),
        changes="/changes",
        state=asked.papers.state(),
        **_now(asked, first, told),
    )


def show_now(asked: Asked) -> Response:
    """What to do now, worked out: as a page of its own, or as the sentence that the desk's page waits for."""
    first = due_first(work_in_hand(asked.papers.desk, asked.papers.at), asked.papers.now())
    if first is None:
        return asked.go("/")
    with asked.papers.find(first.folder.name).lock:
        told = told_verdict(first.folder, at=asked.papers.at)
    template = "now.html" if asked.is_small else "now_page.html"
    return asked.page(template, title="What to do now", **_now(asked, first, told))


def _now(asked: Asked, first: InHand | None, told: dict[str, Any] | None) -> dict[str, Any]:
    """What the sentence is made of; a page that is not there yet is not led to."""
    step = told["step"] if told else None
    leaf = LEAVES.get(step["leaf"]) if step and step["leaf"] in asked.request.app.state.working else None
    return {"first": first, "now": step, "leaf_of_step": leaf}


ROUTES = (get("/", show), get("/now", show_now))
