"""Revision and copy-edit in the page."""

from __future__ import annotations

import html
import re
from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from playwright.sync_api import Browser, Page, expect
from starlette.testclient import TestClient

from fairhand.manuscript.draft import read_manuscript
from fairhand.model.finding import Finding
from fairhand.model.span import Span
from fairhand.proof.galley import Mark, set_galley
from fairhand.proof.signs import Place
from fairhand.web.sorts import Sort, gather_notes, set_type

PAPER = "/paper/tram-libraries"
COPY_EDIT = f"{PAPER}/copy-edit"


def read_marks(page: str) -> dict[str, int]:
    """The labels of the marks on a page, each with its number."""
    found = re.findall(r'finding=(\d+)#mark.*?<span class="label">(.*?)</span>', page, re.DOTALL)
    return {label: int(number) for number, label in found}


def hidden(page: str, name: str) -> str:
    """What a hidden field of the page holds."""
    found = re.search(rf'name="{name}" value="([^"]*)"', page)
    assert found is not None
    return html.unescape(found[1])


def test_each_pass_has_its_own_marks(client: TestClient) -> None:
    """The argument first, the language second; what is said of the whole stands at the head."""
    revision, copy_edit = client.get(f"{PAPER}/revision").text, client.get(COPY_EDIT).text
    assert set(read_marks(revision)) == {"section missing, must", "point thin, should", "point dependent, should"}
    assert set(read_marks(copy_edit)) == {
        "source uncited, query",
        "placeholder left, must",
        "quotation differs, must",
        "quotation elsewhere, must",
        "doubled word, should",
        "citation page missing, must",
        "aside left, must",
        "citation unknown, must",
    }
    assert "Eight marks are to be gone through" in copy_edit


def test_a_mark_is_given_twice(client: TestClient) -> None:
    """The words are struck in the text; the margin gives what the source has, and the word for what it is."""
    page = client.get(COPY_EDIT).text
    assert re.search(
        r'<span class="marked substitute" data-at="3-0">faith</span><span class="notes"><a class="noted"', page
    )
    assert '<span class="matter">trust</span>' in page
    assert "##" not in page.split("</header>")[1]


def test_a_chosen_mark_tells_what_it_says(client: TestClient) -> None:
    """Both wordings, the rule's source, and the two acts, in its place and without a script."""
    page = client.get(f"{COPY_EDIT}?finding=3").text
    for words in ("differs from its source", "⸢faith⸣", "⸢trust⸣", "By MLA Handbook, 9th ed.", "Mend", "Stet"):
        assert words in page
    assert 'class="told"' not in client.get(f"{COPY_EDIT}?finding=99").text
    assert client.get(f"{COPY_EDIT}?finding=٣").status_code == 200


def test_a_passage_is_mended_in_its_place(client: TestClient, desk: Path) -> None:
    """Saving it leads to the next mark; nothing else of the draft has changed."""
    draft = desk / "tram-libraries" / "draft.md"
    before = draft.read_text("utf-8")
    was = hidden(client.get(f"{COPY_EDIT}?finding=5").text, "was")
    sent = client.post(f"{COPY_EDIT}/mend", data={"was": was, "text": was.replace("and and", "and"), "finding": "5"})
    assert (sent.status_code, sent.headers["location"]) == (303, f"{COPY_EDIT}?finding=5#mark-5")
    assert draft.read_text("utf-8") == before.replace("and and", "and")
    assert "citation page missing" in client.get(sent.headers["location"]).text


