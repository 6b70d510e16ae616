"""The page as it is started and stopped from the terminal."""

from __future__ import annotations

import signal
import socket
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from urllib.error import HTTPError
from urllib.request import urlopen

import pytest
from playwright.sync_api import Browser, expect

pytestmark = pytest.mark.skipif(sys.platform == "win32", reason="stopped by a signal that Windows has not")


@contextmanager
def opened(desk: Path, *options: str) -> Iterator[subprocess.Popen[str]]:
    """``fairhand open`` in a process of its own; Ctrl-C ends it even where a shell runs the tests in the background."""
    command = [sys.executable, "-m", "fairhand", "open", str(desk), "--no-browser", *options]
    kept = signal.signal(signal.SIGINT, signal.SIG_DFL)  # what a child begins with
    try:
        process = subprocess.Popen(command, stdout=subprocess.PIPE, encoding="utf-8")
    finally:
        signal.signal(signal.SIGINT, kept)
    with process:
        try:
            yield process
        finally:
            process.kill()


@pytest.fixture
def started(desk: Path) -> Iterator[subprocess.Popen[str]]:
    """The page of a desk, on a day in February."""
    with opened(desk, "--on", "2027-02-08") as process:
        yield process


def read_address(process: subprocess.Popen[str]) -> str:
    """The address that was printed."""
    assert process.stdout is not None
    return process.stdout.readline().split()[-1]


def test_it_prints_where_it_is_and_how_to_stop_it(started: subprocess.Popen[str]) -> None:
    """The address works at once, without its secret it does not, and Ctrl-C ends it well."""
    address = read_address(started)
    assert address.startswith("http://127.0.0.1:")
    assert started.stdout is not None
    assert "Ctrl-C" in started.stdout.readline()
    with pytest.raises(HTTPError, match="403"):
        urlopen(address.partition("?")[0], timeout=20)  # noqa: S310 - an address of this machine
    started.send_signal(signal.SIGINT)
    assert "Stopped" in started.stdout.read()
    assert started.wait(20) == 0


def test_a_folder_that_is_not_there_yet_is_made(tmp_path: Path) -> None:
    """It is said, so that a name that was mistyped is noticed; nothing else is written into it."""
    desk = tmp_path / "new" / "desk"
    with opened(desk) as process:
        assert process.stdout is not None
        assert process.stdout.readline() == f"{desk} is a new folder.\n"
        assert read_address(process).startswith("http://127.0.0.1:")
        process.send_signal(signal.SIGINT)
        process.wait(20)
    assert list(desk.iterdir()) == []


def test_a_port_that_is_taken_is_told_in_one_line(desk: Path) -> None:
    """What is wrong, and what to do."""
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        taken.listen()
        port = str(taken.getsockname()[1])
        command = [sys.executable, "-m", "fairhand", "open", str(desk), "--no-browser", "--port", port]
        done = subprocess.run(command, capture_output=True, check=False, encoding="utf-8")
    assert done.returncode == 2
    assert done.stderr.count("\n") == 1
    assert "--port" in done.stderr


def test_a_page_that_is_left_alone_says_so(browser: Browser, started: subprocess.Popen[str]) -> None:
    """When the program ends, the page stays as it is and tells how to go on."""
    with browser.new_context() as context:
        page = context.new_page()
        page.goto(read_address(started))
        page.wait_for_load_state("load")
        started.send_signal(signal.SIGINT)
        expect(page.get_by_role("status")).to_contain_text("not running any more")
        expect(page.get_by_role("heading", name="Work in hand")).to_be_visible()
