"""The paper's questions, points and notes on a sheet of their own, each put into the text, cited, in one step.

With scripts it opens over the page that is written on; without, it is a page, and what is chosen is put at the end.
"""

from __future__ import annotations

from typing import Any

from starlette.responses import Response

from fairhand.errors import FairhandError
from fairhand.session.drafting.at_hand import find_at_hand, list_at_hand
from fairhand.session.drafting.rough import ROUGH, add_at_end
from fairhand.session.editing import DRAFT
from fairhand.web.asked import Asked, get, post
from fairhand.web.error_pages import page_of

TEXTS = {"rough": ROUGH, "draft": DRAFT}
"""The pages that the sheet opens over, and the file of each."""


def show(asked: Asked, *, fault: str = "", status: int = 200) -> Response:
    """What is at hand, as a page or as what the open sheet shows."""
    to = asked.query("to") or asked.form.text("to")
    to = to if to in TEXTS else "rough"
    parts = list_at_hand(asked.paper.opened.look(), asked.paper.folder)
    values: dict[str, Any] = {"at_hand": parts, "to": to, "here": asked.to("sheet")}
    if asked.is_small:
        return asked.piece("sheet_items.html", **values)
    step = "Choose what is to be put at the end of the text."
    if not parts:
        step = "There are no questions, points or notes yet."
    return asked.page(
        "sheet_page.html",
        status=status,
        title="Questions, points and notes",
        step=step,
        back=asked.to(to),
        fault=fault,
        **values,
    )


def put(asked: Asked) -> Response:
    """What was chosen stands at the end of the text."""
    to = asked.form.text("to") if asked.form.text("to") in TEXTS else "rough"
    try:
        one = find_at_hand(asked.paper.opened.look(), asked.paper.folder, asked.form.text("put"))
        add_at_end(asked.paper.folder, one.puts, TEXTS[to])
    except FairhandError as error:
        return show(asked, fault=f"{error}.", status=page_of(error)[0])
    return asked.go(asked.to(to))


ROUTES = (get("/paper/{slug}/sheet", show), post("/paper/{slug}/sheet", put))
