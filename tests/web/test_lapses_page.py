"""The page of the writer's lapses and words."""

from __future__ import annotations

import html
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page
from starlette.testclient import TestClient

LAPSES = "/paper/tram-libraries/lapses"


def told(client: TestClient) -> str:
    """The page as it reads."""
    return html.unescape(client.get(LAPSES).text)


def test_each_lapse_is_told_whole(client: TestClient) -> None:
    """Count, last day, example, what is looked for, and its places in this draft."""
    page = told(client)
    assert "7 times, last on Friday 4 December 2026, as in “and in the the second winter nobody rowed”" in page
    assert 'href="/paper/tram-libraries/copy-edit?kind=doubled-word"' in page
    assert "Looked for: “amount of”; meant: “number of”." in page
    assert "It was a ⸢very⸣ cheap idea." in page
    assert "it has died out" in page


def test_a_lapse_is_written_down_and_looked_for_no_more(client: TestClient, desk: Path) -> None:
    """By its words, or by a kind of error; what says neither is refused, and stays in the form."""
    client.post(LAPSES, data={"do": "keep", "wrong": "the men who", "right": "those who"})
    assert "“the men who” for “those who”" in told(client)
    client.post(LAPSES, data={"do": "keep", "check": "comma-splice"})
    assert 'check = "comma-splice"' in (desk / "lapses.toml").read_text("utf-8")
    answer = client.post(LAPSES, data={"do": "keep", "name": "my worst"})
    assert answer.status_code == 400
    assert "needs the words that are wrong, or the name of a check." in answer.text
    assert 'value="my worst"' in answer.text
    client.post(LAPSES, data={"do": "forget", "name": "comma splice"})
    assert "comma-splice" not in (desk / "lapses.toml").read_text("utf-8")
    assert client.post(LAPSES, data={"do": "forget", "name": "comma splice"}).status_code == 400


def test_comments_are_learnt_from(client: TestClient, desk: Path) -> None:
    """Those of the paper that came back, and none twice."""
    assert "Learn from them" not in told(client)
    account = '[returned]\nwhen = "2027-03-01"\ncomments = ["“very” should be “rather”", "Nice."]\n'
    (desk / "tram-libraries" / "hand-in.toml").write_text(account, "utf-8")
    assert "2 comments of the paper that came back are kept" in told(client)
    for learnt in ("1", "0"):
        answer = client.post(LAPSES, data={"do": "returned"})
        assert answer.headers["location"] == f"{LAPSES}?learnt={learnt}"
    assert "“very” before a plain fact" in told(client)
    assert "6 times" in told(client)


def test_words_are_put_on_the_list_and_taken_off(client: TestClient, desk: Path) -> None:
    """What is no word is refused."""
    client.post(LAPSES, data={"do": "word", "word": "bioswale"})
    assert (desk / "words.txt").read_text("utf-8") == "bioswale\n"
    assert 'value="bioswale">Take off' in told(client)
    client.post(LAPSES, data={"do": "unword", "word": "bioswale"})
    assert (desk / "words.txt").read_text("utf-8") == ""
    assert client.post(LAPSES, data={"do": "word", "word": "12"}).status_code == 400


def test_a_broken_list_is_told(client: TestClient, desk: Path) -> None:
    """And not written over."""
    (desk / "lapses.toml").write_text("[[lapses]\n", "utf-8")
    assert "lapses.toml: it is not TOML" in told(client)
    assert client.post(LAPSES, data={"do": "keep", "wrong": "alot"}).status_code >= 400
    assert (desk / "lapses.toml").read_text("utf-8") == "[[lapses]\n"


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_the_page_hinders_nobody(
    desk: Path, browser_page: Page, hindrances: Callable[[Page], list[str]], scheme: str
) -> None:
    """axe-core finds nothing, by day and by night, wide and narrow; a lapse is written down by keyboard."""
    (desk / "words.txt").write_text("bioswale\n", "utf-8")
    browser_page.emulate_media(color_scheme="dark" if scheme == "dark" else "light")
    host = browser_page.url.split("/", 3)
    for width in (1280, 380):
        browser_page.set_viewport_size({"width": width, "height": 900})
        browser_page.goto(f"{host[0]}//{host[2]}{LAPSES}")
        assert hindrances(browser_page) == []
    browser_page.get_by_label("Words that you write by mistake").fill("nearly every")
    browser_page.keyboard.press("Enter")
    browser_page.get_by_role("heading", name="nearly every").wait_for()
