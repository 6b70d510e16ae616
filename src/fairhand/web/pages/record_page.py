"""The record: how the paper came to be, in words and a picture; printed, and a printed one checked."""

from __future__ import annotations

from itertools import groupby

from markupsafe import Markup
from starlette.exceptions import HTTPException
from starlette.responses import Response

from fairhand.desk.record import list_set_aside
from fairhand.errors import FairhandError
from fairhand.record.days import draw_days, list_days
from fairhand.record.telling import (
    ABOVE,
    KEPT_SHORT,
    SHOWS,
    SHOWS_NOT,
    say_day,
    say_sitting,
    say_states,
    say_when,
    sum_up,
)
from fairhand.session.record.printed_record import Checked, check_printed, compare_with_paper, set_record, tell_record
from fairhand.web.asked import Asked, get, post
from fairhand.web.error_pages import page_of
from fairhand.web.pages.fair_copy_page import KINDS
from fairhand.web.safety import POLICY_OF_FILE, write_policy


def show(
    asked: Asked, *, fault: str = "", status: int = 200, checked: tuple[str, Checked, str] | None = None
) -> Response:
    """The dated list, the latest day first; and what came of a printed record that was checked."""
    document = tell_record(asked.paper.folder, asked.papers.at)
    days = list_days(document.sittings)
    hashes = {link[0]: link[8][:KEPT_SHORT] for link in document.links}
    return asked.page(
        "record_page.html",
        status=status,
        title="The record",
        step=sum_up(document.sittings),
        picture=Markup(draw_days(days)),  # noqa: S704 - numbers and days alone, escaped where it is drawn
        days=days,
        by_day=[
            (day, list(these)) for day, these in groupby(reversed(document.sittings), key=lambda one: one.start.date())
        ],
        say_day=say_day,
        say_when=say_when,
        say_sitting=say_sitting,
        say_states=say_states,
        hashes=hashes,
        document=document,
        above=ABOVE,
        problems=list_set_aside(asked.paper.folder),
        shows=(SHOWS, SHOWS_NOT),
        fault=fault,
        checked=checked,
        here=asked.to("record"),
    )


def hand_out(asked: Asked) -> Response:
    """The record printed, in one form."""
    kind = asked.name("kind")
    if kind not in {"pdf", "html"}:
        raise HTTPException(404)
    headers = {
        "content-disposition": f'attachment; filename="record.{kind}"',
        "content-security-policy": write_policy(POLICY_OF_FILE),
    }
    data = set_record(asked.paper.folder, kind, asked.papers.at)
    return Response(data, media_type=KINDS[kind][1], headers=headers)


def check(asked: Asked) -> Response:
    """A printed record that was sent is looked through, and held against this paper's own."""
    file = next(iter(asked.form.uploads("file")), None)
    if file is None:
        return show(asked, fault="Choose a printed record: a PDF or an HTML file.", status=400)
    try:
        found = check_printed(file.name, file.data)
        return show(asked, checked=(file.name, found, compare_with_paper(found.document, asked.paper.folder)))
    except FairhandError as error:
        return show(asked, fault=f"{error}.", status=page_of(error)[0])


ROUTES = (
    get("/paper/{slug}/record", show),
    post("/paper/{slug}/record", check),
    get("/paper/{slug}/record/{kind}", hand_out),
)
