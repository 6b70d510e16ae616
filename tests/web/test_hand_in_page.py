"""The hand-in in the page."""

from __future__ import annotations

import html
import re
from collections.abc import Callable
from contextlib import AbstractContextManager
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Page
from starlette.testclient import TestClient

WAYS: dict[str, dict[str, Any]] = {
    "by day": {"color_scheme": "light"},
    "at night": {"color_scheme": "dark"},
    "narrow": {"viewport": {"width": 390, "height": 844}},
}
HAND_IN = "/paper/tram-libraries/hand-in"


@pytest.fixture
def paper(desk: Path) -> Path:
    """The paper's folder, its draft without what is not printed."""
    folder = desk / "tram-libraries"
    draft = folder / "draft.md"
    text = draft.read_text("utf-8").replace("[NB: find out what the book was?]", "").replace("TK", "")
    draft.write_text(text, "utf-8")
    return folder


def shown(client: TestClient) -> str:
    """The page's text."""
    return " ".join(html.unescape(re.sub(r"<[^>]+>", " ", client.get(HAND_IN).text)).split())


def test_what_is_asked_and_what_is_left_stand_on_the_page(client: TestClient) -> None:
    """Kind of file, name, way, words by the sheet's rule; each step leads to its page."""
    page = client.get(HAND_IN).text
    assert '/paper/tram-libraries/copy-edit">Copy-edit it</a>' in page
    for words in ("tram-libraries.pdf", "899, counted by the sheet", "By upload", "Nine things are left"):
        assert words in shown(client)


def test_what_was_used_is_one_step_from_its_statement(client: TestClient, paper: Path) -> None:
    """The statement is the writer's own; the list of what looked through the paper stands at the copy-edit."""
    client.post(HAND_IN, data={"do": "state", "kind": "tools", "words": "A spell-checker."})
    assert 'href="/paper/tram-libraries/copy-edit?used=1#used"' in client.get(HAND_IN).text
    assert "Copying: the draft held word by word" in client.get("/paper/tram-libraries/copy-edit?used=1").text


def test_statements_are_written_by_the_writer(client: TestClient, paper: Path) -> None:
    """Empty until they are written; taken back when they are emptied."""
    sent = {"do": "state", "kind": "help", "words": "My sister read it."}
    assert client.post(HAND_IN, data=sent).headers["location"] == f"{HAND_IN}#statements"
    assert 'help = "My sister read it."' in (paper / "hand-in.toml").read_text("utf-8")
    assert "My sister read it." in client.get(HAND_IN).text
    client.post(HAND_IN, data={**sent, "words": ""})
    assert "My sister" not in (paper / "hand-in.toml").read_text("utf-8")
    assert client.post(HAND_IN, data={**sent, "kind": "oath"}).status_code == 400


def test_from_making_it_to_putting_it_away(client: TestClient, paper: Path) -> None:
    """Made, fetched, its receipt kept, its marks kept, put away; the desk shows it as done."""
    assert client.post(HAND_IN, data={"do": "make", "form": "docx"}).headers["location"] == f"{HAND_IN}#handed"
    (made,) = (paper / "fair").iterdir()
    file = made / "to hand in" / "tram-libraries.docx"
    assert client.get(f"{HAND_IN}/0/tram-libraries.docx").content == file.read_bytes()
    for wrong in ("0/hashes.txt", "1/tram-libraries.docx", "x/tram-libraries.docx", "0/..%2Fhashes.txt"):
        assert client.get(f"{HAND_IN}/{wrong}").status_code == 404
    assert client.post(HAND_IN, data={"do": "receipt"}).status_code == 400
    client.post(HAND_IN, data={"do": "receipt"}, files={"file": ("mail.txt", b"It came.")})
    assert (made / "receipt mail.txt").read_bytes() == b"It came."
    sent = {
        "do": "returned",
        "mark": "68",
        "other": "Argument",
        "other-got": "18/25",
        "comments": "Whose diary?\n“wich” should be “which”.",
    }
    assert client.post(HAND_IN, data=sent).headers["location"] == f"{HAND_IN}#returned"
    assert "It came back with 68; 1 mark by criterion; 2 comments." in shown(client)
    went = client.post(HAND_IN, data={"do": "lapses"}).headers["location"]
    assert "Learnt: wich" in html.unescape(client.get(went).text)
    assert 'wrong = "wich"' in (paper.parent / "lapses.toml").read_text("utf-8")
    assert client.post(HAND_IN, data={"do": "put-away"}).headers["location"] == "/"
    assert "Done" in client.get("/").text
    assert client.get(HAND_IN).status_code == 404


def test_what_cannot_be_made_is_said_and_what_was_typed_stays(client: TestClient, paper: Path) -> None:
    """A name in the text, where none may stand, is told with its line."""
    client.post(HAND_IN, data={"do": "name", "named": "without", "called": "Candidate 0421"})
    assert "“Candidate 0421” stands in its place" in shown(client)
    name = re.search(r'name = "([^"]+)"', (paper.parent / "desk.toml").read_text("utf-8"))
    assert name
    draft = paper / "draft.md"
    draft.write_text(draft.read_text("utf-8") + f"\nBy {name[1]}.\n", "utf-8")
    refused = client.post(HAND_IN, data={"do": "make"})
    assert refused.status_code == 409
    assert "your name stands there" in html.unescape(refused.text)


def test_the_verdict_ends_with_what_is_left(client: TestClient) -> None:
    """In order, with minutes, each leading to its page."""
    page = client.get("/paper/tram-libraries/verdict").text
    assert "Before the hour" in page
    assert '/paper/tram-libraries/hand-in">Upload it, and keep the receipt</a>' in page


@pytest.mark.parametrize("way", WAYS)
def test_the_whole_page_hinders_nobody(
    browser: Browser,
    desk: Path,
    serve: Callable[..., AbstractContextManager[str]],
    hindrances: Callable[[Page], list[str]],
    client: TestClient,
    paper: Path,
    way: str,
) -> None:
    """With everything on it: statements, hand-ins, receipts, marks."""
    client.post(HAND_IN, data={"do": "state", "kind": "help", "words": "My sister read it."})
    client.post(HAND_IN, data={"do": "make"})
    client.post(HAND_IN, data={"do": "receipt", "words": "No. 7"})
    client.post(HAND_IN, data={"do": "returned", "mark": "68", "comments": "Whose diary?"})
    with serve(desk) as address, browser.new_context(**WAYS[way]) as context:
        page = context.new_page()
        page.goto(address)
        page.goto(address.partition("/?")[0] + HAND_IN)
        assert hindrances(page) == []
        assert page.evaluate("document.documentElement.scrollWidth <= window.innerWidth")


def test_a_statement_is_saved_by_keyboard_without_scripts(
    browser: Browser, desk: Path, serve: Callable[..., AbstractContextManager[str]]
) -> None:
    """Label, words, button: no pointer and no script is needed."""
    with serve(desk) as address, browser.new_context(java_script_enabled=False) as context:
        page = context.new_page()
        page.goto(address)
        page.goto(address.partition("/?")[0] + HAND_IN)
        page.get_by_label("Your words").focus()
        page.keyboard.type("Nobody helped me.")
        page.keyboard.press("Tab")
        page.keyboard.press("Enter")
        page.wait_for_load_state()
        assert page.get_by_label("What programs you used").input_value() == "Nobody helped me."
    assert 'tools = "Nobody helped me."' in (desk / "tram-libraries" / "hand-in.toml").read_text("utf-8")
