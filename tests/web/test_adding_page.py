"""Sources added in the page: files of every kind taken in, told with where each field came from, joined when asked."""

from __future__ import annotations

import json
import re
import threading
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Page, expect
from starlette.testclient import TestClient

from fairhand.session.job import Job
from fairhand.session.sources.adding import Added

PAPER = "/paper/tram-libraries"
SOURCES = f"{PAPER}/sources"
ADD = f"{SOURCES}/add"
ADDING = f"{SOURCES}/adding"
EBB = (
    "<!DOCTYPE html><title>Ebb | Shore</title><meta name='citation_title' content='The ebb at the quay'>"
    "<meta name='citation_author' content='Ada Lind'><meta name='citation_doi' content='10.5555/{}'><p>The ebb."
)
PNG = bytes.fromhex(
    "89504e470d0a1a0a0000000d4948445200000001000000010806000000 1f15c4890000000d49444154789c6360606060000000050001"
    "a5f645400000000049454e44ae426082".replace(" ", "")
)
"""One transparent dot."""


@pytest.fixture
def listed(desk: Path) -> Callable[[], dict[str, dict[str, Any]]]:
    """The records of the paper's list, by id."""
    return lambda: {r["id"]: r for r in json.loads((desk / "tram-libraries" / "sources.json").read_text("utf-8"))}


def send(client: TestClient, *files: tuple[str, bytes], **fields: str) -> str:
    """What is shown once the files were sent and taken in."""
    sent = client.post(ADD, data=fields, files=[("list", file) for file in files])
    assert sent.headers["location"] == ADDING
    page = client.get(ADDING).text
    while "Taking in sources" in page:
        page = client.get(ADDING).text
    return page


def test_files_are_taken_in_and_told(client: TestClient, listed: Callable[[], dict[str, dict[str, Any]]]) -> None:
    """Each new source with where its fields came from and what only the writer can write; what is broken, in a line."""
    page = send(client, ("ebb.html", EBB.format(1).encode()), ("bad.pdf", b"%PDF-1.4 cut short"))
    assert "The ebb at the quay" in page
    assert "Authors, title, DOI from its citation tags" in " ".join(page.split())
    assert "yours to write: when it appeared" in page
    assert "bad.pdf: it is broken" in page
    assert listed()["lind-nd"]["DOI"] == "10.5555/1"
    assert "bad.pdf" in client.get(ADD).text
    assert "One file waits in the inbox" in client.get(SOURCES).text
    source = client.get(f"{SOURCES}/lind-nd").text
    assert "From its citation tags" in source
    assert 'aria-describedby="origin-title"' in source
    assert "The ebb." in client.get(f"{SOURCES}/lind-nd/text").text


def test_a_field_that_is_corrected_is_the_writers_own(client: TestClient) -> None:
    """Nothing is told of where it came from any more."""
    send(client, ("ebb.html", EBB.format(2).encode()))
    page = client.get(f"{SOURCES}/lind-nd").text
    seen = re.search(r'name="seen" value="([^"]*)"', page)
    assert seen is not None
    fields = {"title": "The ebb", "author": "Lind, Ada", "DOI": "10.5555/2", "type": "webpage", "seen": seen[1]}
    assert client.post(f"{SOURCES}/lind-nd", data=fields).status_code == 303
    page = client.get(f"{SOURCES}/lind-nd").text
    assert 'id="origin-title"' not in page
    assert 'id="origin-author"' in page


def test_lists_and_files_go_together(client: TestClient, listed: Callable[[], dict[str, dict[str, Any]]]) -> None:
    """A list among files joins too, and leaves the inbox."""
    page = send(client, ("a.nbib", b"PMID- 7\nTI  - Fen\nFAU - Dun, Eva\nDP  - 2001"), ("n.txt", b"Notes on reeds.\n"))
    assert "1 of a.nbib joined the list" in page
    assert "dun-2001" in listed()
    assert "In the inbox" not in client.get(ADD).text


def test_what_waits_in_the_inbox_is_taken_in_one_step(client: TestClient, desk: Path) -> None:
    """As a phone or a browser saved it there."""
    inbox = desk / "tram-libraries" / "inbox"
    inbox.mkdir()
    (inbox / "ebb.html").write_text(EBB.format(3), "utf-8")
    assert "ebb.html" in client.get(ADD).text
    assert client.post(f"{ADD}/inbox").headers["location"] == ADDING
    assert "The ebb at the quay" in client.get(ADDING).text
    assert list(inbox.iterdir()) == []


