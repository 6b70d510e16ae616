"""What the first page costs, beside an empty Starlette application served the same way, as ratios measured in one run.

Both are started as processes of their own that serve on a free port; the time runs until their first page has come in
whole. Then both stand, and the same page is asked for again and again.
"""

from __future__ import annotations

import http.client
import re
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from urllib.parse import urlsplit

from measuring import in_turn, measured, over, tell

from fairhand.session.demo import lay_out_demo

EMPTY = """
import socket, uvicorn
from starlette.applications import Starlette
from starlette.responses import HTMLResponse
from starlette.routing import Route
app = Starlette(routes=[Route("/", lambda request: HTMLResponse("<!doctype html><title>Empty</title>"))])
with socket.socket(socket.AF_INET, socket.SOCK_STREAM, socket.IPPROTO_TCP) as listening:
    listening.bind(("127.0.0.1", 0))
    listening.listen()
    print(f"http://127.0.0.1:{listening.getsockname()[1]}/", flush=True)
    uvicorn.Server(uvicorn.Config(app, log_level="warning", access_log=False)).run(sockets=[listening])
"""
ASKED = 50
"""How often a standing page is asked for in each of the runs."""


class Visitor:
    """A browser's part: it follows the first address to the page, and keeps the cookie."""

    def __init__(self, address: str) -> None:
        """The page is asked for until the server answers."""
        parts = urlsplit(address)
        self.connection = http.client.HTTPConnection(str(parts.hostname), int(parts.port or 0))
        self.headers: dict[str, str] = {}
        self.where = f"{parts.path}?{parts.query}" if parts.query else parts.path
        answer = self.ask()
        if answer.status == 303:
            self.headers["cookie"] = str(answer.getheader("set-cookie")).split(";")[0]
            self.where = str(answer.getheader("location"))
            answer = self.ask()
        if answer.status != 200:
            sys.exit(f"{address}: {answer.status}")

    def ask(self) -> http.client.HTTPResponse:
        """The page, read whole."""
        self.connection.request("GET", self.where, headers=self.headers)
        answer = self.connection.getresponse()
        answer.read()
        return answer


@contextmanager
def serving(command: list[str]) -> Iterator[str]:
    """The address that a command prints once it serves; it is stopped afterwards."""
    with subprocess.Popen(command, stdout=subprocess.PIPE, text=True) as process:
        line = process.stdout.readline() if process.stdout else ""
        found = re.search(r"http://\S+", line)
        if found is None:
            sys.exit(f"{command[:3]} printed no address: {line}")
        yield found[0]
        process.terminate()


def first_page(command: list[str]) -> float:
    """Seconds from the start of the process until its first page is there."""
    begun = time.perf_counter()
    with serving(command) as address:
        Visitor(address)
        return time.perf_counter() - begun


def main() -> None:
    """Measures and prints."""
    empty = [sys.executable, "-c", EMPTY]
    with tempfile.TemporaryDirectory(prefix="fairhand-bench-") as name:
        desk = Path(name) / "desk"
        paper = lay_out_demo(desk)
        ours = [sys.executable, "-u", "-m", "fairhand", "open", "--no-browser", str(desk)]
        first_page(ours)  # compiles, as an installation does
        firsts, floors = in_turn(lambda: first_page(ours), lambda: first_page(empty))
        tell("first page of the desk over that of an empty application", over(firsts, floors), "told, no goal set")
        with serving(ours) as address, serving(empty) as other:
            visitor, floor = Visitor(address), Visitor(other)
            for leaf in ("", "brief", "draft", "copy-edit", "verdict"):
                visitor.where = f"/paper/{paper.name}/{leaf}" if leaf else "/"
                visitor.ask()
                pages, empties = in_turn(
                    lambda: measured(lambda: [visitor.ask() for _ in range(ASKED)]),
                    lambda: measured(lambda: [floor.ask() for _ in range(ASKED)]),
                    runs=3,
                )
                each = statistics.median(pages) / ASKED * 1000
                tell(f"{leaf or 'desk'}, warm, {each:.1f} ms, over the empty page", over(pages, empties), "told")


if __name__ == "__main__":
    main()
