"""The points in the page."""

from __future__ import annotations

import html
import json
import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Page, expect
from starlette.testclient import TestClient

PAPER = "/paper/tram-libraries"
POINTS = f"{PAPER}/points"
EVIL = "</textarea><script>alert(1)</script>"


@pytest.fixture
def file(desk: Path) -> Path:
    """The paper's file of points."""
    return desk / "tram-libraries" / "points.json"


def read(file: Path) -> dict[str, Any]:
    """What the file holds."""
    found: dict[str, Any] = json.loads(file.read_text("utf-8"))
    return found


def state_in(page: str) -> str:
    """The state that the first form of a page was made from."""
    found = re.search(r'name="was" value="([^"]*)"', page)
    assert found is not None
    return found[1]


def order_in(page: str) -> str:
    """The order that a page shows."""
    return state_in(page[page.index('class="points"') :])


def test_each_point_stands_with_what_it_rests_on(client: TestClient) -> None:
    """The thesis, the points in order, their sources with the page, and how many count beside the writer's rule."""
    page = html.unescape(client.get(POINTS).text)
    assert "Two points rest on fewer independent sources than your rule asks" in page
    assert "they were read.</textarea>" in page
    assert (
        "Optional, from Velden Municipal Tramways (1931), page 1. It rests on 1 source; your rule asks for 1." in page
    )
    assert "It rests on 2 sources, which may count as 1; your rule asks for 2: Brandvold (2016) cites Osei" in page
    assert "It rests on 3 independent sources; your rule asks for 2." in page
    assert "is your judgement" in page
    assert page.index("The boxes cost") < page.index("Borrowing was heavy") < page.index("time of their own")


def test_support_is_not_spoken_of_where_no_sources_are_asked_for(client: TestClient, desk: Path, file: Path) -> None:
    """Neither counted nor asked for; what a point names it keeps."""
    (desk / "tram-libraries" / "brief.txt").write_text("Write 900 words about a place. Due 12 March 2027.\n", "utf-8")
    (desk / "courses" / "writing-from-sources" / "course.toml").unlink()
    page = client.get(POINTS).text
    assert "It rests on" not in page
    assert "your rule" not in page
    assert 'name="source"' not in page
    own = client.get(f"{POINTS}/p4").text
    sent = client.post(f"{POINTS}/p4", data={"was": state_in(own), "text": "Shorter.", "weight": "main"})
    assert sent.status_code == 303
    assert read(file)["points"][3]["sources"] == [{"id": "lund-1999", "page": "61"}]


def test_the_first_points_are_begun(client: TestClient, file: Path) -> None:
    """Where there is no file, the page says what to do first, and saving makes it."""
    file.unlink()
    page = client.get(POINTS).text
    assert "Write in one sentence what the paper is to show" in page
    client.post(POINTS, data={"thesis": "The ebb\r\ndoes the work.", "was": state_in(page)})
    sent = client.post(POINTS, data={"text": "Ebb tides scour.", "weight": "optional", "source": "", "page": "9"})
    assert sent.headers["location"] == f"{POINTS}#point-p1"
    assert read(file) == {
        "thesis": "The ebb does the work.",
        "points": [{"id": "p1", "text": "Ebb tides scour.", "weight": "optional"}],
    }


def test_a_point_is_changed_with_its_sources(client: TestClient, file: Path) -> None:
    """What its record says besides is kept."""
    found = read(file)
    found["points"][3]["colour"] = "blue"
    file.write_text(json.dumps({**found, "x": 1}), "utf-8")
    own = client.get(f"{POINTS}/p4").text
    typed = {"text": "Time was lost.", "weight": "main", "source": ["lund-1999", "", "osei-2014"]}
    client.post(f"{POINTS}/p4", data={**typed, "page": ["61", "9", " 120 "], "was": state_in(own)})
    assert read(file)["x"] == 1
    assert read(file)["points"][3] == {
        "id": "p4",
        "text": "Time was lost.",
        "weight": "main",
        "sources": [{"id": "lund-1999", "page": "61"}, {"id": "osei-2014", "page": "120"}],
        "colour": "blue",
    }
    assert "It rests on 2 independent sources" in client.get(POINTS).text


def test_a_point_without_words_is_refused(client: TestClient, file: Path) -> None:
    """What else was chosen stands in the form."""
    before = file.read_bytes()
    refused = client.post(POINTS, data={"text": " ", "weight": "optional", "source": "osei-2014", "page": "77"})
    assert refused.status_code == 400
    assert 'role="alert"' in refused.text
    assert 'value="77"' in refused.text
    own = client.post(f"{POINTS}/p1", data={"text": "", "was": state_in(client.get(f"{POINTS}/p1").text)})
    assert own.status_code == 400
    assert file.read_bytes() == before


def test_points_are_moved_and_taken_out(client: TestClient, file: Path) -> None:
    """From an order that is no longer the present one nothing is moved."""
    page = client.get(POINTS).text
    sent = client.post(f"{POINTS}/p3", data={"do": "earlier", "was": order_in(page)})
    assert sent.headers["location"] == f"{POINTS}#point-p3"
    assert [point["id"] for point in read(file)["points"]] == ["p1", "p3", "p2", "p4"]
    late = client.post(f"{POINTS}/p3", data={"do": "earlier", "was": order_in(page)})
    assert late.status_code == 409
    assert "it now stands as below" in late.text
    client.post(f"{POINTS}/p1", data={"do": "later", "was": order_in(late.text)})
    client.post(f"{POINTS}/p2", data={"do": "remove", "was": state_in(client.get(f"{POINTS}/p2").text)})
    assert [point["id"] for point in read(file)["points"]] == ["p3", "p1", "p4"]
    assert client.get(f"{POINTS}/p2").status_code == 404


