"""A source read in the page, and looked through for words and questions."""

from __future__ import annotations

import json
import re
import threading
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect
from starlette.testclient import TestClient

from fairhand.session.job import Job
from fairhand.session.research.indexing import index_sources
from fairhand.web.pages import find_page

PAPER = "/paper/tram-libraries"
FIND = f"{PAPER}/find"
PDF = f"{PAPER}/sources/osei-2014/text?page=118"
TEXT = f"{PAPER}/sources/lund-1999/text?page=60"
QUESTIONS = """
[[questions]]
id = "q1"
text = "Who counted the volumes that were missing?"

[[questions]]
id = "q2"
text = "What became of the boxes?"

[[questions]]
id = "q3"
text = "Who paid for them?"
state = "answered"
"""


@pytest.fixture
def paper(desk: Path) -> Path:
    """The demo's paper with two open questions and one that is answered."""
    (desk / "tram-libraries" / "focus.toml").write_text(QUESTIONS, "utf-8")
    return desk / "tram-libraries"


def notes_of(paper: Path) -> list[dict[str, object]]:
    """The lines of the paper's notes."""
    return [json.loads(line) for line in (paper / "notes.jsonl").read_text("utf-8").splitlines()]


def test_each_open_question_has_its_passages(client: TestClient, paper: Path) -> None:
    """The likeliest, each with the way to its page and to a note; what is answered is not looked for."""
    page = client.get(FIND).text
    assert "Who counted the volumes that were missing?" in page
    assert "What became of the boxes?" in page
    assert "Who paid for them?" not in page
    assert page.count(">Note this<") == 6
    assert "More<" in page
    one = client.get(FIND, params={"question": "q1"}).text
    assert "What became of the boxes?" not in one
    assert one.count(">Note this<") > 3


def test_words_are_found_and_lead_to_their_page(client: TestClient) -> None:
    """The sentence is marked there, and stands in the note already."""
    page = client.get(FIND, params={"words": "strap readars"}).text
    assert "Nothing stands for “readars”; searched for “readers”." in page
    way = re.search(r'href="([^"]*osei-2014/text[^"]*)#found"', page)
    assert way is not None
    there = client.get(way[1].replace("&amp;", "&")).text
    assert re.search(r"<textarea id=\"quotation\"[^>]*>\s*[^<]*(?:the strap|readers)", there)
    assert 'class="asked-words' in there
    asked = client.get(FIND, params={"words": "Who counted the slips?", "do": "ask"}).text
    assert "What may answer it" in asked
    assert "Nothing was found" in client.get(FIND, params={"words": "xylophone"}).text


def test_without_questions_or_texts_it_says_what_to_do(client: TestClient, desk: Path) -> None:
    """First ask, or first get a text."""
    assert "what you ask under Focus" in client.get(FIND).text
    for file in (desk / "tram-libraries" / "sources").iterdir():
        file.unlink()
    assert "No source has a text at hand yet" in client.get(FIND).text


@pytest.mark.parametrize("words", ["<script>alert(1)</script>", "\x00", '"', "* * *", "a" * 5000, "NEAR(", "\ud7ff￾"])
def test_any_words_may_be_asked_for(client: TestClient, words: str) -> None:
    """Whatever they are, they are shown as text."""
    page = client.get(FIND, params={"words": words})
    assert page.status_code == 200
    assert "<script>alert" not in page.text


def test_a_printed_page_is_shown_with_its_words(client: TestClient) -> None:
    """As a picture with text over it; as text alone where that is asked for, and the way between the two."""
    page = client.get(PDF).text
    drawn = re.search(r'<image href="([^"]+)"', page)
    assert drawn is not None
    picture = client.get(drawn[1].replace("&amp;", "&"))
    assert picture.headers["content-type"] == "image/png"
    assert picture.headers["content-security-policy"].startswith("default-src 'none'")
    assert picture.content.startswith(b"\x89PNG")
    assert re.search(r"<text [^>]*>the public library, and rather little", page)
    text = client.get(f"{PDF}&as=text").text
    assert "<image" not in text
    assert "As printed" in text
    assert "<image" not in client.get(TEXT).text
    assert client.get(f"{PAPER}/sources/lund-1999/picture?part=1").status_code == 404
    assert client.get(f"{PAPER}/sources/none/picture?part=1").status_code == 404


@pytest.mark.parametrize("place", ["from=5&to=2", "from=0&to=999999", "from=-1&to=4", "from=x&to=٣", "from=1"])
def test_a_place_that_is_none_marks_nothing(client: TestClient, place: str) -> None:
    """And hinders nothing."""
    assert 'id="found"' not in client.get(f"{TEXT}&{place}").text


def test_notes_stand_beside_their_words(client: TestClient, paper: Path) -> None:
    """In the margin of the text and of the printed page; one is kept in the words of its page."""
    for source, page, words in (
        ("osei-2014", "118", "People who read  while holding on to SOMETHING"),
        ("lund-1999", "60", "one does not settle"),
    ):
        note = {"source": source, "page": page, "quotation": words, "remark": "so far", "from": "text"}
        client.post(f"{PAPER}/notes", data=note)
    for address in (PDF, TEXT):
        page = client.get(address).text
        assert re.search(r'class="noted" data-of="0"[^>]*><span class="label">so far<', page)
        assert "Who counted the volumes that were missing?" in page
    selectors = [line["target"]["selector"]["refinedBy"] for line in notes_of(paper)]  # type: ignore[index]
    assert [one["exact"] for one in selectors] == [
        "people who read while holding on to something",
        "One does not settle",
    ]
    assert all(one["prefix"] for one in selectors)


