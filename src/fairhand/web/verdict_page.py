"""The verdict with its working: what the sheet asks, what was found in the draft, and what to do next."""

from __future__ import annotations

from starlette.responses import Response

from fairhand.readiness.told import tell
from fairhand.web.asked import Asked, get

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
    """The verdict as the paper now stands."""
    verdict = asked.paper.opened.verdict()
    told = tell(verdict)
    groups = [
        (state, heading, [one for one in told["requirements"] if one["state"] == state]) for state, heading in GROUPS
    ]
    return asked.page(
        "verdict_page.html",
        title="Verdict",
        step=f"{ANSWERS[verdict.answer]} {verdict.next_step}",
        told=told,
        groups=[group for group in groups if group[2]],
    )


ROUTES = (get("/paper/{slug}/verdict", show),)
