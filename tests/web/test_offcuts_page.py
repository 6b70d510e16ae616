"""Offcuts in the page."""

from __future__ import annotations

import html
import re
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect
from starlette.testclient import TestClient

OFFCUTS = "/paper/tram-libraries/offcuts"
DRAFT = "/paper/tram-libraries/draft"


@pytest.fixture
def draft(desk: Path) -> Path:
    """The paper's draft."""
    return desk / "tram-libraries" / "draft.md"


def places(client: TestClient) -> list[str]:
    """The passages that may be chosen."""
    return re.findall(r'name="place" value="([^"]*)"', client.get(OFFCUTS).text)


def test_a_passage_is_cut_and_brought_back(client: TestClient, draft: Path) -> None:
    """It stands on the page with its place and reason; one step, and the draft is as it was."""
    before = draft.read_text("utf-8")
    sent = client.post(OFFCUTS, data={"place": places(client)[4], "why": "a <digression>", "do": "cut"})
    assert sent.status_code == 303
    page = html.unescape(client.get(OFFCUTS).text)
    assert "One passage is kept here" in page
    assert 'value="a <digression>"' in page
    assert "as it was" in page
    assert len(draft.read_text("utf-8")) < len(before)
    name = re.findall(r'name="name" value="([^"]*)"', page)[0]
    back = client.post(OFFCUTS, data={"name": name, "do": "back"})
    assert "It is in the draft again, as it was" in client.get(back.headers["location"]).text
    assert draft.read_text("utf-8") == before
    assert client.post(OFFCUTS, data={"name": name, "do": "back"}).status_code == 400


def test_a_passage_that_was_changed_is_not_cut(client: TestClient, draft: Path) -> None:
    """The page was made from another draft: nothing is written, and the page says so."""
    place = places(client)[4]
    changed = draft.read_text("utf-8").replace("e", "f")
    draft.write_text(changed, "utf-8")
    sent = client.post(OFFCUTS, data={"place": place, "do": "cut"})
    assert (sent.status_code, "the passage was changed meanwhile" in sent.text) == (409, True)
    assert draft.read_text("utf-8") == changed
    assert client.post(OFFCUTS, data={"place": "x", "do": "cut"}).status_code == 400


def test_a_paragraph_of_the_revision_is_chosen_to_be_cut(client: TestClient) -> None:
    """Its outline leads to the offcuts, where it is ticked already; an address that was made up ticks nothing."""
    revision = html.unescape(client.get("/paper/tram-libraries/revision?outline=3").text)
    (where,) = re.findall(r'href="(/paper/tram-libraries/offcuts[^"]*)"[^>]*>Cut this paragraph', revision)
    page = client.get(where).text
    (ticked,) = re.findall(r'name="place" value="([^"]*)" checked', page)
    assert client.post(OFFCUTS, data={"place": ticked, "do": "cut"}).status_code == 303
    assert "checked" not in client.get(f"{OFFCUTS}?cut=<x>").text


def test_a_reason_is_given_afterwards(client: TestClient) -> None:
    """It may be left out at first."""
    client.post(OFFCUTS, data={"place": places(client)[4], "do": "cut"})
    name = re.findall(r'name="name" value="([^"]*)"', client.get(OFFCUTS).text)[0]
    client.post(OFFCUTS, data={"name": name, "why": "no source", "do": "why"})
    assert 'value="no source"' in client.get(OFFCUTS).text


def test_what_is_chosen_in_the_draft_is_cut(browser_page: Page, draft: Path) -> None:
    """In a browser, letters beyond the first plane counted rightly; what was typed before it is kept first."""
    root = browser_page.url.rstrip("/")
    browser_page.goto(root + DRAFT)
    field = browser_page.get_by_role("textbox", name="Draft")
    field.fill("𝄞𝄞 One two three. 𝄞")
    field.evaluate("field => field.setSelectionRange(9, 13)")
    browser_page.get_by_role("button", name="Cut to the offcuts").click()
    expect(browser_page.get_by_text("It is cut, and kept.")).to_be_visible()
    assert draft.read_text("utf-8") == "𝄞𝄞 One three. 𝄞"
    browser_page.get_by_role("link", name="Look at the offcuts").click()
    browser_page.get_by_role("button", name="Bring it back").click()
    expect(browser_page.get_by_text("It is in the draft again")).to_be_visible()
    assert draft.read_text("utf-8") == "𝄞𝄞 One two three. 𝄞"


def test_nothing_is_cut_where_nothing_is_chosen(browser_page: Page, draft: Path) -> None:
    """In a browser: the page says what to do."""
    before = draft.read_text("utf-8")
    browser_page.goto(browser_page.url.rstrip("/") + DRAFT)
    browser_page.get_by_role("button", name="Cut to the offcuts").click()
    expect(browser_page.locator("#said")).to_contain_text("Choose the words")
    assert draft.read_text("utf-8") == before


def test_it_works_without_scripts_and_hinders_nobody(
    browser: Browser, served: str, draft: Path, hindrances: Callable[[Page], list[str]]
) -> None:
    """By keyboard alone: a passage is chosen, cut, and brought back; axe finds nothing in the way."""
    before = draft.read_text("utf-8")
    with browser.new_context(java_script_enabled=False) as context:
        page = context.new_page()
        page.goto(served)
        page.goto(served.partition("/?")[0] + OFFCUTS)
        page.get_by_role("radio").nth(4).press("Space")
        page.get_by_role("textbox", name="Why").press_sequentially("off the point")
        page.get_by_role("button", name="Cut it, and keep it here").press("Enter")
        page.get_by_role("button", name="Bring it back").press("Enter")
        expect(page.get_by_text("It is in the draft again")).to_be_visible()
    assert draft.read_text("utf-8") == before
    with browser.new_context() as context:
        page = context.new_page()
        page.goto(served)
        page.goto(served.partition("/?")[0] + OFFCUTS)
        page.get_by_role("radio").nth(4).check()
        page.get_by_role("button", name="Cut it, and keep it here").click()
        assert hindrances(page) == []
