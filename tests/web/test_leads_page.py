"""Leads in the page."""

from __future__ import annotations

import html
import json
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect
from starlette.testclient import TestClient

LEADS = "/paper/tram-libraries/leads"
LISTED = """

References

Ashdown, V. (1931). Waiting rooms of the northern lines. Quay University Press.

Farnsworth, I., & Hollis, G. (1988). Borrowing books on the tram: A count of readers. Journal of Idle Hours, 12(3),
113–128.
"""
EVIL = "<script>alert(1)</script>"


@pytest.fixture
def paper(desk: Path) -> Path:
    """The paper's folder, two of its sources with a list of references."""
    folder = desk / "tram-libraries"
    for name, listed in (
        ("lund-1999", LISTED),
        ("tramways-1931", LISTED.replace("Ashdown, V.", f"Bramwell, {EVIL} A.")),
    ):
        text = folder / "sources" / f"{name}.txt"
        text.write_text(text.read_text("utf-8") + listed, "utf-8")
    return folder


def shown(client: TestClient) -> str:
    """What the page says."""
    return html.unescape(client.get(LEADS).text)


@pytest.mark.usefixtures("paper")
def test_what_several_sources_point_to_comes_first(client: TestClient) -> None:
    """With its reasons, its places and its words; what a reference brings does not run."""
    page = shown(client)
    assert "3 leads from 2 reference lists" in page
    assert page.index("Borrowing books on the tram") < page.index("Waiting rooms of the northern lines")
    assert "2 sources of yours point to it." in page
    assert "“Ashdown, V. (1931). Waiting rooms" in page
    assert EVIL not in client.get(LEADS).text


def test_a_lead_becomes_a_source_in_one_step(client: TestClient, paper: Path) -> None:
    """Its record stands in the list with where each field came from, and it is no lead any more."""
    sent = {"lead": "farnsworth-1988-borrowing-books", "do": "take"}
    assert client.post(LEADS, data=sent).headers["location"] == "/paper/tram-libraries/sources/farnsworth-1988"
    (record,) = (
        one for one in json.loads((paper / "sources.json").read_text("utf-8")) if one["id"] == "farnsworth-1988"
    )
    assert record["title"] == "Borrowing books on the tram: A count of readers"
    assert record["page"] == "113-128"
    assert record["custom"]["fairhand-from"]["title"][0].startswith("the references of ")
    assert "Borrowing books" not in shown(client)


def test_a_lead_is_put_aside_with_a_reason_and_comes_back(client: TestClient, paper: Path) -> None:
    """The reason is kept in a file."""
    sent = {"lead": "ashdown-1931-waiting-rooms", "do": "aside", "why": "out of print"}
    assert client.post(LEADS, data=sent).status_code == 303
    assert json.loads((paper / "leads.jsonl").read_text("utf-8"))["why"] == "out of print"
    page = shown(client)
    assert page.index("Put aside\n" if "Put aside\n" in page else "Put aside<") < page.index("out of print")
    client.post(LEADS, data={**sent, "do": "back"})
    assert "out of print" not in shown(client)


def test_a_lead_that_is_not_there_is_told(client: TestClient) -> None:
    """In one line, on the page itself."""
    answer = client.post(LEADS, data={"lead": "nobody-1900", "do": "take"})
    assert answer.status_code == 400
    assert "no lead has that name" in answer.text


def test_a_source_is_read_for_its_references_only(client: TestClient, paper: Path) -> None:
    """The mark stands in its record, and comes off again."""
    client.post(LEADS, data={"do": "only", "shown": ["lund-1999", "osei-2014"], "only": "lund-1999"})
    assert '"read-for": "references"' in (paper / "sources.json").read_text("utf-8")
    assert 'value="lund-1999" checked' in client.get(LEADS).text
    client.post(LEADS, data={"do": "only", "shown": ["lund-1999"]})
    assert "read-for" not in (paper / "sources.json").read_text("utf-8")


@pytest.mark.usefixtures("paper")
def test_the_page_hinders_nobody(browser: Browser, served: str, hindrances: Callable[[Page], list[str]]) -> None:
    """By day, at night and on a narrow screen; a lead is put aside by keyboard alone."""
    for way in ({"color_scheme": "light"}, {"color_scheme": "dark"}, {"viewport": {"width": 390, "height": 844}}):
        with browser.new_context(**way) as context:
            page = context.new_page()
            page.goto(served)
            page.goto(served.partition("/?")[0] + LEADS)
            expect(page.get_by_text("3 leads from")).to_be_visible()
            assert hindrances(page) == []
            assert page.evaluate("document.documentElement.scrollWidth <= window.innerWidth")
    with browser.new_context() as context:
        page = context.new_page()
        page.goto(served)
        page.goto(served.partition("/?")[0] + LEADS)
        page.get_by_label("because").first.focus()
        page.keyboard.type("read already")
        page.keyboard.press("Shift+Tab")
        page.keyboard.press("Enter")
        expect(page.get_by_text("read already")).to_be_visible()
