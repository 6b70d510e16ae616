"""Every page for everybody: axe-core finds nothing in the way, by day, at night and on a narrow screen.

**Source**: axe-core's rules, after WCAG 2.2.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest
from playwright.sync_api import Browser, Page, expect

from fairhand.web.parts import LEAVES
from fairhand.web.routes import list_routes, working_leaves

WAYS: dict[str, dict[str, Any]] = {
    "by day": {"color_scheme": "light"},
    "at night": {"color_scheme": "dark"},
    "narrow": {"viewport": {"width": 390, "height": 844}},
}
PATHS = (
    "/",
    "/new",
    "/now",
    "/plan",
    "/plan/hours",
    "/no-such-page",
    *(f"/paper/tram-libraries/{leaf}" for leaf in LEAVES if leaf in working_leaves(list_routes())),
)


@pytest.mark.parametrize("way", WAYS)
def test_nothing_hinders_anybody(
    browser: Browser, served: str, hindrances: Callable[[Page], list[str]], way: str
) -> None:
    """No page has a violation, and none is wider than its window."""
    with browser.new_context(**WAYS[way]) as context:
        page = context.new_page()
        page.goto(served)
        for path in PATHS:
            page.goto(served.partition("/?")[0] + path)
            page.wait_for_load_state()
            assert hindrances(page) == [], path
            assert page.evaluate("document.documentElement.scrollWidth <= window.innerWidth"), path


def test_the_desk_is_walked_by_keyboard(browser_page: Page) -> None:
    """The first key leads past the head of the page; the next ones to what can be done, in order, each seen."""
    expect(browser_page.get_by_role("link", name="What to do now")).to_have_count(0)  # its sentence has come instead
    browser_page.keyboard.press("Tab")
    assert browser_page.evaluate("document.activeElement.className") == "skip"
    browser_page.keyboard.press("Enter")
    expect(browser_page.get_by_role("main")).to_be_focused()
    browser_page.keyboard.press("Tab")
    focused = browser_page.locator(":focus")
    assert focused.evaluate("element => element.closest('main') !== null")
    assert focused.evaluate("element => getComputedStyle(element).outlineStyle") != "none"


def test_without_scripts_the_desk_says_what_to_do(browser: Browser, served: str) -> None:
    """The sentence is one link away."""
    with browser.new_context(java_script_enabled=False) as context:
        page = context.new_page()
        page.goto(served)
        page.get_by_role("link", name="What to do now").click()
        assert "find 1 more source" in page.get_by_role("main").inner_text()
