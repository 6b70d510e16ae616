"""The paper's length in the page."""

from __future__ import annotations

import html
import re
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect
from starlette.testclient import TestClient

FIT = "/paper/tram-libraries/fit"


@pytest.fixture
def paper(desk: Path) -> Path:
    """The paper's folder, its sheet asking for fewer words than the draft has."""
    folder = desk / "tram-libraries"
    sheet = folder / "brief.txt"
    sheet.write_text(sheet.read_text("utf-8").replace("850 to 1,200 words", "600 to 800 words"), "utf-8")
    return folder


def shown(client: TestClient, query: str = "") -> str:
    """What the page says."""
    answer = client.get(FIT + query)
    assert answer.status_code == 200
    return html.unescape(answer.text)


def test_the_draft_is_cast_off_section_by_section(client: TestClient, paper: Path) -> None:
    """With words and pages by the sheet's rule; in the draft the same comes on request."""
    page = shown(client)
    assert "words too long: the sheet allows 800 words" in page
    assert re.search(r"The Readers</th><td>\d+ words, \d\.\d pages", page)
    draft = client.get("/paper/tram-libraries/draft?see=counts").text
    assert "Section by section" in draft
    assert "Section by section" not in client.get("/paper/tram-libraries/draft").text


def test_a_way_is_taken_and_kept_among_the_offcuts(client: TestClient, paper: Path) -> None:
    """Afterwards the paper has its length; from a draft that was changed meanwhile nothing is cut."""
    page = shown(client)
    state = re.findall(r'name="state" value="([^"]*)"', page)[0]
    draft = paper / "draft.md"
    before = draft.read_text("utf-8")
    draft.write_text(before + "\nMore.\n", "utf-8")
    assert client.post(FIT, data={"way": "1", "state": state}).status_code == 409
    draft.write_text(before, "utf-8")
    sent = client.post(FIT, data={"way": "1", "state": state})
    assert sent.headers["location"] == "/paper/tram-libraries/offcuts"
    assert "for the length" in client.get("/paper/tram-libraries/offcuts").text
    assert "are within what the sheet asks" in shown(client)


def test_a_move_is_looked_at_and_made(client: TestClient, paper: Path) -> None:
    """First what it breaks; then, by a button, the move."""
    lines = re.findall(r'<option value="(\d+)">', shown(client))
    page = shown(client, f"?what={lines[1]}&before=1000000")
    assert "Move it" in page
    state = re.findall(r'name="state" value="([^"]*)"', page)[-1]
    before = (paper / "draft.md").read_text("utf-8")
    sent = {"do": "move", "what": lines[1], "before": "1000000", "state": state}
    assert client.post(FIT, data=sent | {"state": "x"}).status_code == 409
    assert client.post(FIT, data=sent).status_code == 303
    after = (paper / "draft.md").read_text("utf-8")
    assert after != before
    assert sorted(after.split()) == sorted(before.split())
    assert client.get(f"{FIT}?what=1&before=3").status_code == 400


def test_an_empty_paper_has_no_length(client: TestClient, paper: Path) -> None:
    """The page says so, and nothing else."""
    (paper / "draft.md").unlink()
    assert "There is no draft yet." in shown(client)


def test_it_works_without_scripts_and_hinders_nobody(
    browser: Browser, served: str, paper: Path, hindrances: Callable[[Page], list[str]]
) -> None:
    """By keyboard alone a way is carried out; axe finds nothing in the way, at night and narrow too."""
    root = served.partition("/?")[0]
    for ways in ({}, {"color_scheme": "dark"}, {"viewport": {"width": 390, "height": 844}}):
        with browser.new_context(**ways) as context:
            page = context.new_page()
            page.goto(served)
            page.goto(f"{root}{FIT}?what=11&before=1000000")
            assert hindrances(page) == []
            assert page.evaluate("document.documentElement.scrollWidth <= window.innerWidth")
    with browser.new_context(java_script_enabled=False) as context:
        page = context.new_page()
        page.goto(served)
        page.goto(root + FIT)
        page.get_by_role("button", name="Cut, and keep among the offcuts").first.press("Enter")
        expect(page.get_by_role("heading", name="Offcuts")).to_be_visible()
