"""The page served on this machine alone."""

from __future__ import annotations

import datetime as dt
import secrets
import socket
import threading
import webbrowser
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path

from fairhand.errors import FairhandError

ADDRESS = "127.0.0.1"


def serve(
    desk: Path, say: Callable[[str], None], *, open_browser: bool = True, port: int = 0, at: dt.datetime | None = None
) -> None:
    """Serves the desk until it is stopped.

    Args:
        desk: The desk's folder.
        say: How to tell the address, and how to stop.
        open_browser: Whether the browser is opened at that address.
        port: The port; a free one, where it is 0.
        at: The hour to judge deadlines by; the clock's, where it is None.

    Raises:
        FairhandError: The port is taken.
    """
    import uvicorn

    from fairhand.web.app import make_app

    secret = secrets.token_urlsafe(24)
    # named as TCP, or asyncio would not send each part of an answer at once, and every page would wait for 40 ms
    with socket.socket(socket.AF_INET, socket.SOCK_STREAM, socket.IPPROTO_TCP) as listening:
        try:
            listening.bind((ADDRESS, port))
            listening.listen()
        except OSError as error:
            message = f"port {port}: it cannot be had ({error.strerror}); leave --port out, and a free one is taken"
            raise FairhandError(message) from error
        address = f"http://{ADDRESS}:{listening.getsockname()[1]}/?key={secret}"
        config = uvicorn.Config(
            make_app(desk, secret, at=at),
            log_level="warning",
            access_log=False,
            server_header=False,
            timeout_graceful_shutdown=1,
        )
        say(f"The desk is open at {address}")
        say("To stop it, press Ctrl-C here.")
        if open_browser:
            threading.Thread(target=webbrowser.open, args=(address,), daemon=True).start()
        with suppress(KeyboardInterrupt):
            uvicorn.Server(config).run(sockets=[listening])
        say("Stopped. Everything that was saved is in the papers’ folders.")
