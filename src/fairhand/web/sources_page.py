"""The sources: the list as it will be set, and ways to add to it."""

from __future__ import annotations

from collections.abc import Sequence

from starlette.responses import Response

from fairhand.citing.entry_form import FIELDS, TYPES_ASKED, fields_of
from fairhand.citing.entry_list import Joined
from fairhand.errors import FairhandError
from fairhand.session.listing import Listed, list_sources
from fairhand.session.sources import LIST, add_lists, add_record, add_text
from fairhand.web.asked import Asked, get, post
from fairhand.web.error_pages import page_of
from fairhand.web.source_page import read_fields, read_kind, show_source
from fairhand.web.source_text_page import find_entry, tell_text


def show(asked: Asked) -> Response:
    """The list, each source with its text, whether it is cited, and the points that it carries."""
    opened = asked.paper.opened
    sources = list_sources(opened)
    faults = [one for one in opened.look().paper.problems if LIST in one.where]
    return asked.page(
        "sources_page.html",
        title="Sources",
        step=_step(sources),
        sources=sources,
        told=tell_text,
        problems=dict.fromkeys((*faults, *opened.text_problems)),
    )


def _step(sources: Sequence[Listed]) -> str:
    if not sources:
        return "Add the first source: what you have read, or mean to read next."
    bare = sum(1 for one in sources if one.text is None)
    if bare:
        many = "One source has" if bare == 1 else f"{bare} sources have"
        return f"{many} no text at hand yet: give its file, and quotations from it can be looked up."
    return "Read for your points, and note each with its page while it lies before you."


def show_adding(asked: Asked, *, fault: str = "", status: int = 200, joined: Joined | None = None) -> Response:
    """Two ways to add: a list from elsewhere, or a record by hand and with it the text itself."""
    kind = read_kind(asked, "")
    written = {name: asked.form.text(name) for name in FIELDS}
    return asked.page(
        "source_adding.html",
        status=status,
        title="Add sources",
        step="Copy the record from the work itself; what you do not know yet can wait."
        if kind
        else "Paste or choose a list that a library or database gave you, or choose a type and write the record.",
        fault=fault,
        joined=joined,
        pasted=asked.form.matter("pasted"),
        kind=kind,
        kinds=TYPES_ASKED,
        fields=fields_of(kind, {name: text for name, text in written.items() if text}) if kind else (),
        written=written,
    )


def add(asked: Asked) -> Response:
    """What was sent has joined the list; where nothing could, the page again with what was written."""
    form = asked.form
    if form.text("do") == "type":
        return show_adding(asked)
    try:
        return _add_by_hand(asked) if form.text("type") else _add_lists(asked)
    except FairhandError as error:
        return show_adding(asked, fault=str(error), status=page_of(error)[0])


def _add_by_hand(asked: Asked) -> Response:
    new = add_record(asked.paper.folder, read_kind(asked, "document"), read_fields(asked.form))
    for file in asked.form.uploads("file")[:1]:
        entry = find_entry(asked, new)
        try:
            add_text(asked.paper.folder, entry, file.name, file.data)
        except FairhandError as error:
            return show_source(asked, entry, fault=f"The source is in the list. {error}", status=page_of(error)[0])
    return asked.go(asked.to("sources", at=new))


def _add_lists(asked: Asked) -> Response:
    sent = [(file.data, file.name) for file in asked.form.uploads("list")]
    if asked.form.text("pasted"):
        sent.append((asked.form.matter("pasted").encode(), "what was pasted"))
    if not sent:
        message = "Nothing was sent: paste a list, or choose its file."
        raise FairhandError(message)
    joined = add_lists(asked.paper.folder, sent)
    return show_adding(asked, joined=joined) if joined.there or joined.problems else asked.go(asked.to("sources"))


ROUTES = (
    get("/paper/{slug}/sources", show),
    get("/paper/{slug}/sources/add", show_adding),
    post("/paper/{slug}/sources/add", add),
)
