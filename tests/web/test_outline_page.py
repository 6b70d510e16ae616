"""The outline in the page of the revision."""

from __future__ import annotations

import html
import json
import re
from collections.abc import Callable
from itertools import pairwise
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect
from starlette.testclient import TestClient

REVISION = "/paper/tram-libraries/revision"


@pytest.fixture
def paper(desk: Path) -> Path:
    """The paper's folder."""
    return desk / "tram-libraries"


def side(page: str, number: int) -> str:
    """What the side-note of one paragraph says."""
    note = page.split(f'aria-label="Outline of paragraph {number}"', 1)[1].split("</div>", 1)[0]
    return " ".join(html.unescape(re.sub("<[^>]+>", " ", note)).split())


def test_each_paragraph_has_its_side_note(client: TestClient) -> None:
    """What it says, in its own sentence, what it cites and serves; and what is to be asked stands below."""
    page = client.get(REVISION).text
    assert "words" in side(page, 1)
    assert any("Serves p1" in side(page, number) for number in (1, 2, 3, 4))
    assert page.index('aria-label="Outline of paragraph 1"') < page.index("Ask yourself")
    assert "Does it hang together" in page
    assert "The argument does not stand yet" in page
    assert "doubled word" not in page


def test_a_side_note_is_corrected_and_the_word_taken_back(client: TestClient, paper: Path) -> None:
    """By a form at its paragraph that works without scripts."""
    asked = client.get(REVISION, params={"outline": 2}).text
    paragraph = html.unescape(re.search(r'name="paragraph" value="([^"]*)"', asked).group(1))  # type: ignore[union-attr]
    sent = {"outline": "2", "paragraph": paragraph, "says": "What trams were for.", "focus": "off", "point": ""}
    answer = client.post(f"{REVISION}/outline", data={**sent, "do": "keep"})
    assert (answer.status_code, answer.headers["location"]) == (303, REVISION)
    told = side(client.get(REVISION).text, 2)
    assert "What trams were for." in told
    assert "Serves no point that could be told; off the focus." in told
    client.post(f"{REVISION}/outline", data={**sent, "do": "seen"})
    assert "What trams were for." not in client.get(REVISION).text
    assert (paper / "outline.jsonl").read_text("utf-8") == ""


def test_a_paragraph_that_was_changed_meanwhile_is_not_corrected(client: TestClient, paper: Path) -> None:
    """Nothing is written, and it is said."""
    answer = client.post(f"{REVISION}/outline", data={"paragraph": "Never stood there.", "says": "x", "do": "keep"})
    assert answer.status_code == 409
    assert "was changed meanwhile" in html.unescape(answer.text)
    assert not (paper / "outline.jsonl").exists()


def test_an_answer_is_kept(client: TestClient, paper: Path) -> None:
    """It stands in its field again, and in the file."""
    answer = client.post(f"{REVISION}/answers", data={"asks": "terms", "answer": " None <b> is. "})
    assert answer.headers["location"] == f"{REVISION}#asks-terms"
    assert "None &lt;b&gt; is.</textarea>" in client.get(REVISION).text
    assert json.loads((paper / "outline.jsonl").read_text("utf-8"))["answer"] == "None <b> is."
    assert client.post(f"{REVISION}/answers", data={"asks": "beauty", "answer": "x"}).status_code == 400


def test_the_outline_is_reached_by_keyboard(browser_page: Page) -> None:
    """The way to a correction is a link, the form opens under its paragraph, and what is typed is kept."""
    page = browser_page
    page.goto(page.url.rstrip("/") + REVISION)
    page.get_by_role("link", name="Correct the outline of paragraph 2").focus()
    page.keyboard.press("Enter")
    field = page.get_by_label("What it says, in your words")
    expect(field).to_be_visible()
    field.fill("What trams were for.")
    page.get_by_role("button", name="Keep", exact=True).first.press("Enter")
    expect(page.get_by_role("note", name="Outline of paragraph 2")).to_contain_text("What trams were for.")


@pytest.mark.parametrize("width", [1280, 400])
def test_a_side_note_hinders_nobody(browser_page: Page, hindrances: Callable[[Page], list[str]], width: int) -> None:
    """With its form open too, and in a narrow window; no side-note lies on another or on the text."""
    page = browser_page
    page.set_viewport_size({"width": width, "height": 900})
    page.goto(page.url.rstrip("/") + REVISION + "?outline=3")
    page.wait_for_load_state()
    assert hindrances(page) == []
    assert page.evaluate("document.documentElement.scrollWidth <= window.innerWidth")
    boxes = [box for note in page.locator(".side").all() if (box := note.bounding_box())]
    for above, below in pairwise(sorted(boxes, key=lambda box: box["y"])):
        assert above["y"] + above["height"] <= below["y"] + 1
    if width > 820:
        left = page.locator(".proof .para").first.bounding_box()
        assert left is not None
        assert all(box["x"] + box["width"] <= left["x"] for box in boxes)