def test_a_passage_changed_meanwhile_is_shown_twice(client: TestClient, desk: Path) -> None:
    """Nothing is written over; what was typed can still be saved in place of the other."""
    draft = desk / "tram-libraries" / "draft.md"
    was = hidden(client.get(f"{COPY_EDIT}?finding=5").text, "was")
    draft.write_text(draft.read_text("utf-8").replace("and and too short", "but too short"), "utf-8")
    both = client.post(f"{COPY_EDIT}/mend", data={"was": was, "text": "Mine instead.", "finding": "5"})
    assert both.status_code == 409
    assert "Mine instead." in both.text
    assert "but too short" in both.text
    assert "but too short" in draft.read_text("utf-8")
    assert client.get(f"{COPY_EDIT}/mend").headers["location"] == COPY_EDIT
    client.post(f"{COPY_EDIT}/mend", data={"was": hidden(both.text, "was"), "text": "Mine instead."})
    assert "\n\nMine instead.\n\n" in draft.read_text("utf-8")


def test_one_of_two_passages_that_read_alike_is_mended(client: TestClient, desk: Path) -> None:
    """The one that the mark is on, and not the other."""
    draft = desk / "tram-libraries" / "draft.md"
    draft.write_text("# Lamps\n\nThe lamp TK.\n\nThey were lit.\n\nThe lamp TK.\n", "utf-8")
    marks = [
        number
        for number in range(1, 9)
        if "Matter is still to come" in client.get(f"{COPY_EDIT}?finding={number}").text
    ]
    page = client.get(f"{COPY_EDIT}?finding={marks[1]}").text
    sent = {name: hidden(page, name) for name in ("was", "which", "many")}
    client.post(f"{COPY_EDIT}/mend", data=sent | {"text": "The lamp went out.", "finding": str(marks[1])})
    assert draft.read_text("utf-8") == "# Lamps\n\nThe lamp TK.\n\nThey were lit.\n\nThe lamp went out.\n"


def test_what_was_typed_stays_where_nothing_can_be_written(client: TestClient, desk: Path) -> None:
    """The page says why, at the mark; the passage, or the reason, is still in its form."""
    paper = desk / "tram-libraries"
    page = client.get(f"{COPY_EDIT}?finding=5").text
    was, name = hidden(page, "was"), hidden(page, "mark")
    paper.chmod(0o500)
    try:
        mended = client.post(f"{COPY_EDIT}/mend", data={"was": was, "text": "Mine instead.", "finding": "5"})
        stood = client.post(f"{COPY_EDIT}/stet", data={"mark": name, "reason": "so said", "finding": "5", "do": "stet"})
    finally:
        paper.chmod(0o700)
    for answer, typed in ((mended, "Mine instead.</textarea>"), (stood, 'value="so said"')):
        assert answer.status_code == 409
        told = answer.text.split('id="mark-5"')[1]
        assert 'role="alert"' in told
        assert "nothing can be written there" in told
        assert typed in told
    assert "<details open>" in mended.text


def test_a_mark_is_let_stand_and_taken_back(client: TestClient) -> None:
    """With the reason; it is dotted and ticked, the verdict no longer tells of it, and it can be a mark again."""
    name = hidden(client.get(f"{COPY_EDIT}?finding=5").text, "mark")
    sent = client.post(
        f"{COPY_EDIT}/stet", data={"mark": name, "reason": "so she said it", "finding": "5", "do": "stet"}
    )
    assert sent.headers["location"] == f"{COPY_EDIT}?finding=6#mark-6"
    page = client.get(f"{COPY_EDIT}?finding=5").text
    assert "doubled word, stet" in page
    assert 'class="marked stet"' in page
    assert "You let it stand: so she said it." in page
    assert "Seven marks are to be gone through" in page
    assert "Let stand: 1" in client.get(f"{PAPER}/verdict").text
    client.post(f"{COPY_EDIT}/stet", data={"mark": hidden(page, "mark"), "finding": "5", "do": "undo"})
    assert "doubled word, should" in client.get(COPY_EDIT).text


def test_what_the_sheet_asks_is_not_let_stand_here(client: TestClient) -> None:
    """A missing section is waived in the brief, with who said so."""
    page = client.get(f"{PAPER}/revision?finding=1").text
    assert "waived in" in page
    assert "Let it stand" not in page


