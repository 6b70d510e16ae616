"""A paper's own address leads to its first page that has something to do."""

from __future__ import annotations

from starlette.responses import Response

from fairhand.web.asked import Asked, get
from fairhand.web.parts import shown_parts


def show(asked: Asked) -> Response:
    """The way to the first page that there is, in the order of the work."""
    parts = shown_parts(asked.request.app.state.working)
    return asked.go(asked.to(parts[0].leaves[0].name) if parts else "/")


ROUTES = (get("/paper/{slug}", show),)