def test_one_work_twice_is_offered_and_joined(
    client: TestClient, listed: Callable[[], dict[str, dict[str, Any]]]
) -> None:
    """Never silently."""
    client.post(ADD, data={"pasted": "@misc{ebb, title={Ebb}, doi={10.5555/4}, year=2016}"})
    page = send(client, ("ebb.html", EBB.format(4).encode()))
    assert "One work, or two?" in page
    assert "the same DOI" in page
    assert {"ebb", "lind-nd"} <= set(listed())
    joined = client.post(f"{ADDING}/join", data={"keep": "ebb", "other": "lind-nd"})
    assert joined.headers["location"] == f"{SOURCES}/ebb"
    assert "lind-nd" not in listed()
    assert "One work, or two?" not in client.get(ADDING).text
    assert client.post(f"{ADDING}/join", data={"keep": "ebb", "other": "lind-nd"}).status_code == 409


def test_nothing_is_asked_elsewhere_until_it_is_allowed(client: TestClient, desk: Path) -> None:
    """What would leave the machine is said; then there is a field; and it is taken back as easily."""
    page = client.get(ADD).text
    assert "What leaves this machine" in page
    assert 'name="number"' not in page
    assert "Not taken" in send(client, number="10.5555/x")
    client.post(f"{ADD}/outside", data={"do": "allow"})
    assert "outside = true" in (desk / "desk.toml").read_text("utf-8")
    assert 'name="number"' in client.get(ADD).text
    client.post(f"{ADD}/outside", data={"do": "no"})
    assert 'name="number"' not in client.get(ADD).text
    assert client.post(ADD, data={"number": "no such thing"}).status_code == 415


def test_a_photograph_is_a_page_to_read(client: TestClient) -> None:
    """Without a text it is shown with its source, to be noted from by hand."""
    send(client, ("lane.png", PNG))
    page = client.get(f"{SOURCES}/lane-nd").text
    address = re.search(r'src="([^"]*photograph[^"]*)"', page)
    assert address is not None
    picture = client.get(address[1])
    assert (picture.content, picture.headers["content-type"]) == (PNG, "image/png")
    assert client.get(f"{SOURCES}/lund-1999/photograph").status_code == 404


def test_work_that_takes_long_shows_how_far_it_is_and_stops(client: TestClient) -> None:
    """Its page says so, sends nobody away, and another piece of work waits its turn."""
    going = threading.Event()

    def work(job: Job[Added]) -> Added:
        job.count(2)
        going.set()
        while not job.cancelled:
            going.wait(0.01)
        return Added(left=3)

    job = Job(work, total=5)
    client.app.app.state.jobs["tram-libraries"] = job  # type: ignore[attr-defined]
    job.begin()
    going.wait(5)
    assert "2 of 5 are done" in client.get(ADDING).text
    assert client.post(f"{ADD}/inbox").status_code == 409
    client.post(f"{ADDING}/stop")
    assert "stopped with 3 left" in client.get(ADDING).text


def test_work_that_ends_while_its_page_is_made_is_shown_as_going_on(client: TestClient) -> None:
    """Never as over with nothing to tell: the next look shows what came of it."""

    class Ending(Job[Added]):
        """It ends right after it was first asked whether it has."""

        @property
        def ended(self) -> bool:
            before = super().ended
            self.run()
            return before

    client.app.app.state.jobs["tram-libraries"] = Ending(lambda _: Added(left=3))  # type: ignore[attr-defined]
    page = client.get(ADDING).text
    assert "Taking in sources" in page
    assert "0 of 0 are done" in page
    assert "stopped with 3 left" in client.get(ADDING).text


def test_nothing_hinders_anybody_who_adds(
    browser: Browser, served: str, desk: Path, hindrances: Callable[[Page], list[str]], tmp_path: Path
) -> None:
    """By keyboard, narrow, at night, and without scripts; what axe-core finds is nothing."""
    (tmp_path / "ebb.html").write_text(EBB.format(5), "utf-8")
    for way in ({"java_script_enabled": False}, {"viewport": {"width": 390, "height": 844}, "color_scheme": "dark"}):
        with browser.new_context(**way) as context:
            page = context.new_page()
            page.goto(served)
            page.goto(served.partition("/?")[0] + ADD)
            page.get_by_label("The works themselves").set_input_files(tmp_path / "ebb.html")
            page.get_by_role("button", name="Add", exact=True).press("Enter")
            while way.get("java_script_enabled") is False and page.title().startswith("Taking in sources"):
                page.get_by_role("link", name="How far it is").press("Enter")  # as long as a busy machine takes
            expect(page.locator("h1")).to_have_text("Sources taken in", timeout=60_000)
            if way.get("java_script_enabled", True):
                for path in (ADDING, ADD, f"{SOURCES}/lind-nd"):
                    page.goto(served.partition("/?")[0] + path)
                    assert hindrances(page) == [], path
                    assert page.evaluate("document.documentElement.scrollWidth <= window.innerWidth"), path
