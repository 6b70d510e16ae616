"""Draft and jottings in the page."""

from __future__ import annotations

import html
import re
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect
from starlette.testclient import TestClient

from fairhand.desk.seen import hash_bytes

PAPER = "/paper/tram-libraries"
SMALL = {"hx-request": "true"}


def seen_of(page: str) -> str:
    """The hash that a page was made from."""
    found = re.search(r'name="seen" value="([^"]*)"', page)
    assert found is not None
    return found[1]


@pytest.mark.parametrize(("leaf", "file"), [("draft", "draft.md"), ("jottings", "jottings.md")])
def test_what_is_typed_is_saved_as_it_was_typed(client: TestClient, desk: Path, leaf: str, file: str) -> None:
    """The page shows the file whole; what is sent is what stands there then, and the page can be loaded again."""
    path = desk / "tram-libraries" / file
    page = client.get(f"{PAPER}/{leaf}").text
    assert (
        html.escape(path.read_text("utf-8"), quote=True).replace("&quot;", "&#34;").replace("&#x27;", "&#39;") in page
    )
    sent = client.post(f"{PAPER}/{leaf}", data={"seen": seen_of(page), "text": "\r\nRain.\r\n\r\nMore  rain. \r\n"})
    assert (sent.status_code, sent.headers["location"]) == (303, f"{PAPER}/{leaf}")
    assert path.read_bytes() == b"\nRain.\n\nMore  rain. \n"


def test_a_first_text_is_begun(client: TestClient, desk: Path) -> None:
    """Where there is no file, the page says what to do first, and saving makes it."""
    path = desk / "tram-libraries" / "jottings.md"
    path.unlink()
    page = client.get(f"{PAPER}/jottings").text
    assert "whatever comes to mind" in page
    client.post(f"{PAPER}/jottings", data={"seen": seen_of(page), "text": "rain"})
    assert path.read_text("utf-8") == "rain"


def test_a_pause_is_answered_with_a_word_and_a_hash(client: TestClient, desk: Path) -> None:
    """The answer is a piece of the page; the next pause goes on from it, and a text sent twice is no conflict."""
    seen = seen_of(client.get(f"{PAPER}/draft").text)
    for text in ("One.", "One. Two.", "One. Two."):
        kept = client.post(f"{PAPER}/draft", data={"seen": seen, "text": text}, headers=SMALL)
        assert kept.status_code == 200
        assert "<html" not in kept.text
        assert kept.headers["fairhand-state"]
        seen = seen_of(kept.text)
        assert seen == hash_bytes((desk / "tram-libraries" / "draft.md").read_bytes())


def test_nothing_typed_is_lost_to_a_change_outside(client: TestClient, desk: Path) -> None:
    """A pause says so and replaces nothing; saving shows both, and the choice is carried out."""
    path = desk / "tram-libraries" / "draft.md"
    seen = seen_of(client.get(f"{PAPER}/draft").text)
    path.write_text("Theirs.\n", "utf-8")
    kept = client.post(f"{PAPER}/draft", data={"seen": seen, "text": "Mine.\n"}, headers=SMALL)
    assert kept.status_code == 409
    assert "Nothing is lost" in kept.text
    assert seen_of(kept.text) == seen
    both = client.post(f"{PAPER}/draft", data={"seen": seen, "text": "Mine.\n"})
    assert both.status_code == 409
    assert "Mine." in both.text
    assert "Theirs." in both.text
    assert path.read_text("utf-8") == "Theirs.\n"
    client.post(f"{PAPER}/draft", data={"seen": seen_of(both.text), "text": "Mine.\n"})
    assert path.read_text("utf-8") == "Mine.\n"


def test_the_draft_shows_nothing_but_itself_until_asked(client: TestClient) -> None:
    """Counts, citations and asides come on request, each with its own address."""
    quiet = client.get(f"{PAPER}/draft").text
    assert "words count" not in quiet
    sent = client.post(f"{PAPER}/draft", data={"seen": "", "text": "", "see": "counts"})
    assert sent.status_code == 409
    assert "words count" in client.get(f"{PAPER}/draft?see=counts").text
    cites = client.get(f"{PAPER}/draft?see=citations").text
    assert cites.count("In doubt: ") == 1
    assert "[NB" in client.get(f"{PAPER}/draft?see=asides").text.split("</textarea>")[1]
    assert client.get(f"{PAPER}/draft?see=anything").status_code == 200


def test_a_script_in_a_draft_is_text(client: TestClient, desk: Path) -> None:
    """Neither the end of the field nor a script in the draft is markup."""
    (desk / "tram-libraries" / "draft.md").write_text("</textarea><script>alert(1)</script> [NB: <b>x</b>]\n", "utf-8")
    for see in ("", "?see=counts", "?see=citations", "?see=asides"):
        page = client.get(f"{PAPER}/draft{see}").text
        assert "<script>alert" not in page
        assert "<b>x" not in page


def test_a_pause_keeps_what_is_typed(browser_page: Page, desk: Path) -> None:
    """In a browser: after a pause the file holds it, and the next pause goes on from there."""
    path = desk / "tram-libraries" / "draft.md"
    browser_page.goto(browser_page.url.rstrip("/") + f"{PAPER}/draft")
    field = browser_page.get_by_role("textbox", name="Draft")
    field.fill("Rain.")
    expect(browser_page.locator("#kept")).to_contain_text("Kept.")
    assert path.read_text("utf-8") == "Rain."
    field.press_sequentially(" Tide.")
    browser_page.wait_for_timeout(900)
    assert path.read_text("utf-8") == "Rain. Tide."
    assert field.input_value() == "Rain. Tide."


def test_a_change_outside_leaves_what_is_typed(browser: Browser, served: str, desk: Path) -> None:
    """In a browser: the page says so, the field keeps the writer's words, and saving shows both."""
    path = desk / "tram-libraries" / "draft.md"
    with browser.new_context() as context:
        context.add_init_script("window.EventSource = class { close() {} }")  # the news of the change comes too late
        page = context.new_page()
        page.goto(served)
        page.goto(page.url.rstrip("/") + f"{PAPER}/draft")
        path.write_text("Theirs.\n", "utf-8")
        field = page.get_by_role("textbox", name="Draft")
        field.fill("Mine.")
        expect(page.locator("#kept")).to_contain_text("Nothing is lost")
        assert field.input_value() == "Mine."
        assert path.read_text("utf-8") == "Theirs.\n"
        page.get_by_role("button", name="Save").click()
        expect(page.locator("#typed")).to_have_value("Mine.")
        expect(page.locator("#on-disk")).to_have_value("Theirs.\n")


def test_without_scripts_the_draft_is_written(browser: Browser, served: str, desk: Path) -> None:
    """The button saves, and leads to what was asked for."""
    with browser.new_context(java_script_enabled=False, viewport={"width": 390, "height": 844}) as context:
        page = context.new_page()
        page.goto(served)
        page.goto(page.url.rstrip("/") + f"{PAPER}/draft")
        page.get_by_role("textbox", name="Draft").fill("Rain (Lund 61).")
        page.get_by_role("button", name="Citations").click()
        assert "Lund" in page.locator("#citations").inner_text()
    assert (desk / "tram-libraries" / "draft.md").read_text("utf-8") == "Rain (Lund 61)."
