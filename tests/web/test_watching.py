"""What another program does shows in the page; what is typed there stays."""

from __future__ import annotations

from pathlib import Path

from playwright.sync_api import Page, expect


def test_an_outside_change_shows(browser_page: Page, desk: Path) -> None:
    """The page is brought up to date by itself, and says so."""
    settings = desk / "tram-libraries" / "paper.toml"
    settings.write_text(settings.read_text("utf-8").replace("Nine Minutes", "Eleven Minutes"), "utf-8")
    expect(browser_page.get_by_role("rowheader")).to_have_text("Eleven Minutes of Reading")
    expect(browser_page.get_by_role("status")).to_contain_text("Another program has changed")


def test_a_new_paper_shows_in_another_tab(browser_page: Page, desk: Path) -> None:
    """What is begun in one tab stands in the other."""
    other = browser_page.context.new_page()
    other.goto(browser_page.url + "new")
    other.get_by_label("Title of the paper").fill("The Ferry at Night")
    other.get_by_role("button", name="Begin the paper").click()
    expect(browser_page.get_by_role("rowheader", name="The Ferry at Night")).to_be_visible()


def test_what_is_printed_and_cached_is_no_change(browser_page: Page, desk: Path) -> None:
    """The program's own files wake no page."""
    cache = desk / "tram-libraries" / ".fairhand"
    cache.mkdir(exist_ok=True)
    (cache / "other").write_text("cached", "utf-8")
    browser_page.wait_for_timeout(700)
    expect(browser_page.get_by_role("status")).to_have_text("")
