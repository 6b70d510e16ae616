"""The sources: the list as it will be set."""

from __future__ import annotations

from collections.abc import Sequence

from starlette.responses import Response

from fairhand.desk.inbox import list_inbox
from fairhand.language.counts import open_with
from fairhand.session.sources.entries import LIST
from fairhand.session.sources.listing import Listed, list_sources
from fairhand.web.asked import Asked, get
from fairhand.web.pages.source_text_page import tell_text


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
        waiting=len(list_inbox(asked.paper.folder)),
        problems=dict.fromkeys((*faults, *opened.text_problems)),
    )


def _step(sources: Sequence[Listed]) -> str:
    if not sources:
        return "Add the first source: what you have read, or mean to read next."
    bare = sum(1 for one in sources if one.text is None)
    if bare:
        many = open_with(bare, "source has", "sources have")
        return f"{many} no text at hand yet: give its file, and quotations from it can be looked up."
    return "Read for your points, and note each with its page while it lies before you."


ROUTES = (get("/paper/{slug}/sources", show),)
