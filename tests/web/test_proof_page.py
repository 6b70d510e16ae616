"""The proof in the page: marked and not changed, then gone through."""

from __future__ import annotations

import html
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page
from starlette.testclient import TestClient

from fairhand.model.lapse import Lapse
from fairhand.session.correction.lapses import keep_lapse

PROOF = "/paper/tram-libraries/proof"


@pytest.fixture
def paper(desk: Path) -> Path:
    """The paper's folder."""
    return desk / "tram-libraries"


def told(client: TestClient, query: str = "") -> str:
    """What the page says."""
    return html.unescape(client.get(PROOF + query).text)


def test_the_proof_is_the_printed_paper_in_numbered_lines(client: TestClient) -> None:
    """With the running head left out, the citations as they are printed, and the list of works in its own type."""
    page = told(client)
    assert 'id="l-2-5"' in page
    assert "long enough for several pages and and too short" in page
    assert "(Haldane 1). It was a very cheap idea." in page
    assert "<em>Lines and Leaves: The Tram Libraries of Velden</em>" in page
    assert "Begin a pass" in page
    assert "Not in the proof, since it never prints: 2 asides and TKs" in page
    assert "<textarea" not in page


def test_marking_changes_nothing_in_the_text(client: TestClient, paper: Path) -> None:
    """A pass is begun, marked by lines, and ended; until then nothing is mended, and the draft is byte for byte."""
    draft = (paper / "draft.md").read_bytes()
    sent = {"written": '2.5 "and and" / and\n14 "market women" query who says?\n5.4 "Lines and Leaves" bold'}
    assert client.post(f"{PROOF}/mark", data=sent).status_code == 400
    assert client.post(f"{PROOF}/begin", data={"medium": "paper", "by": "Jonas"}).headers["location"] == PROOF
    assert client.post(f"{PROOF}/mark", data=sent).headers["location"] == f"{PROOF}#l-5-4"
    page = told(client)
    assert "A pass on paper is under way, 3 marks so far" in page
    assert '<span class="marked substitute" data-at="1">and and</span>' in page
    refused = client.post(f"{PROOF}/settle", data={"number": "1", "do": "mended", "was": "x", "text": "y"})
    assert refused.status_code in {400, 409}
    assert (paper / "draft.md").read_bytes() == draft
    assert client.post(f"{PROOF}/end", data={"read_to": "9.9"}).status_code == 400
    assert client.post(f"{PROOF}/end", data={"read_to": "4.3"}).status_code == 303
    assert "Not read: from page 4, line 3 on to page 5." in told(client)
    assert (paper / "draft.md").read_bytes() == draft


def test_the_writers_lapses_stand_at_the_head_of_the_proof(client: TestClient, paper: Path) -> None:
    """The three most frequent, with their number in the draft; a pass can be for one of them alone."""
    (paper.parent / "lapses.toml").unlink()
    assert "Your lapses" not in told(client)
    for wrong, times in (("very cheap", 4), ("by hart", 3), ("in tact", 2), ("all of the sudden", 1)):
        for _ in range(times):
            keep_lapse(paper, Lapse(wrong, wrong=wrong))
    page = told(client)
    head = page[: page.index("Begin a pass")]
    assert "very cheap: 1 in this draft" in head
    assert (
        head.index("very cheap:") < head.index("by hart: not in this draft") < head.index("in tact: not in this draft")
    )
    assert "all of the sudden" not in page
    assert '<option value="very cheap">' in page


def test_marks_are_gone_through_one_after_another(client: TestClient, paper: Path) -> None:
    """The passage stands in the form with the mark carried out; each answer leads to the next mark, and is counted."""
    client.post(f"{PROOF}/begin", data={"medium": "page"})
    client.post(f"{PROOF}/mark", data={"written": '2.5 "and and" / and\n14 "market women" query who says?'})
    client.post(f"{PROOF}/end", data={})
    form = client.get(f"{PROOF}?mark=1").text
    was, text = (
        html.unescape(form.split(start, 1)[1].split(end, 1)[0])
        for start, end in (('name="was" value="', '"'), ('id="text-1" name="text"', "</textarea>"))
    )
    text = text.split(">\n", 1)[1]
    assert text == was.replace("pages and and too", "pages and too")
    sent = {"number": "1", "do": "mended", "was": was, "text": text, "which": "0", "many": "1"}
    assert client.post(f"{PROOF}/settle", data=sent).headers["location"] == f"{PROOF}?mark=2#mark-2"
    assert "several pages and too short" in (paper / "draft.md").read_text("utf-8")
    assert client.post(f"{PROOF}/settle", data={"number": "2", "do": "query"}).headers["location"] == PROOF
    page = told(client)
    assert "1 query still to be asked" in page
    assert "2 marks (1 mended, 1 to be asked)" in page


