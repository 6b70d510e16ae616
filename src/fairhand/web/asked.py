"""One request as a page module reads it, and the two ways of answering: a page, or the way to another one.

A page module holds plain functions from an ``Asked`` to a response, and lists their addresses in its ``ROUTES``::

    def show(asked: Asked) -> Response:
        return asked.page("jottings_page.html", title="Jottings", text=read_jottings(asked.paper.folder))

    ROUTES = (get("/paper/{slug}/jottings", show), post("/paper/{slug}/jottings", save))

They run in a thread of their own, one at a time for each paper.
"""

from __future__ import annotations

from collections.abc import Callable
from contextlib import nullcontext
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any
from urllib.parse import quote

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import Route

from fairhand.desk.cache import fingerprint
from fairhand.web.forms import Form, read_form
from fairhand.web.papers import Kept, Papers
from fairhand.web.rendering import render_page, render_piece


@dataclass(frozen=True)
class Asked:
    """One request."""

    request: Request
    form: Form = field(default_factory=Form)
    """What was sent; empty where something was only asked for."""

    @property
    def papers(self) -> Papers:
        """The desk's papers."""
        found: Papers = self.request.app.state.papers
        return found

    @cached_property
    def paper(self) -> Kept:
        """The paper that the address names.

        Raises:
            NoPaperHere: There is none of that name on the desk.
        """
        return self.papers.find(self.name("slug"))

    def name(self, part: str) -> str:
        """A part of the address, as ``slug`` in ``/paper/{slug}``."""
        return str(self.request.path_params[part])

    def query(self, name: str, default: str = "") -> str:
        """What the address says after its question mark."""
        return self.request.query_params.get(name, default)

    @property
    def is_small(self) -> bool:
        """Whether htmx asks, for a piece of the page; the answer is then a fragment."""
        return "hx-request" in self.request.headers

    def to(self, *parts: str, at: str = "", **query: str | int) -> str:
        """The address of a page of this paper.

        Args:
            parts: What follows ``/paper/<slug>``.
            at: The id of the place on that page.
            query: What follows the question mark.
        """
        return address("paper", self.name("slug"), *parts, at=at, **query)

    def page(self, template: str, *, status: int = 200, framed: bool = False, **values: Any) -> Response:
        """A page, or a fragment of one.

        Args:
            template: The file in ``templates``.
            status: The HTTP status.
            framed: Whether it shows the PDF within it.
            values: What the template names; ``title`` is the heading of the page, ``step`` its next step.
        """
        paper = self.paper if "slug" in self.request.path_params else None
        return render_page(self.request, template, status=status, framed=framed, paper=paper, **values)

    def piece(self, template: str, *, status: int = 200, **values: Any) -> Response:
        """A piece of a page, of a paper or of the desk, as htmx puts it in; nothing of the paper is read for it."""
        state = fingerprint(self.paper.folder) if "slug" in self.request.path_params else self.papers.state()
        return render_piece(template, status=status, state=state, **values)

    def go(self, where: str) -> Response:
        """The way to another page, once something was done; going back or reloading does not do it again."""
        return RedirectResponse(where, 303)


def address(*parts: str, at: str = "", **query: str | int) -> str:
    """An address on this machine, each part quoted.

    >>> address("paper", "dèjà vu", "sources", "a/b", at="p 3", page=4)
    '/paper/d%C3%A8j%C3%A0%20vu/sources/a%2Fb?page=4#p%203'
    """
    asked = "&".join(f"{name}={quote(str(value), safe='')}" for name, value in query.items())
    path = "/" + "/".join(quote(part, safe="") for part in parts)
    return path + (f"?{asked}" if asked else "") + (f"#{quote(at, safe='')}" if at else "")


def get(path: str, answer: Callable[[Asked], Response]) -> Route:
    """The row of a page that shows something."""
    return Route(path, _endpoint(answer), methods=["GET"])


def post(path: str, answer: Callable[[Asked], Response]) -> Route:
    """The row of a form that changes something."""
    return Route(path, _endpoint(answer), methods=["POST"])


def _endpoint(answer: Callable[[Asked], Response]) -> Callable[[Request], Any]:
    async def endpoint(request: Request) -> Response:
        form = await read_form(request) if request.method == "POST" else Form()
        return await run_in_threadpool(_answer, answer, Asked(request, form))

    return endpoint


def _answer(answer: Callable[[Asked], Response], asked: Asked) -> Response:
    with asked.paper.lock if "slug" in asked.request.path_params else nullcontext():
        return answer(asked)
