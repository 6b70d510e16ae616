"""The page as one Starlette application."""

from __future__ import annotations

import datetime as dt
from pathlib import Path

from starlette.applications import Starlette

from fairhand.web.error_pages import HANDLERS
from fairhand.web.papers import Papers
from fairhand.web.routes import list_routes, working_leaves
from fairhand.web.safety import Guard
from fairhand.web.waiting import Waiting
from fairhand.web.watching import watched


def make_app(desk: Path, secret: str, *, at: dt.datetime | None = None) -> Guard:
    """The application that shows a desk, behind its guard.

    Args:
        desk: The desk's folder.
        secret: The secret of this run; only who has it is answered.
        at: The hour to judge deadlines by; the clock's, where it is None.
    """
    routes = list_routes()
    app = Starlette(routes=routes, exception_handlers=dict(HANDLERS), lifespan=watched)
    app.state.papers = Papers(desk, at=at)
    app.state.waiting = Waiting()
    app.state.jobs = {}
    app.state.working = working_leaves(routes)
    return Guard(app, secret)