def test_a_draft_changed_meanwhile_is_not_overwritten(client: TestClient, paper: Path) -> None:
    """Both versions are shown, and nothing is counted as mended."""
    client.post(f"{PROOF}/begin", data={"medium": "page"})
    client.post(f"{PROOF}/mark", data={"written": '2.5 "and and" / and'})
    client.post(f"{PROOF}/end", data={})
    sent = {
        "number": "1",
        "do": "mended",
        "was": "A passage of another hour.",
        "text": "New.",
        "which": "0",
        "many": "1",
    }
    both = client.post(f"{PROOF}/settle", data=sent)
    assert both.status_code == 409
    assert "Another program changed draft.md" in both.text
    assert "1 still open" in told(client)


def test_words_chosen_on_an_older_proof_are_refused(client: TestClient) -> None:
    """Where the text was changed since, the places are others."""
    client.post(f"{PROOF}/begin", data={"medium": "page"})
    sent = {"start": "10", "stop": "20", "state": "older", "sign": "delete", "words": ""}
    assert client.post(f"{PROOF}/mark", data=sent).status_code == 409


def test_an_empty_draft_has_no_proof(client: TestClient, paper: Path) -> None:
    """That is said, and no pass can be begun."""
    (paper / "draft.md").write_text("", "utf-8")
    assert "There is no draft yet" in told(client)
    assert client.post(f"{PROOF}/begin", data={"medium": "page"}).status_code == 400


def test_words_are_marked_by_the_keyboard_and_the_pointer(
    browser_page: Page, hindrances: Callable[[Page], list[str]], paper: Path
) -> None:
    """Arrow keys choose words, a letter marks them; the pointer chooses whole words; nobody is hindered."""
    page, draft = browser_page, (paper / "draft.md").read_bytes()
    origin = page.url.split("/", 3)
    page.goto(f"{origin[0]}//{origin[2]}{PROOF}")
    page.locator("form[action$=begin] button").click()
    page.locator("article.proof").focus()
    for key in ("ArrowDown",) * 8:
        page.keyboard.press(key)
    for key in ("ArrowRight", "Shift+ArrowRight"):
        page.keyboard.press(key)
    with page.expect_navigation():
        page.keyboard.press("d")
    assert page.locator('.marked.delete[data-at="1"]').inner_text() == "from a"
    page.locator("article.proof").focus()
    for key in ("ArrowDown",) * 10:
        page.keyboard.press(key)
    page.keyboard.press("/")
    page.locator("#choosing #words").fill("rows")
    with page.expect_navigation():
        page.keyboard.press("Enter")
    assert "rows" in page.locator(".noted .matter").inner_text()
    line = page.locator("#l-1-16 .type")
    line.scroll_into_view_if_needed()
    box = line.bounding_box()
    assert box is not None
    page.mouse.move(box["x"] + 12, box["y"] + box["height"] / 2)
    page.mouse.down()
    page.mouse.move(box["x"] + 130, box["y"] + box["height"] / 2, steps=4)
    page.mouse.up()
    page.locator("#choosing").wait_for(state="visible")
    assert page.locator("#choosing .words").inner_text() == "“began with books that”"
    assert hindrances(page) == []
    page.locator("#choosing #sign").select_option("query")
    with page.expect_navigation():
        page.locator("#choosing button").first.click()
    assert page.locator(".marked.query").inner_text() == "began with books that"
    page.locator(".ending-pass summary").click()
    with page.expect_navigation():
        page.locator(".ending-pass button").click()
    assert (paper / "draft.md").read_bytes() == draft
    for scheme, width in (("dark", 1200), ("light", 420)):
        page.emulate_media(color_scheme=scheme)  # type: ignore[arg-type]
        page.set_viewport_size({"width": width, "height": 900})
        page.goto(f"{origin[0]}//{origin[2]}{PROOF}?mark=1")
        assert hindrances(page) == []
        assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")


def test_a_pass_goes_on_over_the_proof_that_it_began_with(client: TestClient, paper: Path) -> None:
    """Where the draft is changed meanwhile, that is said, and the lines stay those that are being read."""
    client.post(f"{PROOF}/begin", data={"medium": "paper"})
    text = (paper / "draft.md").read_text("utf-8")
    (paper / "draft.md").write_text(text.replace("Then they were taken down.", ""), "utf-8")
    page = told(client)
    assert "this is the proof as it was then" in page
    assert "Then they were taken down." in page
    assert client.post(f"{PROOF}/mark", data={"written": '2.5 "and and" / and'}).status_code == 303
    client.post(f"{PROOF}/end", data={})
    assert "Then they were taken down." not in told(client)
