"""The rough draft in the page."""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect
from starlette.testclient import TestClient

from fairhand.session.drafting.sitting import begin_sitting

AT = dt.datetime(2027, 2, 8, 11, tzinfo=dt.UTC)
ROUGH = "/paper/tram-libraries/rough"


@pytest.fixture
def paper(desk: Path) -> Path:
    """The paper's folder."""
    return desk / "tram-libraries"


def send(client: TestClient, text: str, **more: str) -> str:
    """What was typed is sent, with a button; where it leads."""
    page = client.get(ROUGH).text
    seen = re.search(r'name="seen" value="([^"]*)"', page)
    assert seen is not None
    sent = client.post(ROUGH, data={"text": text, "seen": seen[1], **more})
    assert sent.status_code == 303
    return str(sent.headers["location"])


def test_nothing_is_counted_or_marked_until_asked(client: TestClient, paper: Path) -> None:
    """Faults that the checks know stand there unremarked, in type unlike the fair copy's."""
    assert send(client, "The the tide (Nobody 12).") == ROUGH
    page = client.get(ROUGH).text
    main = page.split("<main", 1)[1].split("</main>", 1)[0]
    assert 'class="leaf rough"' in page
    assert not re.search(r"\d+ words", main)
    assert "doubled" not in main
    assert (paper / "rough.md").read_text("utf-8") == "The the tide (Nobody 12)."


def test_the_draft_is_begun_only_where_none_is_there(client: TestClient, paper: Path) -> None:
    """Otherwise the page asks, says what becomes of both, and does what is answered."""
    draft = (paper / "draft.md").read_text("utf-8")
    assert send(client, "Rough.", do="draft") == f"{ROUGH}?over=ask#begin"
    assert (paper / "draft.md").read_text("utf-8") == draft
    assert "There is a draft already" in client.get(f"{ROUGH}?over=ask").text
    assert send(client, "Rough.", do="over") == "/paper/tram-libraries/draft"
    assert (paper / "draft.md").read_text("utf-8") == "Rough."
    assert (paper / "rough.md").read_text("utf-8") == "Rough."


def test_a_sitting_tells_only_when_asked(client: TestClient, paper: Path) -> None:
    """An aim in words or minutes shows nothing running out; ended, it is in the log of the plan."""
    send(client, "One two.", do="begin", aim="300", unit="words")
    page = client.get(ROUGH).text
    assert "300" not in re.sub(r"<[^>]*>", "", page)
    assert "End the sitting" in page
    told = client.get(send(client, "One two three four.", do="far")).text
    assert "0 minutes so far, 2 words more; the aim was 300 words." in told
    assert "2 words more" in client.get(f"{ROUGH}/time").text
    ended = client.get(send(client, "One two three four.", do="end")).text
    assert "0 minutes, 2 words more." in ended
    assert '"step": "draft"' in (paper / "time.jsonl").read_text("utf-8")
    assert "Begin a sitting" in client.get(ROUGH).text


def test_the_points_are_set_out_in_order(client: TestClient, paper: Path) -> None:
    """Below what is written, each to be written under."""
    send(client, "Here.", do="points")
    text = (paper / "rough.md").read_text("utf-8")
    assert text.startswith("Here.\n\n[NB: ")
    assert text.index("Borrowing was heavy") > text.index("[NB: ")


def test_the_warm_up_page_belongs_to_no_paper(client: TestClient, desk: Path) -> None:
    """It is kept on the desk, beside the papers, and is none."""
    page = client.get("/warm-up").text
    assert "it belongs to no paper" in page
    kept = client.post("/warm-up", data={"text": "la la", "seen": ""}, headers={"hx-request": "true"})
    assert (kept.status_code, "Kept." in kept.text) == (200, True)
    assert (desk / "warm-up.md").read_text("utf-8") == "la la"
    assert client.post("/warm-up", data={"text": "other", "seen": ""}).status_code == 409
    home = client.get("/").text
    assert "tram-libraries" in home
    assert 'href="/warm-up"' in home


def test_asides_and_tks_come_by_one_key(browser_page: Page, paper: Path) -> None:
    """In a browser: at the cursor, which stands within the aside then; undone like anything typed, and kept."""
    browser_page.goto(browser_page.url.rstrip("/") + ROUGH)
    field = browser_page.get_by_role("textbox", name="Rough draft")
    field.fill("One  two")
    field.press("ArrowLeft")
    for _ in "two":
        field.press("ArrowLeft")
    field.press("Alt+KeyN")
    field.press_sequentially("why?")
    assert field.input_value() == "One [NB: why?] two"
    field.press("End")
    field.press_sequentially(" ")
    browser_page.get_by_role("button", name="TK").click()
    assert field.input_value() == "One [NB: why?] two TK"
    field.press("Control+z")
    assert "TK" not in field.input_value()
    field.press("Alt+KeyK")
    expect(browser_page.locator("#kept")).to_contain_text("Kept.")
    browser_page.wait_for_timeout(700)
    assert (paper / "rough.md").read_text("utf-8") == "One [NB: why?] two TK"


def test_nothing_hinders_anybody_while_a_sitting_runs(
    browser_page: Page, paper: Path, hindrances: Callable[[Page], list[str]]
) -> None:
    """The page that asks whether a draft gives way, the running sitting, and the warm-up page."""
    (paper / "rough.md").write_text("Words.\n", "utf-8")
    root = browser_page.url.rstrip("/")
    begin_sitting(paper, 25, "minutes", AT)
    for path in (f"{ROUGH}?over=ask", f"{ROUGH}?told=yes", "/warm-up"):
        browser_page.goto(root + path)
        assert hindrances(browser_page) == [], path
