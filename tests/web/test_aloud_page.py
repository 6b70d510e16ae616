"""The paper read aloud in the page."""

from __future__ import annotations

import html
import json
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page
from starlette.testclient import TestClient

ALOUD = "/paper/tram-libraries/aloud"
VOICES = """
window.uttered = [];
const voices = [
  { name: "Elsewhere", lang: "en-GB", voiceURI: "far", localService: false },
  { name: "Here", lang: "en-GB", voiceURI: "near", localService: true },
];
class Utterance { constructor(text) { this.text = text; } }
Object.defineProperty(window, "SpeechSynthesisUtterance", { value: Utterance });
Object.defineProperty(window, "speechSynthesis", { value: {
  getVoices: () => voices,
  speak: (one) => { window.uttered.push(one); window.now = one; },
  cancel: () => { window.cancelled = true; },
  addEventListener: () => {},
} });
"""
"""Voices that speak when the test lets them."""


@pytest.fixture
def paper(desk: Path) -> Path:
    """The paper's folder."""
    return desk / "tram-libraries"


def test_the_time_is_told_beforehand(client: TestClient) -> None:
    """At 183 words a minute without citations and notes; what is chosen changes it, without a script too."""
    page = html.unescape(client.get(ALOUD).text)
    assert "It takes about 5 minutes: 858 words at 183 a minute." in page
    assert 'data-bare="It was a very cheap idea."' in page
    page = client.get(f"{ALOUD}?pace=100&citations=read").text
    assert "at 100 a minute" in page
    assert "at 400 a minute" in client.get(f"{ALOUD}?pace=9999").text
    assert "at 183 a minute" in client.get(f"{ALOUD}?pace=fast").text


def test_an_empty_draft_is_not_read(client: TestClient, paper: Path) -> None:
    """Which is said."""
    (paper / "draft.md").write_text("", "utf-8")
    assert "There is no draft yet" in client.get(ALOUD).text


def test_a_place_is_marked_only_in_a_pass(client: TestClient, paper: Path) -> None:
    """The mark is a query on the sentence, with its line on the proof; a draft changed meanwhile is noticed."""
    assert client.post(f"{ALOUD}/mark", data={"number": "9"}).status_code == 400
    client.post(f"{ALOUD}/begin", data={})
    draft = (paper / "draft.md").read_bytes()
    assert client.post(f"{ALOUD}/mark", data={"number": "9", "said": "Other words."}).status_code == 409
    assert client.post(f"{ALOUD}/mark", data={"number": "9"}).status_code == 303
    assert client.post(f"{ALOUD}/end", data={"number": "12"}).headers["location"].endswith("/proof")
    kept = [json.loads(line) for line in (paper / "marks.jsonl").read_text("utf-8").splitlines()]
    assert kept[1]["target"]["selector"]["exact"].startswith("The library was a box of varnished pine")
    assert {"type": "TextualBody", "purpose": "bookmarking", "value": "1.15"} in kept[1]["body"]
    page = html.unescape(client.get("/paper/tram-libraries/proof").text)
    assert "aloud: 1 mark (1 still open). Not read: from page 1, line 20 on to page 5." in page
    assert (paper / "draft.md").read_bytes() == draft


def test_it_reads_on_while_a_place_is_marked(browser_page: Page, hindrances: Callable[[Page], list[str]]) -> None:
    """Only voices of this machine speak; space waits, the arrows go on and back, m marks without stopping."""
    page = browser_page
    origin = "/".join(page.url.split("/", 3)[:3])
    page.add_init_script(VOICES)
    page.goto(f"{origin}{ALOUD}")
    page.locator("details.adding summary").click()
    page.locator("form[action$=begin] button").click()
    assert page.locator("#voice option").all_inner_texts() == ["Here (en-GB)", "your own, at this pace"]
    assert hindrances(page) == []
    page.locator("article.spoken").focus()
    page.keyboard.press(" ")
    uttered = "uttered.map((one) => one.text)"
    assert page.evaluate(uttered) == ["Nine Minutes of Reading"] or page.evaluate(uttered)[0].startswith("Between 1926")
    for _ in range(2):
        page.evaluate("now.onend({})")
    told = page.evaluate(uttered)
    assert told[-1].startswith("Between 1926 and 1931")
    with page.expect_response("**/aloud/mark"):
        page.keyboard.press("m")
    assert page.locator("#said").inner_text() == "Marked."
    assert page.locator("#many").inner_text() == "1"
    assert page.locator(".says.query").inner_text().startswith("Between 1926")
    assert page.evaluate(uttered) == told
    page.evaluate("now.onend({})")
    assert page.evaluate(uttered)[-1].startswith("The boxes were never locked")
    page.keyboard.press("ArrowLeft")
    assert page.evaluate(uttered)[-1].startswith("Between 1926 and 1931")
    page.keyboard.press(" ")
    assert page.locator("#reading [data-do=read]").inner_text().casefold() == "read"
    said = len(page.evaluate(uttered))
    page.evaluate("now.onend({})")
    assert len(page.evaluate(uttered)) == said
    assert page.locator("[data-now]").inner_text().startswith("Between")
    for scheme, width in (("dark", 1200), ("light", 420)):
        page.emulate_media(color_scheme=scheme)  # type: ignore[arg-type]
        page.set_viewport_size({"width": width, "height": 900})
        assert hindrances(page) == []
        assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")


def test_without_a_voice_the_place_moves_on_at_the_pace(browser_page: Page) -> None:
    """So that one can read aloud oneself."""
    page = browser_page
    origin = "/".join(page.url.split("/", 3)[:3])
    page.add_init_script(VOICES.replace("getVoices: () => voices", "getVoices: () => []"))
    page.goto(f"{origin}{ALOUD}?pace=400&headings=read")
    assert page.locator("#voice option").all_inner_texts() == ["your own, at this pace"]
    page.locator("#reading [data-do=read]").click()
    page.locator("#s-2[data-now]").wait_for()
    page.locator("#reading [data-do=read]").click()
