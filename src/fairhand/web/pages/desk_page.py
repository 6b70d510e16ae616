"""The desk: the work in hand on one line of time, and what to do now."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from starlette.responses import Response

from fairhand.planning.desk_plan import DeskPlan
from fairhand.session.hand_in.returned import work_done
from fairhand.session.schedule.overview import InHand, work_in_hand
from fairhand.session.schedule.plan import plan_desk
from fairhand.web.asked import Asked, get
from fairhand.web.line_of_time import draw_line
from fairhand.web.pages.new_page import about_new_paper
from fairhand.web.pages.plan_page import about_fitting, about_now, known_plan


def show(asked: Asked) -> Response:
    """The papers in the order of the hours when they are due; a plan that is not known yet comes afterwards."""
    rows = work_in_hand(asked.papers.desk, asked.papers.at)
    made = known_plan(asked) if rows else None
    return asked.page(
        "desk_page.html",
        title="Work in hand",
        rows=rows,
        done=work_done(asked.papers.desk),
        **({} if rows else about_new_paper(asked)),
        changes="/changes",
        state=asked.papers.state(),
        **_sentence(asked, rows, made),
    )


def show_now(asked: Asked) -> Response:
    """What to do now, worked out: as a page of its own, or as the sentence that the desk's page waits for."""
    rows = work_in_hand(asked.papers.desk, asked.papers.at)
    if not rows:
        return asked.go("/")
    made = plan_desk(asked.papers.desk, asked.papers.at)
    template = "sentence.html" if asked.is_small else "now_page.html"
    return asked.page(template, title="What to do now", **_sentence(asked, rows, made))


def _sentence(asked: Asked, rows: Sequence[InHand], made: DeskPlan | None) -> dict[str, Any]:
    """What to do now, what does not fit, and the line of time."""
    line = draw_line(rows, asked.papers.now(), made.plan.sittings if made else ())
    return {"line": line} | about_now(made) | about_fitting(made)


ROUTES = (get("/", show), get("/now", show_now))
