"""Pages from templates."""

from __future__ import annotations

from functools import cache
from typing import Any

from jinja2 import Environment, PackageLoader, StrictUndefined
from starlette.requests import Request
from starlette.responses import HTMLResponse, Response

from fairhand.brief.telling import say_day
from fairhand.model.sign_forms import SIGN_FORMS
from fairhand.readiness.in_words import name_ground
from fairhand.web.assets import asset_address
from fairhand.web.papers import Kept
from fairhand.web.parts import BESIDES, part_of, shown_parts
from fairhand.web.safety import POLICY, POLICY_WITH_FRAME, write_policy


@cache
def templates() -> Environment:
    """The templates; everything that is put into one is text, unless it was made as markup."""
    made = Environment(
        loader=PackageLoader("fairhand.web"),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    made.globals["asset"] = asset_address
    made.globals["sign_forms"] = SIGN_FORMS
    made.globals["ground"] = name_ground
    made.filters["as_day"] = say_day
    return made


def render_page(
    request: Request,
    template: str,
    *,
    status: int = 200,
    framed: bool = False,
    paper: Kept | None = None,
    **values: Any,
) -> Response:
    """The page that a template makes, with what every page needs: nonce, running head, parts.

    Args:
        request: What was asked.
        template: The file in ``templates``.
        status: The HTTP status.
        framed: Whether it shows the PDF within it.
        paper: The paper that it is a page of.
        values: What the template names.
    """
    from fairhand.web.asked import address

    nonce: str = request.state.nonce
    leaf = request.url.path.split("/")[3] if paper and request.url.path.count("/") > 2 else ""
    shared = {
        "nonce": nonce,
        "address": address,
        "paper": paper,
        "leaf": leaf,
        "part": part_of(leaf),
        "parts": shown_parts(request.app.state.working),
        "besides": [one for one in BESIDES if one.name in request.app.state.working],
        "step": "",
        "changes": address("paper", paper.slug, "changes") if paper else "",
        "state": paper.opened.state if paper else "",
        "writer": request.app.state.papers.writer,
    }
    values = shared | values
    text = templates().get_template(template).render(values)
    headers = {"content-security-policy": write_policy(POLICY_WITH_FRAME if framed else POLICY, nonce)}
    if values["state"]:
        headers["fairhand-state"] = str(values["state"])
    return HTMLResponse(_encode(text), status, headers=headers)


def render_piece(template: str, *, status: int, state: str, **values: Any) -> Response:
    """A piece of a page that a template makes, with the paper's state as the page then knows it.

    Args:
        template: The file in ``templates``.
        status: The HTTP status.
        state: The hash of the paper's files.
        values: What the template names.
    """
    text = templates().get_template(template).render(values)
    return HTMLResponse(_encode(text), status, headers={"fairhand-state": state})


def _encode(text: str) -> bytes:
    """The page's bytes; for half a letter, which JSON can hold and no encoding can, a question mark."""
    return text.encode("utf-8", "replace")
