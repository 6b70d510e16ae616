"""Takes a picture of every page of the demo's desk: ``make pictures``, or ``make pictures ARGS="--desk FOLDER"``.

They stand in the folder ``pictures``, which is not committed: at three widths, at night and in print. The demo's paper
was worked at before, so that its pages have something to show.
"""

from __future__ import annotations

import argparse
import datetime as dt
import shutil
import socket
import sys
import tempfile
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

import uvicorn
from playwright.sync_api import Browser, sync_playwright

from fairhand.session.demo import PAPER, lay_out_demo
from fairhand.web.app import make_app
from fairhand.web.parts import LEAVES
from fairhand.web.routes import list_routes, working_leaves

ROOT = Path(__file__).resolve().parents[1]
SECRET = "pictures"  # noqa: S105 - of this run alone, on this machine alone
AT = dt.datetime(2027, 2, 8, 12, tzinfo=dt.UTC)
HEIGHT = 900
INNER = ("jottings/sorted", "sources/add", "final/reading")
"""Pages of a paper that are reached from within others."""
WAYS: dict[str, dict[str, Any]] = {
    "1440": {"viewport": {"width": 1440, "height": HEIGHT}},
    "1024": {"viewport": {"width": 1024, "height": HEIGHT}},
    "390": {"viewport": {"width": 390, "height": HEIGHT}},
    "night": {"viewport": {"width": 1440, "height": HEIGHT}, "color_scheme": "dark"},
}
"""The name of a kind of picture, and how the browser is set for it."""


def list_paths(paper: str) -> dict[str, str]:
    """Every page that there is, by the name of its pictures."""
    leaves = [leaf for leaf in LEAVES if leaf in working_leaves(list_routes())]
    return {
        "desk": "/",
        "new": "/new",
        "all-plans": "/plan",
        "hours": "/plan/hours",
        "warm-up": "/warm-up",
        **{leaf: f"/paper/{paper}/{leaf}" for leaf in leaves},
        **{path.replace("/", "-"): f"/paper/{paper}/{path}" for path in INNER},
    }


@contextmanager
def serving(desk: Path, at: dt.datetime = AT) -> Iterator[str]:
    """The address of a server on the desk, without its last stroke."""
    with socket.socket() as listening:
        listening.bind(("127.0.0.1", 0))
        listening.listen()
        config = uvicorn.Config(make_app(desk, SECRET, at=at), log_level="warning", timeout_graceful_shutdown=1)
        server = uvicorn.Server(config)
        thread = threading.Thread(target=server.run, kwargs={"sockets": [listening]})
        thread.start()
        while not server.started:
            time.sleep(0.02)
        try:
            yield f"http://127.0.0.1:{listening.getsockname()[1]}"
        finally:
            server.should_exit = True
            thread.join()


def take(browser: Browser, address: str, paths: dict[str, str], target: Path) -> None:
    """Every page in every way, and in print."""
    for way, settings in WAYS.items():
        with browser.new_context(**settings) as context:
            page = context.new_page()
            page.goto(f"{address}/?key={SECRET}")
            for name, path in paths.items():
                page.goto(address + path)
                page.wait_for_timeout(300)
                page.screenshot(path=target / f"{name}-{way}.png", full_page=True)
                if way == "1440":
                    page.pdf(path=target / f"{name}-print.pdf", format="Letter", prefer_css_page_size=True)


def find_chromium() -> str:
    """The path of Chromium; without it the program ends with a line that says so."""
    return (
        shutil.which("chromium")
        or shutil.which("chromium-browser")
        or sys.exit("No Chromium on this machine: install the package chromium.")
    )


def _lay_out(scratch: Path) -> Path:
    """The demo's desk, worked on."""
    from worked_on import work_on

    desk = lay_out_demo(scratch).parent
    work_on(desk, AT)
    return desk


def main() -> int:
    """Takes them all, and says where they are."""
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("--desk", type=Path, help="another desk than the demo's")
    asked.add_argument("--paper", default=PAPER, help="the folder of its paper")
    asked.add_argument("--only", action="append", metavar="PAGE", help="only this page, as draft; may be given again")
    given = asked.parse_args()
    chromium = find_chromium()
    target = ROOT / "pictures"
    target.mkdir(exist_ok=True)
    paths = {name: path for name, path in list_paths(given.paper).items() if not given.only or name in given.only}
    with tempfile.TemporaryDirectory(prefix="fairhand-pictures-") as scratch, sync_playwright() as playwright:
        desk = given.desk or _lay_out(Path(scratch))
        browser = playwright.chromium.launch(executable_path=chromium, args=["--no-sandbox"])
        with serving(desk) as address:
            take(browser, address, paths, target)
        browser.close()
    print(f"{len(paths)} pages, each in {len(WAYS) + 1} ways, are in {target}.")
    return 0


if __name__ == "__main__":
    sys.exit(main())
