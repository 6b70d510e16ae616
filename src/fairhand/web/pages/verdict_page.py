"""The verdict with its working: what the sheet asks, what was found in the draft, and what to do next."""

from __future__ import annotations

from starlette.responses import Response

from fairhand.brief.telling import name_requirement
from fairhand.proof.stets import name_stet
from fairhand.readiness.in_words import CAUTION, findings_to_show, quote_shortly, say_extent, say_grounds
from fairhand.readiness.told import tell
from fairhand.session.editing import remove_stet
from fairhand.session.schedule.left_to_do import read_left
from fairhand.web.asked import Asked, get, post
from fairhand.web.marked_text import mark_addresses

ANSWERS = {
    "ready": "The paper is ready to be handed in.",
    "not ready": "The paper is not ready.",
    "ask": "Something is still yours to answer.",
}
"""The answer, as a sentence."""
GROUPS = (
    ("unmet", "What the sheet asks, and is not met"),
    ("ask", "Yours to answer"),
    ("met", "Met"),
    ("waived", "Waived"),
)
"""The requirements by their state, the pressing ones first."""


def show(asked: Asked) -> Response:
    """The verdict as the paper now stands; each finding leads to its mark."""
    verdict = asked.paper.opened.verdict()
    told, where = tell(verdict), mark_addresses(asked, verdict)
    for one, finding in zip(told["findings"], verdict.findings, strict=True):
        one |= {"at": where[finding], "quote": one["quote"] and quote_shortly(one["quote"])}
    for one, stetted in zip(told["stets"], verdict.stets, strict=True):
        one |= {"at": where[stetted.finding], "name": name_stet(stetted.stet)}
    for one, judged in zip(told["requirements"], verdict.judged, strict=True):
        one["name"] = name_requirement(judged.requirement)
    groups = [
        (state, heading, [one for one in told["requirements"] if one["state"] == state]) for state, heading in GROUPS
    ]
    return asked.page(
        "verdict_page.html",
        title="Verdict",
        step=f"{ANSWERS[verdict.answer]} {verdict.next_step}",
        told=told,
        extent=say_extent(told),
        findings=findings_to_show(told["findings"]),
        left=read_left(asked.paper.folder, told, asked.papers.at),
        leaves=asked.request.app.state.working,
        groups=[group for group in groups if group[2]],
        grounds=say_grounds(findings_to_show(told["findings"])),
        caution=CAUTION,
    )


def take_back(asked: Asked) -> Response:
    """A stet taken back: what was let stand is a finding again."""
    remove_stet(asked.paper.folder, asked.form.text("mark"))
    return asked.go(asked.to("verdict"))


ROUTES = (get("/paper/{slug}/verdict", show), post("/paper/{slug}/verdict", take_back))
