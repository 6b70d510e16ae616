"""The page as tests see it: a client that holds the secret, and a real browser before a real server."""

from __future__ import annotations

import datetime as dt
import shutil
import socket
import threading
import time
from collections.abc import Callable, Iterator
from contextlib import AbstractContextManager, contextmanager
from pathlib import Path

import pytest
import uvicorn
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, Page, sync_playwright
from starlette.testclient import TestClient

from fairhand.web.app import make_app

SECRET = "the-secret-of-this-run"  # noqa: S105 - of the tests alone
AT = dt.datetime(2027, 2, 8, 12, tzinfo=dt.UTC)
"""The hour at which the demo's deadlines are judged."""
HERE = "http://127.0.0.1"
CHROMIUM = next((found for name in ("chromium", "chromium-browser") if (found := shutil.which(name))), None)


@pytest.fixture
def desk(demo_desk: Path, tmp_path: Path) -> Path:
    """A copy of the demo's desk, which holds the paper ``tram-libraries``."""
    return Path(shutil.copytree(demo_desk, tmp_path / "desk"))


@pytest.fixture
def open_desk() -> Callable[[Path], TestClient]:
    """Opens any folder as a desk: the client of a browser on this machine that was told the secret."""

    def open_(desk: Path) -> TestClient:
        app = make_app(desk, SECRET, at=AT)
        client = TestClient(app, base_url=HERE, headers={"origin": HERE}, follow_redirects=False)
        assert client.get(f"/?key={SECRET}").status_code == 303
        return client

    return open_


@pytest.fixture
def client(desk: Path, open_desk: Callable[[Path], TestClient]) -> TestClient:
    """A client that holds the secret, before a copy of the demo's desk."""
    return open_desk(desk)


@contextmanager
def serving(desk: Path, port: int = 0) -> Iterator[str]:
    """The address, key included, of a real server on a desk, as long as it is needed."""
    with socket.socket(socket.AF_INET, socket.SOCK_STREAM, socket.IPPROTO_TCP) as listening:
        listening.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        listening.bind(("127.0.0.1", port))
        listening.listen()
        server = uvicorn.Server(
            uvicorn.Config(make_app(desk, SECRET, at=AT), log_level="warning", timeout_graceful_shutdown=1)
        )
        thread = threading.Thread(target=server.run, kwargs={"sockets": [listening]})
        thread.start()
        while not server.started:
            time.sleep(0.01)
        try:
            yield f"http://127.0.0.1:{listening.getsockname()[1]}/?key={SECRET}"
        finally:
            server.should_exit = True
            thread.join()


@pytest.fixture
def serve() -> Callable[..., AbstractContextManager[str]]:
    """Serves any folder as a desk, at any port."""
    return serving


@pytest.fixture
def served(desk: Path) -> Iterator[str]:
    """The address, key included, of a real server on a copy of the demo's desk."""
    with serving(desk) as address:
        yield address


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """Chromium without a window; the tests that need it are skipped where it is missing."""
    if CHROMIUM is None:
        pytest.skip("no Chromium on this machine: install the package chromium, or let `make test` do it")
    with sync_playwright() as playwright:
        opened = playwright.chromium.launch(executable_path=CHROMIUM, args=["--no-sandbox", "--disable-gpu"])
        yield opened
        opened.close()


@pytest.fixture
def browser_page(browser: Browser, served: str) -> Iterator[Page]:
    """A page of the browser that has opened the desk; whatever it reports as an error fails the test."""
    context = browser.new_context()
    page = context.new_page()
    faults: list[str] = []
    page.on("pageerror", lambda error: faults.append(str(error)))
    page.on("console", lambda message: faults.append(message.text) if message.type == "error" else None)
    page.goto(served)
    yield page
    context.close()
    assert faults == []


@pytest.fixture(scope="session")
def hindrances() -> Callable[[Page], list[str]]:
    """What axe-core finds on a page that would hinder somebody: rule, and element."""

    def find(page: Page) -> list[str]:
        found = Axe().run(page).response["violations"]
        return [f"{one['id']}: {node['html']}" for one in found for node in one["nodes"]]

    return find