def test_words_chosen_on_the_printed_page_become_a_note(browser_page: Page, served: str, desk: Path) -> None:
    """Over a line's end, as the page has them, with its number; nothing else of the lines comes with them."""
    page = browser_page
    page.goto(served.partition("/?")[0] + PDF)
    lines = page.locator(".as-printed text")
    first, last = lines.nth(1).bounding_box(), lines.nth(2).bounding_box()
    assert first is not None
    assert last is not None
    page.mouse.move(first["x"] + first["width"] * 0.5, first["y"] + first["height"] / 2)
    page.mouse.down()
    page.mouse.move(last["x"] + last["width"] * 0.4, last["y"] + last["height"] / 2, steps=5)
    page.mouse.up()
    page.get_by_role("button", name="Note these words").click()
    chosen = page.locator("#quotation").input_value()
    assert 20 < len(chosen) < 120
    assert "Historians" not in chosen
    expect(page.locator("#remark")).to_be_focused()
    page.keyboard.type("the strap again")
    page.get_by_role("button", name="Note it").click()
    expect(page.get_by_role("link", name="the strap again", exact=True)).to_be_visible()
    (note,) = notes_of(desk / "tram-libraries")
    assert note["target"]["selector"]["value"] == "page=118"  # type: ignore[index]
    assert note["target"]["selector"]["refinedBy"]["suffix"]  # type: ignore[index]


def test_words_chosen_in_the_text_become_a_note(browser_page: Page, served: str) -> None:
    """What is chosen elsewhere on the page is not offered."""
    page = browser_page
    page.goto(served.partition("/?")[0] + TEXT)
    choose = "element => getSelection().selectAllChildren(element)"
    page.locator(".read p").first.evaluate(choose)
    expect(page.get_by_role("button", name="Note these words")).to_be_visible()
    page.locator("h1").evaluate(choose)
    expect(page.get_by_role("button", name="Note these words")).to_be_hidden()


WAYS = {"by day": {}, "at night": {"color_scheme": "dark"}, "narrow": {"viewport": {"width": 390, "height": 844}}}


@pytest.mark.parametrize("way", WAYS)
def test_nothing_hinders_anybody_in_reading(
    browser: Browser, served: str, paper: Path, hindrances: Callable[[Page], list[str]], way: str
) -> None:
    """The find page with passages, a printed page and a text, with a sentence marked and a note beside it."""
    at = served.partition("/?")[0]
    with browser.new_context(**WAYS[way]) as context:  # type: ignore[arg-type]
        page = context.new_page()
        page.goto(served)
        page.goto(at + TEXT)
        page.locator("#quotation").fill("One does not settle")
        page.get_by_role("button", name="Note it").click()
        for path in (FIND, f"{FIND}?words=strap", f"{PDF}&from=20&to=90#found", f"{TEXT}&from=70&to=120#found"):
            page.goto(at + path)
            page.wait_for_load_state()
            assert hindrances(page) == [], path
            assert page.evaluate("document.documentElement.scrollWidth <= window.innerWidth"), path
        seen = page.evaluate("getComputedStyle(document.querySelector('.reading-for')).position")
        assert seen == "sticky"


def test_without_scripts_all_of_it_works(browser: Browser, served: str, paper: Path) -> None:
    """From a question to its page, and to a note of the sentence that was marked."""
    with browser.new_context(java_script_enabled=False) as context:
        page = context.new_page()
        page.goto(served)
        page.goto(served.partition("/?")[0] + FIND)
        page.get_by_role("link", name=re.compile("^Note this")).first.click()
        assert page.locator("#quotation").input_value()
        page.locator("#remark").fill("an answer")
        page.get_by_role("button", name="Note it").click()
        expect(page.get_by_text("an answer").first).to_be_visible()
    assert notes_of(paper)[0]["body"]


def test_many_new_texts_are_made_ready_while_one_watches(client: TestClient, monkeypatch: pytest.MonkeyPatch) -> None:
    """The page says how far it is and asks again; once it is over the search that was asked for is answered."""
    go_on = threading.Event()

    def index_slowly(folder: Path, job: Job[int]) -> int:
        job.total, job.done = 8, 3
        go_on.wait(20)
        return index_sources(folder, job)

    monkeypatch.setattr(find_page, "MANY", 2)
    monkeypatch.setattr(find_page, "SOON_SECONDS", 0.05)
    monkeypatch.setattr(find_page, "index_sources", index_slowly)
    first = client.get(f"{PAPER}/find?words=strap+readers").text
    assert "3 of 8 texts are ready to be searched" in first
    assert f'hx-get="{PAPER}/find?words=strap%20readers"' in first
    assert "3 of 8" in client.get(f"{PAPER}/find?words=strap+readers").text
    go_on.set()
    monkeypatch.setattr(find_page, "SOON_SECONDS", 20.0)
    assert "Osei (2014), page 118" in client.get(f"{PAPER}/find?words=strap+readers").text
