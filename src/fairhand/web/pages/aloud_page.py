"""The paper read aloud, sentence by sentence, the place kept; a key marks it without stopping."""

from __future__ import annotations

from starlette.responses import Response

from fairhand.errors import FairhandError
from fairhand.proof.aloud import LEFT_OUT, PACE, LeftOut
from fairhand.session.correction.aloud import end_aloud, mark_heard, read_aloud, tell_time
from fairhand.session.correction.passes import begin_pass, read_marking
from fairhand.web.asked import Asked, get, post
from fairhand.web.error_pages import page_of
from fairhand.web.forms import read_number

SLOWEST, QUICKEST = 60, 400
"""Words a minute."""
CHOICES: tuple[LeftOut, ...] = ("citations", "notes", "headings")


def show(asked: Asked, *, fault: FairhandError | None = None) -> Response:
    """The text, and how long it takes; what is read and how fast is chosen before.

    Args:
        asked: The request.
        fault: Why what was sent could not be done.
    """
    spoken = read_aloud(asked.paper.opened)
    chosen = asked.request.query_params
    left_out = tuple(one for one in CHOICES if one not in chosen) if chosen.get("pace") else LEFT_OUT
    pace = _pace(chosen.get("pace", ""))
    marking = read_marking(asked.paper.folder)
    going = marking.under_way
    return asked.page(
        "aloud_page.html",
        status=page_of(fault)[0] if fault else 200,
        title="Aloud",
        step=tell_time(spoken, left_out, pace) if spoken else "There is no draft yet: write it first.",
        spoken=list(enumerate(spoken)),
        left_out=left_out,
        choices=CHOICES,
        pace=pace,
        slowest=SLOWEST,
        quickest=QUICKEST,
        going=going,
        many=len(marking.of(going)) if going else 0,
        marked={mark.exact for mark in marking.of(going)} if going else set(),
        draft=asked.paper.opened.look().manuscript.text,
        fault=f"{fault}." if fault else "",
    )


def begin(asked: Asked) -> Response:
    """A pass by ear is begun."""
    try:
        begin_pass(asked.paper.folder, "aloud", asked.papers.now(), by=asked.form.text("by"))
    except FairhandError as fault:
        return show(asked, fault=fault)
    return asked.go(asked.to("aloud"))


def mark(asked: Asked) -> Response:
    """The sentence that was being read is marked; the script that reads on is only told that it was."""
    form = asked.form
    try:
        mark_heard(asked.paper.opened, read_number(form.text("number"), -1), asked.papers.now(), form.text("said"))
    except FairhandError as fault:
        return Response(f"{fault}.", page_of(fault)[0]) if asked.is_small else show(asked, fault=fault)
    if asked.is_small:
        return Response("Marked.", headers={"fairhand-state": asked.paper.opened.state})
    return asked.go(asked.to("aloud", at=f"s-{read_number(form.text('number'), -1)}"))


def end(asked: Asked) -> Response:
    """The pass has ended, and what was not heard is said; its marks are gone through on the proof."""
    try:
        end_aloud(asked.paper.opened, read_number(asked.form.text("number"), -1), asked.papers.now())
    except FairhandError as fault:
        return show(asked, fault=fault)
    return asked.go(asked.to("proof"))


def back(asked: Asked) -> Response:
    """The way to the page, for who asks a form's address."""
    return asked.go(asked.to("aloud"))


def _pace(said: str) -> int:
    """A pace as an address has it, within what can be spoken."""
    return min(QUICKEST, max(SLOWEST, read_number(said, PACE)))


ROUTES = (
    get("/paper/{slug}/aloud", show),
    get("/paper/{slug}/aloud/{act}", back),
    post("/paper/{slug}/aloud/begin", begin),
    post("/paper/{slug}/aloud/mark", mark),
    post("/paper/{slug}/aloud/end", end),
)
