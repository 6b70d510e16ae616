"""Offcuts: what was cut from the draft, with its place and reason, each brought back in one step."""

from __future__ import annotations

from dataclasses import dataclass
from typing import get_args

from starlette.responses import Response

from fairhand.errors import DraftChangedOnDisk, FairhandError
from fairhand.language.counts import open_with
from fairhand.manuscript.draft import read_manuscript
from fairhand.model.span import Span
from fairhand.proof.passages import list_passages
from fairhand.revision.returning import How
from fairhand.session.drafting.offcuts import bring_back, cut_span, give_reason, list_offcuts, tell_return
from fairhand.session.editing import DRAFT, read_text, state_of
from fairhand.web.asked import Asked, get, post
from fairhand.web.error_pages import page_of
from fairhand.web.forms import read_number
from fairhand.web.pages.draft_page import PAGE as DRAFT_PAGE

BEGINNING = 90
"""Code points of a passage that are shown, to choose it by."""


@dataclass(frozen=True, slots=True)
class Choice:
    """A passage of the draft that may be cut."""

    place: str
    """Where it begins and ends, and a short name of its words."""
    words: str
    """Its first words."""


def show(asked: Asked, *, fault: str = "", status: int = 200) -> Response:
    """What was cut, the last first; below it, the passages of the draft to choose from."""
    kept, problems = list_offcuts(asked.paper.folder)
    text = read_text(asked.paper.folder, DRAFT).text
    step = "Nothing is cut yet. What you cut is kept here with its place and reason, and comes back in one step."
    if kept:
        each = "it comes" if len(kept) == 1 else "each comes"
        step = f"{open_with(len(kept), 'passage is', 'passages are')} kept here: {each} back to where it stood."
    return asked.page(
        "offcuts_page.html",
        status=status,
        title="Offcuts",
        step=step,
        kept=kept,
        tell=tell_return,
        problems=problems,
        choices=[_choice(text, span) for span in list_passages(read_manuscript(text))],
        chosen=asked.query("cut"),
        back=asked.query("back") if asked.query("back") in get_args(How) else "",
        fault=fault,
    )


def _choice(text: str, span: Span) -> Choice:
    words = " ".join(span.of(text).split())
    words = f"The heading “{words.lstrip('# ')}”" if words.startswith("#") else words.lstrip("> ")
    beginning = words if len(words) <= BEGINNING else f"{words[:BEGINNING].rsplit(' ', 1)[0]} …"
    place = f"{span.start}-{span.end}-{name_words(span.of(text))}"
    return Choice(place, beginning)


def send(asked: Asked) -> Response:
    """A passage cut, or brought back, or given its reason."""
    form, folder = asked.form, asked.paper.folder
    do, name = form.text("do"), form.text("name")
    try:
        if do == "back":
            back = bring_back(folder, name)
            return asked.go(asked.to("offcuts", back=back.how))
        if do == "why":
            give_reason(folder, name, form.text("why"))
            return asked.go(asked.to("offcuts", at=name))
        one = cut_span(folder, *_chosen(asked), form.text("why"), asked.papers.now())
    except DraftChangedOnDisk as error:
        return show(asked, fault=f"{error}.", status=409)
    except FairhandError as error:
        return show(asked, fault=f"{error}.", status=page_of(error)[0])
    return asked.go(asked.to("offcuts", at=one.name))


def cut_from_draft(asked: Asked) -> Response:
    """What is chosen in the field of the draft is cut, once what was typed there is kept; then the draft again."""
    kept = DRAFT_PAGE.save(asked)
    if kept.status_code != 303:
        return kept
    try:
        cut_span(asked.paper.folder, *_chosen(asked), asked.form.text("why"), asked.papers.now())
    except FairhandError as error:
        return show(asked, fault=f"{error}.", status=page_of(error)[0])
    return asked.go(asked.to("draft", cut="yes"))


def _chosen(asked: Asked) -> tuple[Span, str]:
    """The place that the form names, and what was seen to stand there: other words, where the draft was changed."""
    first, _, rest = asked.form.text("place").partition("-")
    last, _, seen = rest.partition("-")
    start, end = (read_number(one, -1) for one in (first, last))
    text = read_text(asked.paper.folder, DRAFT).text
    if not 0 <= start < end:
        message = "Nothing is chosen: choose the passage that is to be cut"
        raise FairhandError(message)
    span = Span(start, end)
    words = span.of(text)
    return span, words if not seen or seen == name_words(words) else f"{words} "


def name_words(words: str) -> str:
    """A short name of some words, by which it is seen whether they still stand."""
    return state_of(words)[:12]


ROUTES = (
    get("/paper/{slug}/offcuts", show),
    post("/paper/{slug}/offcuts", send),
    post("/paper/{slug}/draft/cut", cut_from_draft),
)
