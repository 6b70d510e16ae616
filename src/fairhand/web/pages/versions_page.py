"""A version that a synchronised folder left beside one of the writer's files: both side by side, and the choice."""

from __future__ import annotations

from starlette.responses import Response

from fairhand.errors import DraftChangedOnDisk, FairhandError
from fairhand.readiness.told import mark_differences
from fairhand.session.versions import look_at_version, put_version, tell_version
from fairhand.web.asked import Asked, get, post
from fairhand.web.error_pages import page_of

FATES = {
    "edited": "it differs",
    "moved": "it stands elsewhere",
    "split": "it is parted otherwise",
    "joined": "it is parted otherwise",
    "new": "only in the file",
    "gone": "only in this version",
}
"""How a passage of the two differs, in words; neither is the older."""


def look(asked: Asked, *, fault: str = "", status: int = 200) -> Response:
    """The version, and where the file differs from it.

    Args:
        asked: The request.
        fault: Why something that was sent was not done.
        status: The HTTP status.
    """
    version = look_at_version(asked.paper.folder, asked.name("name"))
    told = tell_version(version.copy)
    return asked.page(
        "version_page.html",
        status=status,
        title=version.copy.seen.name,
        step=f"{told[0].upper()}{told[1:]}: look at both, and choose.",
        version=version,
        differs=[
            (
                FATES[one.fate],
                mark_differences(one.then, one.then_differs, around=len(one.then)),
                mark_differences(one.now, one.now_differs, around=len(one.now)),
            )
            for one in version.differs
        ],
        to=asked.to,
        fault=fault,
    )


def put(asked: Asked) -> Response:
    """The version stands in the file's place; what stood there is kept first."""
    form = asked.form
    try:
        of = put_version(asked.paper.folder, asked.name("name"), form.text("seen") or None, form.text("was"))
    except DraftChangedOnDisk:
        fault = "One of the two was changed while you looked; nothing was written. Look at both again, and choose."
        return look(asked, fault=fault, status=409)
    except FairhandError as error:
        return look(asked, fault=f"{error}.", status=page_of(error)[0])
    return asked.go(asked.to("states", file=of))


ROUTES = (
    get("/paper/{slug}/states/beside/{name}", look),
    post("/paper/{slug}/states/beside/{name}", put),
)
