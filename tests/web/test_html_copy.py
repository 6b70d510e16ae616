"""The fair copy as a page of the web, before a real browser.

**Source**: axe-core's rules, after WCAG 2.2.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pypdfium2
import pytest
from playwright.sync_api import Browser, Page

from fairhand.session.hand_in.printing import set_copy
from fairhand.session.opened import OpenPaper

HOUR = dt.datetime(2027, 2, 8, 12, tzinfo=dt.UTC)
WAYS: dict[str, dict[str, Any]] = {
    "by day": {"color_scheme": "light"},
    "at night": {"color_scheme": "dark"},
    "narrow": {"viewport": {"width": 390, "height": 844}},
}
TABLE = """

| Line | Readers | Seats |
|------|---------|-------|
| 4    | 120     | 14    |

Table 1. Readers of a day

The last words stand here.[^9]

[^9]: A note of the writer's own.
"""


@pytest.fixture
def copy_file(demo_paper: Path, tmp_path: Path) -> Path:
    """The demo's fair copy, with a table and a note in it, as a file."""
    draft = demo_paper / "draft.md"
    draft.write_text(draft.read_text("utf-8") + TABLE, "utf-8")
    file = tmp_path / "copy.html"
    file.write_bytes(set_copy(OpenPaper(demo_paper, at=HOUR), "html", anyway=True).data)
    return file


@pytest.mark.parametrize("way", WAYS)
def test_nothing_hinders_the_reader(
    browser: Browser, copy_file: Path, hindrances: Callable[[Page], list[str]], way: str
) -> None:
    """By day, at night and on a narrow screen axe-core finds nothing, and the page is no wider than its window."""
    with browser.new_context(**WAYS[way]) as context:
        page = context.new_page()
        page.goto(copy_file.as_uri())
        assert hindrances(page) == []
        assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")


def test_a_printed_page_has_its_number(browser: Browser, copy_file: Path) -> None:
    """Printed from the browser, the pages are numbered, and the list of sources begins one of its own."""
    page = browser.new_page()
    page.goto(copy_file.as_uri())
    printed = copy_file.with_suffix(".pdf")
    page.pdf(path=printed, prefer_css_page_size=True)
    page.close()
    with pypdfium2.PdfDocument(printed) as document:
        texts = [sheet.get_textpage().get_text_range() for sheet in document]
    assert all(str(number) in text.splitlines()[0] + text.splitlines()[-1] for number, text in enumerate(texts, 1))
    assert sum("\nReferences" in text[:80] or "Works Cited" in text[:80] for text in texts) == 1
