"""Support: the points against the sources, those that lack sources first; what may be one witness; the searches."""

from __future__ import annotations

from starlette.responses import Response

from fairhand.errors import DraftChangedOnDisk, FairhandError
from fairhand.evidence.rulings import WHERE
from fairhand.evidence.searches import Search, tell_search
from fairhand.model.ruling import Ruling
from fairhand.readiness.naming import claim_tie
from fairhand.session.research.notes_for import sources_noted
from fairhand.session.research.noting import list_notes
from fairhand.session.research.support import (
    list_searches,
    log_search,
    pages_of,
    rule_pair,
    survey_support,
    take_ruling_back,
    tell_estimates,
    unnamed_of,
)
from fairhand.web.asked import Asked, get, post
from fairhand.web.error_pages import page_of
from fairhand.web.forms import read_number

WIDEST = 6
"""From more points on the grid no longer stands in columns, but as a list by source."""


def show(asked: Asked, *, fault: str = "", status: int = 200, search: Search | None = None) -> Response:
    """The grid, the pairs that may be one witness, what the sheet asks of the sources, and the log of searches.

    Args:
        asked: The request.
        fault: Why something that was sent was not done.
        status: The HTTP status.
        search: A search that was typed and not kept.
    """
    known = asked.paper.opened.look()
    survey = survey_support(known)
    log, faults = list_searches(asked.paper.folder)
    notes = list_notes(asked.paper.folder)[0]
    noted = sources_noted(notes, "point")
    return asked.page(
        "support_page.html",
        status=status,
        title="Support",
        step=survey.sentence,
        asks=known.asks_for_sources,
        survey=survey,
        long=len(survey.points) > WIDEST,
        names=known.names,
        pages_of=pages_of,
        tie=lambda one: claim_tie(one, known.names),
        texts=known.paper.texts,
        unnamed=lambda one: [known.names.get(i, i) for i in unnamed_of(one, noted)],
        estimates=tell_estimates(survey.points, log, sources_noted(notes, "question")),
        log=log,
        tell_search=tell_search,
        problems=[*(one for one in known.paper.problems if one.where.startswith(WHERE)), *faults],
        fault=fault,
        search=search or Search(""),
    )


def send(asked: Asked) -> Response:
    """The writer's word on a pair, or a search written down; where it cannot be, the page again with what was typed."""
    form, folder = asked.form, asked.paper.folder
    search: Search | None = None
    try:
        if form.has("words"):
            search = Search(
                words=form.text("words"),
                place=form.text("place"),
                hits=read_number(form.text("hits"), None),
                kept=form.texts("kept"),
                route="leads" if form.text("route") == "leads" else "searching",
            )
            log_search(folder, search, asked.papers.now())
            return asked.go(asked.to("support", at="searches"))
        _decide(asked)
    except DraftChangedOnDisk:
        fault = "Another program wrote to the file at the same moment; nothing was overwritten. Send it again."
        return show(asked, fault=fault, status=409, search=search)
    except FairhandError as error:
        return show(asked, fault=str(error), status=page_of(error)[0], search=search)
    return asked.go(asked.to("support", at="pairs"))


def _decide(asked: Asked) -> None:
    form, folder = asked.form, asked.paper.folder
    first, second, word = form.text("first"), form.text("second"), form.text("do")
    entries = asked.paper.opened.look().entries
    if first == second or first not in entries or second not in entries:
        message = "Choose two different sources that are on the list of sources."
        raise FairhandError(message)
    if word == "undecided":
        take_ruling_back(folder, frozenset((first, second)))
    else:
        why = " ".join(form.text("why").split())
        rule_pair(folder, Ruling(first, second, independent=word == "two", why=why))


ROUTES = (get("/paper/{slug}/support", show), post("/paper/{slug}/support", send))
