"""The sheet of questions, points and notes that opens over the page."""

from __future__ import annotations

import html
import re
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect
from starlette.testclient import TestClient

SHEET = "/paper/tram-libraries/sheet"


@pytest.fixture
def paper(desk: Path) -> Path:
    """The paper's folder."""
    return desk / "tram-libraries"


def test_without_scripts_it_is_a_page_and_puts_at_the_end(client: TestClient, paper: Path) -> None:
    """Into the text that it was opened from; what has gone meanwhile is told of."""
    page = client.get(f"{SHEET}?to=rough").text
    name, words = re.findall(r'name="put" value="([^"]*)" data-words="([^"]*)"', page)[0]
    (paper / "rough.md").write_text("Here.", "utf-8")
    sent = client.post(SHEET, data={"put": name, "to": "rough"})
    assert sent.headers["location"] == "/paper/tram-libraries/rough"
    assert (paper / "rough.md").read_text("utf-8") == f"Here.\n\n{html.unescape(words)}\n"
    assert client.post(SHEET, data={"put": "nothing"}).status_code == 400
    assert client.get(f"{SHEET}?to=../../etc").status_code == 200


@pytest.mark.parametrize("leaf", ["rough", "draft"])
def test_it_opens_over_the_page_and_puts_at_the_cursor(browser_page: Page, paper: Path, leaf: str) -> None:
    """In a browser: by keyboard, with the citation; the sheet closes, the cursor stands after it, and it is kept."""
    browser_page.goto(f"{browser_page.url.rstrip('/')}/paper/tram-libraries/{leaf}")
    field = browser_page.get_by_role("textbox", name="Rough draft" if leaf == "rough" else "Draft", exact=True)
    field.fill("Before after")
    field.evaluate("field => field.setSelectionRange(6, 6)")
    browser_page.get_by_role("link", name="Questions, points, notes").press("Enter")
    sheet = browser_page.get_by_role("dialog", name="Questions, points and notes")
    expect(sheet).to_be_visible()
    button = sheet.get_by_role("button", name=re.compile("Put it in.*NB")).first
    words = button.get_attribute("data-words")
    button.press("Enter")
    expect(sheet).to_be_hidden()
    assert field.input_value() == f"Before {words} after"
    field.press_sequentially("!")
    assert f"{words}!" in field.input_value()
    browser_page.wait_for_timeout(900)
    assert (paper / f"{leaf}.md").read_text("utf-8") == f"Before {words}! after"


def test_it_is_put_away_and_nothing_is_put_in(browser_page: Page) -> None:
    """By the key Escape, or by its button; what was typed stays."""
    browser_page.goto(f"{browser_page.url.rstrip('/')}/paper/tram-libraries/rough")
    field = browser_page.get_by_role("textbox", name="Rough draft")
    field.fill("Words.")
    sheet = browser_page.get_by_role("dialog")
    for close in ("Escape", "Enter"):
        browser_page.get_by_role("link", name="Questions, points, notes").click()
        expect(sheet).to_be_visible()
        if close == "Escape":
            browser_page.keyboard.press(close)
        else:
            sheet.get_by_role("button", name="Put the sheet away").press(close)
        expect(sheet).to_be_hidden()
    assert field.input_value() == "Words."
    browser_page.wait_for_timeout(700)


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_the_open_sheet_hinders_nobody(
    browser: Browser, served: str, hindrances: Callable[[Page], list[str]], scheme: str
) -> None:
    """Narrow too, and nothing is cut off at its side."""
    with browser.new_context(color_scheme=scheme, viewport={"width": 390, "height": 844}) as context:  # type: ignore[arg-type]
        page = context.new_page()
        page.goto(served)
        page.goto(f"{served.partition('/?')[0]}/paper/tram-libraries/rough")
        page.get_by_role("link", name="Questions, points, notes").click()
        expect(page.get_by_role("dialog")).to_be_visible()
        assert hindrances(page) == []
        sheet = page.locator("#sheet")
        assert sheet.evaluate("sheet => sheet.scrollWidth <= sheet.clientWidth")
        page.goto(f"{served.partition('/?')[0]}{SHEET}")
        assert hindrances(page) == []
