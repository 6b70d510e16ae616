"""What keeps the page to the person at this machine.

Any page open in the same browser can send requests to 127.0.0.1. Four things stand in its way, and each is needed: the
Host (a foreign name that was pointed here), the Origin (a form on a foreign page), the secret of this run (another
person's program on this machine), and a content policy (a script in something that was read).

**Source**: OWASP cheat sheets on cross-site request forgery and DNS rebinding; W3C Fetch Metadata and Content Security
Policy 3; why each is needed: ``docs/decisions/0040-four-locks-on-the-page.md``.
"""

from __future__ import annotations

import hmac
import secrets
from collections.abc import Mapping
from http.cookies import SimpleCookie
from urllib.parse import parse_qsl, urlencode

from starlette.datastructures import Headers, MutableHeaders
from starlette.responses import HTMLResponse, RedirectResponse, Response
from starlette.types import ASGIApp, Message, Receive, Scope, Send

HOSTS = ("127.0.0.1", "localhost", "[::1]")
"""The names under which this machine calls itself."""
SAFE_METHODS = frozenset({"GET", "HEAD"})
MOST_BODY = 64 * 2**20
"""Bytes of the largest request that is read: several sheets and a scanned source."""
POLICY = {
    "default-src": "'none'",
    "script-src": "'nonce-{nonce}'",
    "style-src": "'nonce-{nonce}'",
    "img-src": "'self'",
    "font-src": "'self'",
    "connect-src": "'self'",
    "form-action": "'self'",
    "base-uri": "'none'",
    "frame-ancestors": "'none'",
}
"""The content policy of a page: nothing from elsewhere, no script and no look but those with the nonce."""
POLICY_WITH_FRAME = {**POLICY, "frame-src": "'self'", "object-src": "'self'"}
"""The policy of a page that shows the PDF within it."""
POLICY_OF_FILE = {"default-src": "'none'", "frame-ancestors": "'self'"}
"""The policy of a file that is handed out, which our own pages may frame."""
ALWAYS = {
    "x-content-type-options": "nosniff",
    "referrer-policy": "same-origin",  # "no-referrer" would take the Origin from our own forms as well
    "cross-origin-opener-policy": "same-origin",
    "cross-origin-resource-policy": "same-origin",
    "cross-origin-embedder-policy": "require-corp",
    "x-frame-options": "SAMEORIGIN",
    "permissions-policy": "camera=(), geolocation=(), microphone=(), payment=(), usb=()",
    "x-robots-tag": "noindex",
}


class TooMuchSent(Exception):
    """A request was larger than is read."""


def write_policy(parts: Mapping[str, str], nonce: str = "") -> str:
    """A content policy as its header has it.

    >>> write_policy({"default-src": "'none'", "script-src": "'nonce-{nonce}'"}, "abc")
    "default-src 'none'; script-src 'nonce-abc'"
    """
    return "; ".join(f"{name} {value.format(nonce=nonce)}" for name, value in parts.items())


class Guard:
    """Lets through only what this person's own browser asks of this run, and seals every answer.

    Args:
        app: What answers.
        secret: The secret of this run, as the address that was printed has it.
    """

    def __init__(self, app: ASGIApp, secret: str) -> None:
        """The secret decides for as long as the program runs."""
        self.app = app
        self.secret = secret

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answers the request, or refuses it."""
        if scope["type"] != "http":
            await self.app(scope, receive, send)
            return
        nonce = secrets.token_urlsafe(16)
        scope.setdefault("state", {})["nonce"] = nonce
        sealed = _seal(send, nonce)
        refused = self.refuse(scope)
        if refused is not None:
            await refused(scope, receive, sealed)
        else:
            await self.app(scope, _measured(receive), sealed)

    def refuse(self, scope: Scope) -> Response | None:
        """What is answered in place of the page; None where nothing stands against it."""
        headers = Headers(scope=scope)
        if not is_this_machine(headers.get("host", "")):
            return refusal("This name does not stand for this machine. Open the address that Fairhand printed.", 400)
        if scope["method"] not in SAFE_METHODS and not comes_from_here(headers, scope["scheme"]):
            return refusal("This request did not come from a page of Fairhand, and was not carried out.")
        cookie = name_cookie(scope)
        asked = dict(parse_qsl(scope["query_string"].decode("latin-1"), keep_blank_values=True))
        if "key" in asked and scope["method"] in SAFE_METHODS and self.is_secret(asked.pop("key")):
            answer = RedirectResponse(scope["path"] + (f"?{urlencode(asked)}" if asked else ""), 303)
            answer.set_cookie(cookie, self.secret, httponly=True, samesite="strict")
            return answer
        crumbs = SimpleCookie(headers.get("cookie", ""))
        if cookie not in crumbs or not self.is_secret(crumbs[cookie].value):
            return refusal(
                "This page belongs to whoever started Fairhand. Open the address that it printed when it started; if"
                ' you have just done so, <a href="/">go on</a>.'
            )
        length = headers.get("content-length", "0")
        if not (length.isascii() and length.isdecimal()):
            return refusal("How much was sent could not be told.", 400)
        if int(length[:20]) > MOST_BODY:
            return refusal(f"More was sent than is read at once ({MOST_BODY // 2**20} MB). Send less, or a part.", 413)
        return None

    def is_secret(self, given: str) -> bool:
        """Whether what was given is the secret; the time that this takes tells nothing."""
        return hmac.compare_digest(given.encode(), self.secret.encode())


def is_this_machine(host: str) -> bool:
    """Whether a Host header names this machine.

    >>> is_this_machine("127.0.0.1:8000"), is_this_machine("[::1]:8000"), is_this_machine("localhost.elsewhere.example")
    (True, True, False)
    """
    name, found, port = host.rpartition(":")
    return (name if found and port.isdecimal() else host).lower() in HOSTS


def comes_from_here(headers: Headers, scheme: str) -> bool:
    """Whether a browser vouches that one of our own pages sent the request.

    A browser that says nothing of where a form stood does not vouch for it.
    """
    site, origin = headers.get("sec-fetch-site"), headers.get("origin")
    if site is None and origin is None:
        return False
    return site in {None, "same-origin"} and origin in {None, f"{scheme}://{headers.get('host', '')}"}


def name_cookie(scope: Scope) -> str:
    """The cookie's name; browsers do not tell ports apart, and several desks may be open."""
    return f"fairhand-{(scope.get('server') or ('', 0))[1]}"


def refusal(says: str, status: int = 403) -> Response:
    """A page that stands alone: it says why nothing is shown."""
    return HTMLResponse(
        '<!doctype html><html lang="en"><meta charset="utf-8"><title>Fairhand</title>'
        f"<main><h1>Not shown</h1><p>{says}</p></main></html>",
        status,
    )


def _seal(send: Send, nonce: str) -> Send:
    """The sending of an answer, with the headers that every answer carries."""

    async def sealed(message: Message) -> None:
        if message["type"] == "http.response.start":
            headers = MutableHeaders(scope=message)
            for name, value in ALWAYS.items():
                headers.setdefault(name, value)
            headers.setdefault("cache-control", "no-cache")
            headers.setdefault("content-security-policy", write_policy(POLICY, nonce))
        await send(message)

    return sealed


def _measured(receive: Receive) -> Receive:
    """The reading of a request, which ends where more comes than is read."""
    left = MOST_BODY

    async def measured() -> Message:
        nonlocal left
        message = await receive()
        left -= len(message.get("body", b""))
        if left < 0:
            raise TooMuchSent
        return message

    return measured
