"""The final reading: the fair copy alone, and one question after it."""

from __future__ import annotations

import html
import re
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page
from starlette.testclient import TestClient

FINAL = "/paper/tram-libraries/final"


@pytest.fixture
def paper(desk: Path) -> Path:
    """The paper's folder; nothing in its draft is left to be settled."""
    draft = desk / "tram-libraries" / "draft.md"
    draft.write_text(re.sub(r"\[(?:NB|TK)[^\]]*\]|\bTK\b", "", draft.read_text("utf-8")), "utf-8")
    return desk / "tram-libraries"


def test_what_is_left_is_settled_first(client: TestClient) -> None:
    """A draft with asides or TKs is not finished: that is said, and nothing is there to be read."""
    page = client.get(FINAL).text
    assert "asides or TKs are left" in page
    assert "Begin to read" not in page


def test_the_page_shows_the_fair_copy_and_nothing_else(client: TestClient, paper: Path) -> None:
    """No parts, no marks, no numbers of lines; its last line is the last of the list of works."""
    assert "it takes about 6 minutes" in client.get(FINAL).text
    page = client.get(f"{FINAL}/reading").text
    assert "running-head" not in page
    assert "<script" not in page
    assert "line </span>" not in page
    assert "<em>Lines and Leaves: The Tram Libraries of Velden</em>" in page
    assert page.index("Works Cited") < page.index("Fit to hand in?")


def test_the_answer_is_kept(client: TestClient, paper: Path) -> None:
    """No needs its reason; yes holds until the draft is changed."""
    page = client.get(f"{FINAL}/reading").text
    begun, draft = (page.split(f'name="{name}" value="', 1)[1].split('"', 1)[0] for name in ("begun", "draft"))
    sent = {"begun": begun, "draft": draft}
    refused = client.post(f"{FINAL}/reading", data={**sent, "fit": "no", "why": " "})
    assert refused.status_code == 400
    assert "say why it is not fit" in refused.text
    why = "The third section says the same twice."
    assert client.post(f"{FINAL}/reading", data={**sent, "fit": "no", "why": why}).headers["location"] == FINAL
    assert f"you held it not fit to hand in: {why}" in html.unescape(client.get(FINAL).text)
    client.post(f"{FINAL}/reading", data={**sent, "fit": "yes"})
    assert "you held it fit to hand in." in client.get(FINAL).text
    text = (paper / "draft.md").read_text("utf-8")
    (paper / "draft.md").write_text(text.replace("very cheap", "cheap"), "utf-8")
    assert "The draft was changed since: read it once more." in client.get(FINAL).text
    late = client.post(f"{FINAL}/reading", data={**sent, "fit": "yes"})
    assert late.status_code == 400
    assert "it was changed while it was read" in html.unescape(late.text)


def test_nobody_is_hindered(paper: Path, browser_page: Page, hindrances: Callable[[Page], list[str]]) -> None:
    """By day, at night, on a narrow screen; the question is answered by the keyboard."""
    page = browser_page
    origin = "/".join(page.url.split("/", 3)[:3])
    page.goto(f"{origin}{FINAL}")
    assert hindrances(page) == []
    page.get_by_text("Begin to read").press("Enter")
    page.get_by_role("heading", name="Fit to hand in?").wait_for()
    for scheme, width in (("light", 1200), ("dark", 1200), ("light", 420)):
        page.emulate_media(color_scheme=scheme)  # type: ignore[arg-type]
        page.set_viewport_size({"width": width, "height": 900})
        assert hindrances(page) == []
        assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
    page.get_by_role("button", name="Yes").press("Enter")
    page.get_by_text("you held it fit to hand in").wait_for()
