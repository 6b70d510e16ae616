"""The jottings: whatever comes to mind, on a plain page, and for a time that is not shown running out."""

from __future__ import annotations

import datetime as dt
from typing import Any

from starlette.responses import Response

from fairhand.language.counts import count_of
from fairhand.web.asked import Asked, get, post
from fairhand.web.forms import read_number
from fairhand.web.pages.plain_page import PlainPage

PAGE = PlainPage(
    leaf="jottings",
    file="jottings.md",
    title="Jottings",
    empty="Write down whatever comes to mind about the subject, for ten minutes, without stopping to put it right.",
    step="Write down what else comes to mind; nothing here is read by anybody, or marked.",
    template="jottings_page.html",
)
MINUTES = 10
"""How long is proposed. **Source**: Elbow 1973, *Writing without Teachers* (from memory)."""
MOST_MINUTES = 600


def show(asked: Asked) -> Response:
    """The jottings; of the time only what was asked, and that it is over."""
    until = _read_until(asked)
    time = _tell_time(asked, until, is_asked=bool(asked.query("told")))
    return PAGE.show(asked, minutes=MINUTES, until=until.isoformat() if until else "", **time)


def show_time(asked: Asked) -> Response:
    """How long there is yet, or that the time is over, as a piece of the page."""
    return asked.piece("jottings_time.html", **_tell_time(asked, _read_until(asked), is_asked=True))


def save(asked: Asked) -> Response:
    """The jottings kept; where a time was begun or asked about, the page says so."""
    do, until = asked.form.text("do"), asked.form.text("until")
    if do == "begin":
        minutes = read_number(asked.form.text("minutes"), MINUTES)
        end = asked.papers.now() + dt.timedelta(minutes=min(max(minutes, 1), MOST_MINUTES))
        return PAGE.save(asked, until=end.isoformat(timespec="seconds"))
    told = {"told": "yes"} if do == "time" else {}
    return PAGE.save(asked, **({"until": until} if until else {}), **told)


def _read_until(asked: Asked) -> dt.datetime | None:
    """The hour until which the writer means to write; None where none was set."""
    try:
        until = dt.datetime.fromisoformat(asked.query("until"))
    except ValueError:
        return None
    return until if until.tzinfo else None


def _tell_time(asked: Asked, until: dt.datetime | None, *, is_asked: bool) -> dict[str, Any]:
    """The time in words, nothing while it runs and nobody asks; where it is asked about, and when it will be over."""
    if until is None:
        return {"told": "", "again": ""}
    left = (until - asked.papers.now()).total_seconds()
    asks = asked.to("jottings", "time", until=until.isoformat())
    told = tell_left(left) if is_asked or left <= 0 else ""
    return {"told": told, "asks": asks, "again": asks if left > 0 else "", "wait": max(0, round(left * 1000))}


def tell_left(seconds: float) -> str:
    """How long there is yet, in words.

    >>> tell_left(250), tell_left(20), tell_left(-1)
    ('4 minutes yet.', 'Less than a minute yet.', 'The time is over. Write on, or stop here.')
    """
    if seconds <= 0:
        return "The time is over. Write on, or stop here."
    minutes = round(seconds / 60)
    return f"{count_of(minutes, 'minute')} yet." if minutes else "Less than a minute yet."


ROUTES = (
    get("/paper/{slug}/jottings", show),
    post("/paper/{slug}/jottings", save),
    get("/paper/{slug}/jottings/time", show_time),
)
