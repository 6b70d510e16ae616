"""Both versions of a file that was changed behind the page's back, side by side; the writer chooses."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from dataclasses import field as having

from starlette.responses import Response

from fairhand.web.asked import Asked


@dataclass(frozen=True)
class Versions:
    """The version that was typed, and the one that now stands on the disk."""

    name: str
    """The file's name, as ``draft.md``."""
    typed: str
    on_disk: str
    seen: str
    """The hash of the bytes on the disk, which the choice is made from."""
    field: str = "text"
    """The form's field that holds the text."""
    seen_field: str = "seen"
    """The form's field that holds the hash last seen."""
    more: Mapping[str, str | int] = having(default_factory=dict)
    """What else the choice is sent with."""


def show_both(asked: Asked, versions: Versions) -> Response:
    """The page on which the writer chooses; what is sent from it goes to the address that was asked.

    A page module calls it where saving raised ``DraftChangedOnDisk``; the version that is not chosen is in the record.
    """
    return asked.page(
        "both.html",
        status=409,
        title="Two versions",
        step=f"Another program changed {versions.name} while you were writing. Nothing was overwritten: choose.",
        versions=versions,
        here=asked.request.url.path,
    )
