"""The desk: the work in hand on one line of time, and what to do now."""

from __future__ import annotations

from starlette.responses import Response

from fairhand.session.overview import work_in_hand
from fairhand.web.asked import Asked, get
from fairhand.web.line_of_time import draw_line


def show(asked: Asked) -> Response:
    """The papers in the order of the hours when they are due."""
    rows = work_in_hand(asked.papers.desk)
    return asked.page("desk_page.html", title="Work in hand", rows=rows, line=draw_line(rows, asked.papers.now()))


ROUTES = (get("/", show),)
