"""One request sent and its answer brought in, within bounds of time, size and redirections.

Only https is spoken, except with this machine itself. No cookie is kept, nothing is said of the writer, and an answer
is taken uncompressed, so that it is never larger than what came in.
"""

from __future__ import annotations

import http.client
import socket
import ssl
import threading
from contextlib import suppress
from dataclasses import dataclass
from urllib.parse import SplitResult, urljoin, urlsplit

from fairhand import __version__
from fairhand.errors import NotReached
from fairhand.model.request import WebAnswer, WebRequest

_MOVED = frozenset((301, 302, 303, 307, 308))
_PIECE = 1 << 16
_SELF = frozenset(("127.0.0.1", "localhost", "::1"))


@dataclass(frozen=True)
class Bounds:
    """How much is waited for and taken."""

    seconds: float = 30.0
    """For everything together, redirections included."""
    most_bytes: int = 40 * 2**20
    redirections: int = 6


def fetch(request: WebRequest, bounds: Bounds | None = None) -> WebAnswer:
    """The answer to a request.

    Raises:
        NotReached: No answer came in time, or it was too large, moved too often, or none that can be used.
    """
    bounds = bounds or Bounds()
    at = _place(request.address, request.address)
    ours = _is_here(at)
    connections: list[http.client.HTTPConnection] = []
    out_of_time = threading.Event()

    def hang_up() -> None:
        out_of_time.set()
        for connection in connections:
            if connection.sock is not None:
                with suppress(OSError):
                    connection.sock.shutdown(socket.SHUT_RDWR)

    clock = threading.Timer(bounds.seconds, hang_up)
    clock.daemon = True
    clock.start()
    try:
        for _ in range(bounds.redirections + 1):
            if out_of_time.is_set():
                raise TimeoutError
            connection = _connect(at, bounds)
            connections.append(connection)
            answer = _ask(connection, at, request.accept)
            if answer.status not in _MOVED:
                taken = _take(answer, at, request.address, bounds)
                if out_of_time.is_set():  # it was cut off, and may look whole
                    raise TimeoutError
                return taken
            at = _place(urljoin(at.geturl(), answer.getheader("location", "")), request.address)
            if _is_here(at) and not ours:
                raise NotReached(f"{request.address}: it leads back to this machine; give the address itself")
    except (OSError, http.client.HTTPException, UnicodeError, ValueError) as error:
        late = out_of_time.is_set() or isinstance(error, TimeoutError)
        what = f"no answer came within {bounds.seconds:.0f} seconds" if late else f"it was not reached ({error})"
        raise NotReached(f"{request.address}: {what}; try again later, or save it from a browser") from error
    finally:
        clock.cancel()
        for connection in connections:
            connection.close()
    raise NotReached(f"{request.address}: it was sent on more than {bounds.redirections} times; open it in a browser")


def _place(address: str, asked: str) -> SplitResult:
    """An address that may be gone to.

    Raises:
        NotReached: It is none, or not to be reached safely.
    """
    try:
        at = urlsplit(address)
        safe = bool(at.hostname) and (at.scheme == "https" or (at.scheme == "http" and _is_here(at)))
        _ = at.port
    except ValueError:
        safe = False
    if not safe or at.username is not None:
        raise NotReached(f"{asked}: only addresses that begin with https:// are asked; save the page from a browser")
    return at


def _is_here(at: SplitResult) -> bool:
    return at.hostname in _SELF


def _connect(at: SplitResult, bounds: Bounds) -> http.client.HTTPConnection:
    host = at.hostname or ""
    if at.scheme == "https":
        return http.client.HTTPSConnection(host, at.port, timeout=bounds.seconds, context=ssl.create_default_context())
    return http.client.HTTPConnection(host, at.port, timeout=bounds.seconds)


def _ask(connection: http.client.HTTPConnection, at: SplitResult, accept: str) -> http.client.HTTPResponse:
    path = (at.path or "/") + (f"?{at.query}" if at.query else "")
    headers = {"Accept": accept, "Accept-Encoding": "identity", "User-Agent": f"fairhand/{__version__}"}
    connection.request("GET", path, headers=headers)
    return connection.getresponse()


def _take(answer: http.client.HTTPResponse, at: SplitResult, asked: str, bounds: Bounds) -> WebAnswer:
    """An answer read whole."""
    if answer.status == 404:
        raise NotReached(f"{asked}: nothing is known there of it; look at the number or the address")
    if answer.status != 200:
        raise NotReached(f"{asked}: it was refused ({answer.status} {answer.reason}); try again later")
    if answer.getheader("content-encoding", "identity").lower() not in {"identity", ""}:
        raise NotReached(f"{asked}: it came compressed though that was not asked for; save it from a browser")
    data = bytearray()
    while piece := answer.read(min(_PIECE, bounds.most_bytes + 1 - len(data))):
        data += piece
        if len(data) > bounds.most_bytes:
            raise NotReached(f"{asked}: it is larger than {bounds.most_bytes // 2**20} MB; save it from a browser")
    if answer.length:
        raise http.client.IncompleteRead(bytes(data), answer.length)
    media_type = answer.getheader("content-type", "").partition(";")[0].strip().lower()
    return WebAnswer(at.geturl(), media_type, bytes(data))