def test_a_thesis_changed_meanwhile_is_shown_beside_what_was_typed(client: TestClient, file: Path) -> None:
    """Nothing is overwritten until the writer has chosen."""
    was = state_in(client.get(POINTS).text)
    file.write_text(json.dumps({**read(file), "thesis": "Theirs."}), "utf-8")
    both = client.post(POINTS, data={"thesis": "Mine.", "was": was})
    assert both.status_code == 409
    assert "Theirs." in both.text
    assert "Mine.</textarea>" in both.text
    assert read(file)["thesis"] == "Theirs."
    client.post(POINTS, data={"thesis": "Mine.", "was": state_in(both.text)})
    assert read(file)["thesis"] == "Mine."


def test_a_point_changed_meanwhile_is_shown_beside_what_was_typed(client: TestClient, file: Path) -> None:
    """So is one that has gone: what was typed stands in the form for a new one."""
    was = state_in(client.get(f"{POINTS}/p4").text)
    found = read(file)
    found["points"][3] |= {"text": "Theirs.", "weight": "optional"}
    file.write_text(json.dumps(found), "utf-8")
    typed = {"text": "Mine.", "weight": "main", "source": "osei-2014", "page": "119"}
    both = client.post(f"{POINTS}/p4", data={**typed, "was": was})
    assert both.status_code == 409
    assert "as an optional point from Lund (1999), page 61:" in both.text
    assert all(words in both.text for words in ("Theirs.", "Mine.", 'value="119"'))
    assert client.post(f"{POINTS}/p4", data={"do": "remove", "was": was}).status_code == 409
    assert read(file) == found
    file.write_text(json.dumps({**found, "points": found["points"][:3]}), "utf-8")
    gone = client.post(f"{POINTS}/p4", data={**typed, "was": state_in(both.text)})
    assert gone.status_code == 409
    assert "Mine." in gone.text
    assert 'value="119"' in gone.text
    client.post(f"{POINTS}/p3", data={**typed, "was": state_in(client.get(f"{POINTS}/p3").text)})
    assert read(file)["points"][2]["text"] == "Mine."


@pytest.mark.parametrize("broken", [b'{"points": [', b"[1]", b'{"points": {}}', b"\x89PNG\r\n\x1a\n"])
def test_a_file_that_cannot_be_read_is_told_and_never_overwritten(
    client: TestClient, file: Path, broken: bytes
) -> None:
    """The page says what is wrong and offers no form; what is sent nevertheless is shown again."""
    file.write_bytes(broken)
    page = client.get(POINTS)
    assert page.status_code == 200
    assert "Mend points.json in an editor" in page.text
    assert "points.json: " in page.text
    assert "<form" not in page.text
    for data in ({"thesis": "Mine.", "was": ""}, {"text": "Mine.", "weight": "main"}):
        sent = client.post(POINTS, data=data)
        assert sent.status_code == 400
        assert "Mine.</textarea>" in sent.text
    assert client.post(f"{POINTS}/p1", data={"do": "later", "was": ""}).status_code == 400
    assert file.read_bytes() == broken


def test_a_script_in_a_point_is_text(client: TestClient, file: Path) -> None:
    """In the thesis, an id, the words, a source and its page."""
    point = {"id": f"a/{EVIL}", "text": EVIL, "sources": [{"id": EVIL, "page": EVIL}]}
    file.write_text(json.dumps({"thesis": EVIL, "points": [point]}), "utf-8")
    own = re.search(rf'href="({POINTS}/a%2F[^"]*)"', client.get(POINTS).text)
    assert own is not None
    for path in (POINTS, own[1]):
        page = client.get(path)
        assert page.status_code == 200
        assert "<script>alert" not in page.text
        assert html.escape(EVIL) in page.text


def test_points_are_written_without_scripts(browser: Browser, served: str, file: Path) -> None:
    """By links and forms alone, on a narrow screen."""
    with browser.new_context(java_script_enabled=False, viewport={"width": 390, "height": 844}) as context:
        page = context.new_page()
        page.goto(served)
        page.goto(page.url.rstrip("/") + POINTS)
        page.get_by_label("The thesis").fill("Speed ended it.")
        page.get_by_role("button", name="Save the thesis").click()
        page.get_by_label("What the paper says there").fill("The boxes were kept.")
        page.get_by_label("optional: it may").check()
        page.get_by_label("Source", exact=True).select_option("museum-2020")
        page.get_by_role("button", name="Add it").click()
        page.get_by_role("button", name="Earlier “The boxes were kept.”").click()
        page.get_by_role("link", name="Change “The boxes were kept.”").click()
        page.get_by_label("What the paper says there").fill("Three boxes were kept.")
        page.get_by_role("button", name="Save").click()
        expect(page.get_by_role("main")).to_contain_text("Three boxes were kept.")
        page.get_by_role("link", name="Change “The boxes cost").click()
        page.get_by_role("button", name="Take it out").click()
        expect(page.get_by_role("main")).not_to_contain_text("The boxes cost")
    assert read(file)["thesis"] == "Speed ended it."
    assert [point["id"] for point in read(file)["points"]] == ["p2", "p3", "p5", "p4"]


def test_nothing_hinders_anybody(browser_page: Page, hindrances: Callable[[Page], list[str]], file: Path) -> None:
    """A point's own page, and the list where a record is faulty."""
    base = browser_page.url.rstrip("/")
    browser_page.goto(f"{base}{POINTS}/p3")
    assert hindrances(browser_page) == []
    file.write_text(json.dumps({"points": [{"text": ""}, *read(file)["points"]]}), "utf-8")
    browser_page.goto(base + POINTS)
    assert "points.json, point 1: it has no text" in browser_page.get_by_role("main").inner_text()
    assert hindrances(browser_page) == []