def test_a_mark_that_is_gone_is_not_let_stand(client: TestClient) -> None:
    """The draft has changed: the writer looks again."""
    sent = client.post(f"{COPY_EDIT}/stet", data={"mark": "0" * 16, "do": "stet"})
    assert sent.status_code == 409
    assert "look at the page again" in sent.text


def test_an_empty_draft_says_what_to_do_first(client: TestClient, desk: Path) -> None:
    """Without a draft there is nothing to mark."""
    (desk / "tram-libraries" / "draft.md").unlink()
    for leaf in ("revision", "copy-edit"):
        assert "There is no draft yet" in client.get(f"{PAPER}/{leaf}").text


@pytest.mark.parametrize(
    "hostile", ["<script>alert(1)</script>", "<img src=x onerror=alert(1)>", "[x](javascript:a.b)"]
)
def test_hostile_text_is_text(client: TestClient, desk: Path, hostile: str) -> None:
    """Whatever stands in a draft is shown and never run."""
    draft = desk / "tram-libraries" / "draft.md"
    matter = f"\n\n`{hostile}` the the {hostile}\n\n{hostile}\n\n> {hostile} the the\n\n[NB: {hostile}] TK\n"
    draft.write_text(draft.read_text("utf-8") + matter, "utf-8")
    for number in range(14):
        matter = client.get(f"{COPY_EDIT}?finding={number}").text.split('id="matter"')[1]
        assert "<script" not in matter
        assert "<img" not in matter
        assert "javascript:a.b" not in re.sub(r"value=\"[^\"]*\"", "", "".join(re.findall(r"<[^>]*>", matter)))


@given(st.text("ab \n", max_size=30), st.lists(st.tuples(st.integers(0, 30), st.integers(0, 9)), max_size=5))
def test_signs_are_nested_and_each_mark_is_noted(text: str, spans: list[tuple[int, int]]) -> None:
    """What opens closes, in order; each note stands once; no type is lost."""
    places = [Span(min(a, len(text)), min(a + n, len(text))) for a, n in spans]
    marks = [
        Mark(n, Finding("x", "copy-edit", "must", p, "", ""), (Place(p, "query" if len(p) else "insert"),))
        for n, p in enumerate(places, 1)
    ]
    for line in set_galley(read_manuscript(text), marks).lines:
        sorts = list(set_type(line.stretches, marks))
        assert "".join(s.text for s in sorts) == "".join(s.text for s in line.stretches)
        depth = 0
        for sort in sorts:
            depth += {"open": 1, "close": -1}.get(sort.kind, 0)
            assert depth >= 0
        assert depth == 0
        noted = [sort.mark for sort in sorts if sort.kind == "note"]
        assert sorted(noted) == sorted(key[0] for s in line.stretches for key in s.begins)
        together = [key[0] for sort in gather_notes(sorts) for key in sort.notes]
        assert together == noted


def test_a_note_stands_right_after_its_word() -> None:
    """So that it is on the word's own line, wherever the line ends."""
    text = "cost TK crowns"
    mark = Mark(1, Finding("x", "copy-edit", "must", Span(5, 7), "", ""), (Place(Span(5, 7), "substitute"),))
    (line,) = set_galley(read_manuscript(text), [mark]).lines
    assert list(set_type(line.stretches, [mark]))[2:5] == [Sort("type", "TK"), Sort("close"), Sort("note")]


def test_the_marks_are_gone_through_by_keyboard(browser_page: Page) -> None:
    """From mark to mark, into one, mended, and on to the next; each note in the nearer margin, on its word's line."""
    page = browser_page
    page.goto(page.url.partition("/?")[0].rstrip("/") + COPY_EDIT)
    for key in ("n", "n", "n", "p", "n", "Enter"):
        page.keyboard.press(key)
    told = page.locator(".told")
    expect(told).to_contain_text("differs from its source")
    page.evaluate("document.fonts.ready")
    sheet = page.locator(".proof").bounding_box()
    assert sheet is not None
    middle = sheet["x"] + sheet["width"] / 2
    for number in ("3-0", "5-0"):
        at, note = (page.locator(f'[{name}="{number}"]').bounding_box() for name in ("data-at", "data-of"))
        assert at is not None
        assert note is not None
        assert abs(at["y"] + at["height"] / 2 - note["y"] - 16) < 12
        assert (note["x"] < at["x"]) == (at["x"] + at["width"] / 2 < middle)
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    field = page.get_by_label("The passage as you wrote it")
    expect(field).to_be_focused()
    field.fill(field.input_value().replace("faith", "trust"))
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    page.wait_for_url("**finding=3#mark-3")
    expect(page.locator(".told")).to_contain_text("stand on p. 2, not on p. 3")


