"""The rough draft: a quiet page for bad first writing; nothing on it is marked, and counted only when that is asked."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from starlette.responses import Response

from fairhand.errors import DraftChangedOnDisk
from fairhand.language.counts import count_of, say_minutes
from fairhand.planning.points import WHERE as POINTS
from fairhand.planning.points import read_points
from fairhand.session.editing import DRAFT, read_text
from fairhand.session.rough import (
    ROUGH,
    WARM_UP,
    add_at_end,
    begin_draft,
    count_rough,
    lay_out_points,
    log_sitting,
    save_warm_up,
)
from fairhand.web.asked import Asked, address, get, post
from fairhand.web.plain_page import PlainPage

EMPTY = "Write badly, and keep writing: this page is handed in to nobody, and nothing on it is marked."
PAGE = PlainPage(
    leaf="rough",
    file=ROUGH,
    title="Rough draft",
    empty=EMPTY,
    step="Write on without looking back; what is wrong is put right in the draft, and later.",
    template="rough_page.html",
)
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


@dataclass(frozen=True, slots=True)
class Sitting:
    """A sitting that was begun, as the page's address keeps it."""

    began: dt.datetime
    aim: int
    unit: str
    """``words`` or ``minutes``."""
    had: int
    """Words at its beginning."""

    @property
    def query(self) -> dict[str, str]:
        """What the address says of it."""
        began = self.began.isoformat(timespec="seconds")
        return {"began": began, "aim": str(self.aim), "unit": self.unit, "had": str(self.had)}


def show(asked: Asked, *, fault: str = "", status: int = 200) -> Response:
    """The rough draft; of the sitting only what was asked, and that its time is over."""
    sitting = _read_sitting(asked.query)
    folder = asked.paper.folder
    time = _tell_sitting(asked, sitting, is_asked=bool(asked.query("told")))
    return PAGE.show(
        asked,
        status=status,
        sitting=sitting.query if sitting else {},
        minutes=MINUTES,
        fault=fault,
        ended=asked.query("ended"),
        has_draft=bool(read_text(folder, DRAFT).text.strip()),
        has_points=bool(read_points(read_text(folder, POINTS).text)[0].points),
        ask_over=asked.query("over") == "ask",
        **time,
    )


def show_time(asked: Asked) -> Response:
    """How far the sitting is, as a piece of the page."""
    return asked.piece("sitting_time.html", **_tell_sitting(asked, _read_sitting(asked.query), is_asked=True))


def save(asked: Asked) -> Response:
    """The rough draft kept; then what its buttons say."""
    if asked.is_small:
        return PAGE.save(asked)
    form, folder = asked.form, asked.paper.folder
    do, sitting = form.text("do"), _read_sitting(form.text)
    kept = PAGE.save(asked, **(sitting.query if sitting else {}))
    if kept.status_code != 303:
        return kept
    now = asked.papers.now()
    if do == "begin":
        aim, unit = form.text("aim"), form.text("unit")
        number = int(aim) if aim.isascii() and aim.isdigit() and len(aim) < 7 else MINUTES
        begun = Sitting(now, min(max(number, 1), MOST), "words" if unit == "words" else "minutes", _words(asked))
        return asked.go(PAGE.at(asked, **begun.query))
    if do == "far" and sitting:
        return asked.go(PAGE.at(asked, at="time", told="yes", **sitting.query))
    if do == "end" and sitting:
        rule = asked.paper.opened.look().length_rule
        least = rule.values.get("min") if rule and rule.values.get("unit") == "words" else 0
        sat = log_sitting(folder, sitting.began, sitting.had, least if isinstance(least, int) else 0, now)
        return asked.go(PAGE.at(asked, ended=f"{say_minutes(sat.minutes)}, {count_of(sat.words, 'word')} more."))
    if do == "points":
        add_at_end(folder, lay_out_points(read_points(read_text(folder, POINTS).text)[0]))
    if do in {"draft", "over"}:
        try:
            begin_draft(folder, over=do == "over")
        except DraftChangedOnDisk:
            return asked.go(PAGE.at(asked, at="begin", over="ask"))
        return asked.go(asked.to("draft"))
    return kept


def _words(asked: Asked) -> int:
    return count_rough(read_text(asked.paper.folder, ROUGH).text)


def _read_sitting(said: Any) -> Sitting | None:
    """The sitting that an address or a form speaks of; None where it speaks of none."""
    aim, had = said("aim"), said("had")
    try:
        began = dt.datetime.fromisoformat(said("began"))
        sitting = Sitting(began, int(aim), "words" if said("unit") == "words" else "minutes", int(had))
    except ValueError:
        return None
    return sitting if began.tzinfo and 0 < sitting.aim <= MOST else None


def _tell_sitting(asked: Asked, sitting: Sitting | None, *, is_asked: bool) -> dict[str, Any]:
    """What there is to say of the sitting: nothing while nobody asks, and once that its minutes are over."""
    if sitting is None:
        return {"told": "", "again": ""}
    gone = (asked.papers.now() - sitting.began).total_seconds()
    left = sitting.aim * 60 - gone if sitting.unit == "minutes" else 0.0
    told = ""
    if is_asked:
        words = _words(asked) - sitting.had
        aim = f"{sitting.aim:,} {sitting.unit}"
        told = f"{say_minutes(round(gone / 60))} so far, {count_of(words, 'word')} more; the aim was {aim}."
    elif sitting.unit == "minutes" and left <= 0:
        told = "The time is over. Write on, or end the sitting."
    asks = asked.to("rough", "time", **sitting.query)
    return {"told": told, "asks": asks, "again": asks if left > 0 else "", "wait": max(0, round(left * 1000))}


ROUTES = (
    get("/paper/{slug}/rough", show),
    post("/paper/{slug}/rough", save),
    get("/paper/{slug}/rough/time", show_time),
    get("/warm-up", WARM.show),
    post("/warm-up", WARM.save),
)
