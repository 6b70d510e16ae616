"""The rough draft: a quiet page for bad first writing; nothing on it is marked, and counted only when that is asked."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

from starlette.responses import Response

from fairhand.errors import DraftChangedOnDisk
from fairhand.planning.points import WHERE as POINTS
from fairhand.planning.points import read_points
from fairhand.session.drafting.rough import ROUGH, WARM_UP, add_at_end, begin_draft, lay_out_points, save_warm_up
from fairhand.session.drafting.sitting import begin_sitting, end_sitting, find_sitting, tell_sitting
from fairhand.session.editing import DRAFT, read_text
from fairhand.web.asked import Asked, address, get, post
from fairhand.web.forms import read_number
from fairhand.web.pages.plain_page import PlainPage

EMPTY = "Write badly, and keep writing: this page is handed in to nobody, and nothing on it is marked."
PAGE = PlainPage(
    leaf="rough",
    file=ROUGH,
    title="Rough draft",
    empty=EMPTY,
    step="Write on without looking back; what is wrong is put right in the draft, and later.",
    template="rough_page.html",
)
_ENDED = re.compile(r"(?:[\d,]+ hours? ?)?(?:[\d,]+ minutes?)?, -?[\d,]+ words? more\.")
"""What is said of a sitting that ended; an address may say anything."""
MINUTES = 25
MOST = 100_000


class WarmUpPage(PlainPage):
    """The same for a page of the desk."""

    def folder(self, asked: Asked) -> Path:
        """The desk's."""
        return asked.papers.desk

    def at(self, asked: Asked, *, at: str = "", **query: str) -> str:  # noqa: ARG002 - as the page that it is one of
        """The address, which names no paper."""
        return address("warm-up", at=at, **query)

    def save_text(self, asked: Asked, text: str, seen: str | None) -> str:
        """Its states are kept with the desk."""
        return save_warm_up(asked.papers.desk, text, seen)


WARM = WarmUpPage(
    leaf="warm-up",
    file=WARM_UP,
    title="Warm-up",
    empty="Write anything, to get the hand moving: it belongs to no paper, and nobody reads it.",
    step="Write anything; it belongs to no paper, and nobody reads it.",
    template="warm_up_page.html",
)


def show(asked: Asked) -> Response:
    """The rough draft; of the sitting only what was asked, and that its time is over."""
    folder = asked.paper.folder
    return PAGE.show(
        asked,
        minutes=MINUTES,
        ended=asked.query("ended") if _ENDED.fullmatch(asked.query("ended")) else "",
        has_points=bool(read_points(read_text(folder, POINTS).text)[0].points),
        ask_over=asked.query("over") == "ask" and bool(read_text(folder, DRAFT).text.strip()),
        **_tell(asked, is_asked=bool(asked.query("told"))),
    )


def show_time(asked: Asked) -> Response:
    """How far the sitting is, as a piece of the page."""
    return asked.piece("sitting_time.html", **_tell(asked, is_asked=not asked.query("over")))


def save(asked: Asked) -> Response:
    """The rough draft kept; then what its buttons say."""
    kept = PAGE.save(asked)
    if asked.is_small or kept.status_code != 303:
        return kept
    form, folder, now = asked.form, asked.paper.folder, asked.papers.now()
    do, sitting = form.text("do"), find_sitting(folder, now)
    if do == "begin":
        number = read_number(form.text("aim"), MINUTES)
        begin_sitting(folder, min(max(number, 1), MOST), "words" if form.text("unit") == "words" else "minutes", now)
    if do == "far" and sitting:
        return asked.go(PAGE.at(asked, at="time", told="yes"))
    if do == "end" and sitting:
        rule = asked.paper.opened.look().length_rule
        least = rule.values.get("min") if rule and rule.values.get("unit") == "words" else 0
        ended = end_sitting(folder, sitting, least if isinstance(least, int) else 0, now)
        return asked.go(PAGE.at(asked, at="time", ended=ended))
    if do == "points":
        add_at_end(folder, lay_out_points(read_points(read_text(folder, POINTS).text)[0]))
    if do in {"draft", "over"}:
        try:
            begin_draft(folder, over=do == "over")
        except DraftChangedOnDisk:
            return asked.go(PAGE.at(asked, at="begin", over="ask"))
        return asked.go(asked.to("draft"))
    return kept


def _tell(asked: Asked, *, is_asked: bool) -> dict[str, Any]:
    """What there is to say of the sitting, and when the page asks by itself: once, when its minutes are over."""
    folder, now = asked.paper.folder, asked.papers.now()
    sitting = find_sitting(folder, now)
    if sitting is None:
        return {"sitting": None, "told": "", "again": ""}
    left = sitting.seconds_left(now)
    return {
        "sitting": sitting,
        "told": tell_sitting(folder, sitting, now, is_asked=is_asked),
        "asks": asked.to("rough", "time"),
        "again": asked.to("rough", "time", over="yes") if left > 0 else "",
        "wait": max(0, round(left * 1000)),
    }


ROUTES = (
    get("/paper/{slug}/rough", show),
    post("/paper/{slug}/rough", save),
    get("/paper/{slug}/rough/time", show_time),
    get("/warm-up", WARM.show),
    post("/warm-up", WARM.save),
)
