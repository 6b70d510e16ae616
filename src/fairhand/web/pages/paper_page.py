"""A paper's own address leads to its first page that has something to do."""

from __future__ import annotations

from starlette.responses import Response

from fairhand.session.kept import kept_verdict
from fairhand.web.asked import Asked, get
from fairhand.web.parts import shown_parts


def show(asked: Asked) -> Response:
    """The way to the page where the next step is done; to the first one in the order of the work, where it has none."""
    working = asked.request.app.state.working
    told = kept_verdict(asked.paper.folder, at=asked.papers.at)
    leaf = told["step"]["leaf"] if told else asked.paper.opened.verdict().step.leaf
    return asked.go(asked.to(leaf if leaf in working else shown_parts(working)[0].leaves[0].name))


ROUTES = (get("/paper/{slug}", show),)
