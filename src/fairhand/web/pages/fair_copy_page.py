"""The fair copy: seen as it will be printed, and handed out in each form."""

from __future__ import annotations

from typing import Any
from urllib.parse import quote

from starlette.exceptions import HTTPException
from starlette.responses import Response

from fairhand.errors import MatterLeft, NothingToPrint
from fairhand.language.counts import count_of
from fairhand.session.hand_in.printing import SetCopy, set_copy
from fairhand.web.asked import Asked, get
from fairhand.web.safety import POLICY_OF_FILE, write_policy

KINDS = {
    "pdf": ("PDF", "application/pdf"),
    "docx": ("DOCX", "application/vnd.openxmlformats-officedocument.wordprocessingml.document"),
    "odt": ("ODT", "application/vnd.oasis.opendocument.text"),
    "html": ("HTML", "text/html; charset=utf-8"),
    "md": ("Markdown", "text/markdown; charset=utf-8"),
}
"""The forms that the fair copy is made in, each with its name and its kind of file."""


def show(asked: Asked) -> Response:
    """The PDF within the page; where matter is left that is not printed, that is said first."""
    anyway = asked.query("anyway") == "yes"
    values: dict[str, Any] = {"anyway": anyway, "kinds": KINDS}
    try:
        made = set_copy(asked.paper.opened, "pdf", anyway=anyway)
    except MatterLeft as left:
        return asked.page("fair_copy_page.html", title="Fair copy", step=f"{left}.", left=True, **values)
    except NothingToPrint:
        step = "There is no draft yet: write it first."
        return asked.page("fair_copy_page.html", title="Fair copy", step=step, left=None, **values)
    step = f"Read it once from start to end; it has {count_of(made.pages or 0, 'page')}."
    return asked.page(
        "fair_copy_page.html", title="Fair copy", step=step, framed=True, left=False, notes=made.notes, **values
    )


def hand_out(asked: Asked) -> Response:
    """The fair copy in one form, under the name that the sheet asks for; a PDF can be looked at in the page."""
    kind = asked.name("kind")
    if kind not in KINDS:
        raise HTTPException(404)
    made = set_copy(
        asked.paper.opened, kind, proof=asked.query("proof") == "yes", anyway=asked.query("anyway") == "yes"
    )
    return send_copy(made, kind, look=asked.query("look") == "yes")


def send_copy(made: SetCopy, kind: str, *, look: bool = False) -> Response:
    """A copy under its name, to be kept, or to be looked at where it is a PDF."""
    how = "inline" if look and kind == "pdf" else "attachment"
    said = f"{how}; filename*=UTF-8''{quote(made.name, safe='')}"
    headers = {"content-disposition": said, "content-security-policy": write_policy(POLICY_OF_FILE)}
    return Response(made.data, media_type=KINDS[kind][1], headers=headers)


ROUTES = (get("/paper/{slug}/fair-copy", show), get("/paper/{slug}/fair-copy/{kind}", hand_out))
