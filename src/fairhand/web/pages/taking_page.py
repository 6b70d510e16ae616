"""A draft from a word processor, brought into the paper; it may come again later."""

from __future__ import annotations

from pathlib import Path

from starlette.responses import Response

from fairhand.errors import DraftChangedOnDisk, FairhandError
from fairhand.session.drafting.taking import DRAFTS, take_draft
from fairhand.session.record.states import last_state
from fairhand.web.asked import Asked, get, post
from fairhand.web.error_pages import page_of

STEP = "Bring in a draft that was written elsewhere; it may come again, and what you changed here meanwhile stays."


def show(
    asked: Asked, *, fault: str = "", status: int = 200, told: tuple[str, ...] = (), before: int | None = None
) -> Response:
    """The form; and once a draft came in, what was done with it.

    Args:
        asked: The request.
        fault: Why something that was sent was not done.
        status: The HTTP status.
        told: What was done.
        before: The number of the state that the draft was in before.
    """
    return asked.page(
        "taking_page.html",
        status=status,
        title="A draft from a file",
        step=STEP,
        told=told,
        before=before,
        endings=",".join(DRAFTS),
        fault=fault,
        to=asked.to,
    )


def send(asked: Asked) -> Response:
    """The draft is brought in."""
    form, folder = asked.form, asked.paper.folder
    file = next(iter(form.uploads("file")), None)
    if file is None or Path(file.name).suffix.lower() not in DRAFTS:
        return show(asked, fault="Choose a file of a word processor: DOCX or ODT.", status=400)
    try:
        before = last_state(folder, "draft.md")
        told = tuple(take_draft(folder, file.data, file.name, refuse=form.has("refuse"), replace=form.has("replace")))
    except DraftChangedOnDisk:
        fault = "Another program wrote to the draft at the same moment; nothing was overwritten. Send it again."
        return show(asked, fault=fault, status=409)
    except FairhandError as error:
        return show(asked, fault=str(error), status=page_of(error)[0])
    return show(asked, told=told, before=before.seq if before else None)


ROUTES = (get("/paper/{slug}/take", show), post("/paper/{slug}/take", send))
