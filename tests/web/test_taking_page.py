"""A draft from a word processor comes in by the page, and comes again."""

from __future__ import annotations

import io
from collections.abc import Callable
from pathlib import Path

import docx
from playwright.sync_api import Page
from starlette.testclient import TestClient

TAKE = "/paper/tram-libraries/take"


def written(*paragraphs: str) -> bytes:
    """A DOCX with these paragraphs."""
    document = docx.Document()
    for text in paragraphs:
        document.add_paragraph(text)
    kept = io.BytesIO()
    document.save(kept)
    return kept.getvalue()


def test_a_draft_comes_in_and_comes_again(desk: Path, client: TestClient) -> None:
    """What is different is one step away; what was changed here meanwhile stands."""
    assert "Earlier states" in client.get(TAKE).text
    first = client.post(TAKE, files={"file": ("trams.docx", written("The trams ran.", "They were full <of> people."))})
    assert "The draft of trams.docx is draft.md now, 8 words long." in first.text
    assert "with=present" in first.text
    draft = desk / "tram-libraries" / "draft.md"
    draft.write_text(draft.read_text("utf-8").replace("ran", "ran late"), "utf-8")
    again = client.post(TAKE, files={"file": ("trams.docx", written("The trams ran.", "They were full of readers."))})
    assert "One passage that you changed here stands as you left it." in again.text
    assert draft.read_text("utf-8") == "The trams ran late.\n\nThey were full of readers.\n"


def test_what_is_no_draft_is_told(client: TestClient) -> None:
    """No file, one of another kind, a broken one."""
    assert "Choose a file" in client.post(TAKE, data={"refuse": "on"}).text
    assert "Choose a file" in client.post(TAKE, files={"file": ("x.pdf", b"no")}).text
    assert "x.docx: it is broken" in client.post(TAKE, files={"file": ("x.docx", b"no")}).text


def test_the_page_hinders_nobody(browser_page: Page, hindrances: Callable[[Page], list[str]]) -> None:
    """axe-core finds nothing in the way."""
    browser_page.goto(browser_page.url.partition("/?")[0].rstrip("/") + TAKE)
    assert hindrances(browser_page) == []