CROWDED = """
The the lamps TK were were lit late (Sundby 44) and and the TK town (Marsh 3) slept slept on in TK peace for years
[NB: how many?] before the the lamps came back, and TK and TK and TK and TK and TK and TK and TK and TK and TK and TK
and TK again.

- the the lamp TK in a list TK
- the the lamp TK in a list TK
"""


@pytest.mark.parametrize("scripts", [True, False])
@pytest.mark.parametrize("media", ["screen", "print"])
def test_notes_never_lie_on_each_other(browser: Browser, served: str, desk: Path, scripts: bool, media: str) -> None:
    """However many marks a line has, each note is beside it or a little below: without scripts and printed, too."""
    draft = desk / "tram-libraries" / "draft.md"
    draft.write_text(draft.read_text("utf-8").replace("## The Cars", f"{CROWDED}\n## The Cars"), "utf-8")
    with browser.new_context(java_script_enabled=scripts, viewport={"width": 1200, "height": 900}) as context:
        page = context.new_page()
        page.goto(served)
        page.goto(served.partition("/?")[0] + COPY_EDIT)
        page.wait_for_timeout(300)
        page.emulate_media(media="print" if media == "print" else "screen")
        notes = [(note, note.bounding_box()) for note in page.locator(".noted").all()]
        boxes = [box for _, box in notes if box is not None]
        assert len(boxes) > 20
        for index, one in enumerate(boxes):
            for other in boxes[:index]:
                beside = one["x"] >= other["x"] + other["width"] - 1 or other["x"] >= one["x"] + one["width"] - 1
                below = one["y"] >= other["y"] + other["height"] - 1 or other["y"] >= one["y"] + one["height"] - 1
                assert beside or below
        far = []
        for note, box in notes:
            at = page.locator(f'[data-at="{note.get_attribute("data-of")}"]').bounding_box()
            assert at is not None
            assert box is not None
            far.append(abs(box["y"] - at["y"]))
        print(
            f"\n{media}, {'with' if scripts else 'without'} scripts: notes at most {max(far):.0f} px from their lines"
        )
        assert max(far) < (96 if scripts and media == "screen" else 240)


def test_without_scripts_a_mark_is_let_stand(browser: Browser, served: str) -> None:
    """Links and forms do all of it."""
    with browser.new_context(java_script_enabled=False) as context:
        page = context.new_page()
        page.goto(served)
        page.goto(served.partition("/?")[0] + COPY_EDIT)
        page.get_by_role("link", name="doubled word, should").click()
        page.get_by_text("Stet", exact=True).click()
        page.get_by_label("Why it shall stand").fill("so it was said")
        page.get_by_role("button", name="Let it stand").click()
        expect(page.get_by_role("link", name="doubled word, stet")).to_be_visible()
        expect(page.get_by_text("Seven marks are to be gone through")).to_be_visible()


def test_a_told_mark_hinders_nobody(browser_page: Page, hindrances: Callable[[Page], list[str]]) -> None:
    """axe-core finds nothing in the way where a mark is told of, its forms open."""
    page = browser_page
    page.goto(page.url.partition("/?")[0].rstrip("/") + f"{COPY_EDIT}?finding=3")
    for summary in page.locator(".told summary").all():
        summary.click()
    assert hindrances(page) == []
