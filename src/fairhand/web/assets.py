"""The look and the scripts, from the package and nowhere else."""

from __future__ import annotations

import hashlib
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

WHERE = {
    "fairhand.css": ("web/look", "text/css"),
    "fairhand.js": ("web/look", "text/javascript"),
    "lines.css": ("web/look", "text/css"),
    "proof.js": ("web/look", "text/javascript"),
    "marking.js": ("web/look", "text/javascript"),
    "aloud.js": ("web/look", "text/javascript"),
    "drop.js": ("web/look", "text/javascript"),
    "source.js": ("web/look", "text/javascript"),
    "write.js": ("web/look", "text/javascript"),
    "mark.svg": ("web/look", "image/svg+xml"),
    "htmx.min.js": ("built/web", "text/javascript"),
    **{f"tinos-{cut}.ttf": ("built/fonts", "font/ttf") for cut in ("regular", "italic", "bold", "bold-italic")},
}
"""Every file that is handed out, with its folder in the package and its kind."""


@dataclass(frozen=True)
class Asset:
    """A file of the look."""

    data: bytes
    kind: str
    digest: str
    """Stands in its address, so that browsers keep it until it changes."""


@cache
def find_asset(name: str) -> Asset:
    """The file of that name; a style sheet names the faces by their full addresses.

    Raises:
        KeyError: None is handed out under it.
    """
    folder, kind = WHERE[name]
    data = files("fairhand").joinpath(folder, name).read_bytes()
    return Asset(data, kind, hashlib.sha256(data).hexdigest()[:12])


def asset_address(name: str) -> str:
    """Where a file of the look is to be had."""
    return f"/look/{name}?{find_asset(name).digest}"


def show_asset(request: Request) -> Response:
    """A file of the look."""
    try:
        asset = find_asset(request.path_params["name"])
    except KeyError as error:
        raise HTTPException(404) from error
    return Response(asset.data, media_type=asset.kind, headers={"cache-control": "max-age=31536000, immutable"})


ROUTES = (Route("/look/{name}", show_asset),)
