"""Leads: what the sources' reference lists point to, the most needed first; taken, put aside, brought back."""

from __future__ import annotations

from starlette.responses import Response

from fairhand.errors import DraftChangedOnDisk, FairhandError
from fairhand.leads.telling import tell_found, tell_kind, tell_lead, tell_pointers
from fairhand.session.job import Job
from fairhand.session.research.lead_choices import (
    bring_back,
    put_aside,
    read_for_references,
)
from fairhand.session.research.leads import LeadsFound, follow_lead, list_leads, mine_sources
from fairhand.web.asked import Asked, get, post
from fairhand.web.error_pages import page_of

SOON_SECONDS = 1.5
"""How long an answer waits for sources to be looked through before it shows how far that is."""
SHOWN = 20
"""Leads that are shown at first."""


def show(asked: Asked, *, fault: str = "", status: int = 200) -> Response:
    """The leads with their reasons, those put aside, and which sources are read for their references only."""
    found = _find(asked)
    known = asked.paper.opened.look()
    every = asked.query("all") == "yes"
    return asked.page(
        "leads_page.html",
        status=status,
        title="Leads",
        step=_step(found),
        told=tell_found(len(found.leads), found.mined, len(found.unmined)),
        leads=found.leads if every else found.leads[:SHOWN],
        more=0 if every else max(0, len(found.leads) - SHOWN),
        aside=found.aside,
        mined=found.mined,
        looking=bool(found.unmined),
        problems=found.problems,
        names=known.names,
        only=[id_ for id_, entry in known.entries.items() if entry.is_for_references],
        tell_lead=tell_lead,
        tell_kind=tell_kind,
        tell_pointers=tell_pointers,
        fault=fault,
    )


def _find(asked: Asked) -> LeadsFound:
    """The leads of the sources that were looked through; the others are being looked through meanwhile."""
    opened = asked.paper.opened
    found = list_leads(opened, at_once=True)
    if not found.unmined:
        return found
    jobs = asked.request.app.state.jobs
    name = f"leads of {asked.paper.slug}"
    job: Job[int] | None = jobs.get(name)
    if job is None or job.ended:
        folder, texts = opened.folder, found.unmined
        job = jobs[name] = Job(lambda job: mine_sources(folder, texts, job))
        job.begin()
    job.wait(SOON_SECONDS)
    return list_leads(opened, at_once=True) if job.ended else found


def _step(found: LeadsFound) -> str:
    if found.unmined:
        return "The reference lists of your sources are being looked through; what was found so far stands here."
    if any(one.reasons for one in found.leads):
        return "Look for the first of these; put aside what you do not want, and say why."
    if found.leads:
        return "None of these stands out: read on in the sources, and come back when a question is open."
    return "Nothing to follow yet."


def send(asked: Asked) -> Response:
    """A lead is taken, put aside or brought back, or a source's mark is changed; where it cannot be, the page again."""
    form, paper = asked.form, asked.paper
    try:
        if form.text("do") == "only":
            _mark_sources(asked)
            return asked.go(asked.to("leads", at="only"))
        lead = list_leads(paper.opened).find(form.text("lead"))
        if form.text("do") == "take":
            new = follow_lead(paper.opened, lead, asked.papers.now())
            return asked.go(asked.to("sources", new))
        if form.text("do") == "back":
            bring_back(paper.folder, lead, asked.papers.now())
        else:
            put_aside(paper.folder, lead, form.text("why"), asked.papers.now())
    except DraftChangedOnDisk:
        fault = "Another program wrote to the file at the same moment; nothing was overwritten. Send it again."
        return show(asked, fault=fault, status=409)
    except FairhandError as error:
        return show(asked, fault=str(error), status=page_of(error)[0])
    return asked.go(asked.to("leads", at="aside" if form.text("do") == "back" else ""))


def _mark_sources(asked: Asked) -> None:
    marked = frozenset(asked.form.texts("only"))
    for id_ in asked.form.texts("shown"):
        entry = asked.paper.opened.look().entries.get(id_)
        if entry is not None:
            read_for_references(asked.paper.folder, entry, only=id_ in marked)


ROUTES = (get("/paper/{slug}/leads", show), post("/paper/{slug}/leads", send))
