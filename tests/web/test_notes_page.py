"""Notes in the page."""

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

from fairhand.model.note import Note
from fairhand.reading.notes_file import put_note

PAPER = "/paper/tram-libraries"
NOTES = f"{PAPER}/notes"
EVIL = "</textarea><script>alert(1)</script>"


@pytest.fixture
def file(desk: Path) -> Path:
    """The paper's file of notes."""
    return desk / "tram-libraries" / "notes.jsonl"


def write(file: Path, *notes: Note) -> None:
    """The file holds these notes."""
    file.write_text("".join(put_note("", note) for note in notes), "utf-8")


def address_in(page: str) -> str:
    """The address of the first note on a page."""
    found = re.search(rf"{NOTES}/[0-9a-f]+", page)
    assert found is not None
    return found[0]


def state_in(page: str) -> str:
    """The state that a page's form was made from."""
    found = re.search(r'name="was" value="([^"]*)"', page)
    assert found is not None
    return found[1]


def test_notes_stand_by_source_and_page(client: TestClient, file: Path) -> None:
    """In the order of the source's own pages; those that lack a page have a list of their own, and say so first."""
    write(
        file,
        Note("c", "osei-2014", page="120", remark="third"),
        Note("a", "osei-2014", page="118", remark="first"),
        Note("x", "museum-2020", remark="of no page"),
        Note("u", "osei-2014", remark="somewhere"),
        Note("b", "osei-2014", page="119", remark="second"),
        Note("n", "nobody-1900", page="4", remark="of nobody"),
    )
    page = client.get(NOTES).text
    assert "One note has no page yet" in page
    places = [page.index(w) for w in ("first", "second", "third", "of nobody", "Without a page</h2>", "somewhere")]
    assert places == sorted(places)
    assert page.index("of no page<") < page.index("Without a page</h2>")
    assert f'{PAPER}/sources/osei-2014/text?page=119"' in page
    assert "nobody-1900/text" not in page  # no link to a text that is not there


def test_no_notes_yet_says_what_to_do(client: TestClient, desk: Path) -> None:
    """With sources, note; without any, add one first."""
    assert "Note what you read as you read it" in client.get(NOTES).text
    (desk / "tram-libraries" / "sources.json").unlink()
    assert "Add the first source" in client.get(NOTES).text


def test_a_note_is_taken_and_not_twice(client: TestClient, file: Path) -> None:
    """The form leads back to the list; sent again it adds nothing."""
    typed = {"source": "osei-2014", "page": "118", "quotation": "", "remark": "who counted?"}
    for _ in range(2):
        assert client.post(NOTES, data=typed).headers["location"] == NOTES
    assert file.read_text("utf-8").count("who counted?") == 1


def test_a_note_without_source_or_words_is_refused(client: TestClient, file: Path) -> None:
    """What was typed stands in the form still."""
    refused = client.post(NOTES, data={"remark": "whose?", "page": "9"})
    assert refused.status_code == 400
    assert 'role="alert"' in refused.text
    assert "whose?" in refused.text
    assert 'value="9"' in refused.text
    assert not file.exists()


def test_lines_that_are_no_notes_are_told_of_and_kept(client: TestClient, file: Path) -> None:
    """Whatever is done beside them."""
    file.write_text('{"broken\n{"id": "http://example.org/1", "target": ["s", "t"]}\n', "utf-8")
    before = file.read_text("utf-8")
    page = client.get(NOTES).text
    assert "notes.jsonl, line 1: it is no note" in page
    assert "notes.jsonl, line 2: it is no note" in page
    client.post(NOTES, data={"source": "osei-2014", "remark": "so"})
    address = address_in(client.get(NOTES).text)
    assert file.read_text("utf-8").startswith(before)
    client.post(address, data={"do": "remove", "was": state_in(client.get(address).text)})
    assert file.read_text("utf-8") == before


def test_a_file_that_is_no_text_is_told_and_left(client: TestClient, file: Path) -> None:
    """A picture under its name is not overwritten."""
    file.write_bytes(b"\x89PNG\r\n\x1a\n")
    assert client.get(NOTES).status_code == 400
    assert client.post(NOTES, data={"source": "osei-2014", "remark": "so"}).status_code == 400
    assert file.read_bytes() == b"\x89PNG\r\n\x1a\n"


def test_a_note_changed_meanwhile_is_shown_beside_what_was_typed(client: TestClient, file: Path) -> None:
    """Nothing is overwritten until the writer has chosen; saving again keeps what was typed."""
    write(file, Note("a", "osei-2014", page="118", remark="first"))
    address = address_in(client.get(NOTES).text)
    was = state_in(client.get(address).text)
    write(file, Note("a", "osei-2014", page="118", quotation="theirs, quoted", remark="theirs"))
    typed = {"source": "osei-2014", "page": "119", "remark": "mine"}
    both = client.post(address, data={**typed, "was": was})
    assert both.status_code == 409
    assert all(words in both.text for words in ("theirs, quoted", "on page 118", "mine", 'value="119"'))
    assert "mine" not in file.read_text("utf-8")
    saved = client.post(address, data={**typed, "was": state_in(both.text)})
    assert saved.headers["location"].startswith(f"{NOTES}#")
    assert "mine" in file.read_text("utf-8")


def test_a_note_taken_out_meanwhile_leaves_what_was_typed(client: TestClient, file: Path) -> None:
    """It stands in the form for a new one."""
    write(file, Note("a", "osei-2014", remark="first"))
    address = address_in(client.get(NOTES).text)
    was = state_in(client.get(address).text)
    file.unlink()
    gone = client.post(address, data={"source": "osei-2014", "page": "119", "remark": "mine", "was": was})
    assert gone.status_code == 409
    assert "mine" in gone.text
    assert f'action="{NOTES}"' in gone.text
    assert client.get(address).status_code == 404


def test_a_script_in_a_note_is_text(client: TestClient, file: Path) -> None:
    """In each of its fields, in the list and in its form."""
    write(file, Note("a", EVIL, page=EVIL, quotation=EVIL, remark=EVIL))
    for path in (NOTES, address_in(client.get(NOTES).text)):
        page = client.get(path)
        assert page.status_code == 200
        assert "<script>alert" not in page.text
        assert html.escape(EVIL) in page.text


def test_half_a_letter_does_not_break_the_page(client: TestClient, file: Path) -> None:
    """Another program may have cut one in two."""
    file.write_text('{"id": "a", "target": "osei-2014", "body": {"value": "so \\ud83d"}}\n', "utf-8")
    page = client.get(NOTES)
    assert page.status_code == 200
    typed = {"source": "osei-2014", "page": "118", "remark": "mine"}
    address = address_in(page.text)
    assert client.post(address, data={**typed, "was": state_in(client.get(address).text)}).status_code == 303
    assert json.loads(file.read_text("utf-8"))["body"][0]["value"] == "mine"


def test_notes_are_taken_and_corrected_without_scripts(browser: Browser, served: str, file: Path) -> None:
    """By links and forms alone, on a narrow screen."""
    with browser.new_context(java_script_enabled=False, viewport={"width": 390, "height": 844}) as context:
        page = context.new_page()
        page.goto(served)
        page.goto(page.url.rstrip("/") + NOTES)
        page.get_by_label("Source", exact=True).select_option("osei-2014")
        page.get_by_label("Page", exact=True).fill("118")
        page.get_by_label("What you say of it").fill("who counted?")
        page.get_by_role("button", name="Note it").click()
        page.get_by_role("link", name="Correct the note who counted?").click()
        page.get_by_label("What you say of it").fill("who counted, and when?")
        page.get_by_role("button", name="Save").click()
        expect(page.get_by_role("main")).to_contain_text("who counted, and when?")
        page.get_by_role("link", name="Correct the note").click()
        page.get_by_role("button", name="Take it out").click()
        expect(page.get_by_role("main")).not_to_contain_text("who counted")
    assert file.read_text("utf-8") == ""


def test_nothing_hinders_anybody(browser_page: Page, hindrances: Callable[[Page], list[str]], file: Path) -> None:
    """With notes in both lists, and a line that is none; and a note's own page."""
    write(file, Note("a", "osei-2014", page="118", quotation="q " * 90), Note("b", "osei-2014", remark="r"))
    with file.open("a", encoding="utf-8") as more:
        more.write("broken\n")
    base = browser_page.url.rstrip("/")
    browser_page.goto(base + NOTES)
    assert hindrances(browser_page) == []
    browser_page.get_by_role("link", name="Correct the note r").click()
    assert hindrances(browser_page) == []


def test_a_quotation_that_the_source_has_otherwise_is_doubted(client: TestClient, file: Path) -> None:
    """Beside the note, while the source is at hand."""
    write(file, Note("a", "osei-2014", page="118", quotation="not a word of this stands in her chapter anywhere"))
    assert "These words were not found in the text at hand" in client.get(NOTES).text


def test_a_note_says_what_it_is(client: TestClient, desk: Path) -> None:
    """Its kind is chosen, shown, and kept as its annotation's class; a word that is no kind says nothing."""
    address = "/paper/tram-libraries/notes"
    sent = {"source": "lund-1999", "page": "61", "remark": "They missed the time.", "kind": "paraphrase"}
    assert client.post(address, data=sent).status_code == 303
    assert "Paraphrase.</span> They missed the time." in client.get(address).text
    client.post(address, data={**sent, "remark": "Something else.", "kind": "poem"})
    kept = (desk / "tram-libraries" / "notes.jsonl").read_text("utf-8")
    assert '"value": "paraphrase"' in kept
    assert "poem" not in kept


def test_a_note_is_for_a_point_and_a_question(client: TestClient, desk: Path) -> None:
    """Chosen on its form, told beside it, and counted and shown where the point and the question stand."""
    client.post(f"{PAPER}/focus", data={"question": "Who paid for the boxes?"})
    assert (desk / "tram-libraries" / "focus.toml").read_text("utf-8").count("Who paid") == 1
    question = re.findall(rf"{PAPER}/focus/([^\"/]+)\"", client.get(f"{PAPER}/focus").text)[-1]
    sent = {"source": "osei-2014", "page": "118", "remark": "The council did.", "question": question, "point": "p1"}
    assert client.post(NOTES, data=sent).status_code == 303
    told = html.unescape(client.get(NOTES).text)
    assert "and for the point “" in told
    assert "For the question “Who paid for the boxes?”" in told
    assert "1 note<" in client.get(f"{PAPER}/points").text
    assert "The council did." in client.get(f"{PAPER}/points/p1").text
    assert "1 note<" in client.get(f"{PAPER}/focus").text
    assert "The council did. (taken for this question)" in client.get(f"{PAPER}/focus/{question}").text
    client.post(NOTES, data={**sent, "remark": "Another.", "point": "p2", "question": ""})
    only = html.unescape(client.get(f"{NOTES}?point=p1").text)
    assert "Only those for the point “" in only
    assert "Another." not in only
    assert '<option value="p1" selected>' in only  # the next one noted here is for it too
    here = html.unescape(client.get(f"{PAPER}/sources/osei-2014/text?page=118").text)
    assert 'name="point"' in here
    assert 'name="kind"' in here


def test_a_point_that_has_gone_is_told(client: TestClient, file: Path) -> None:
    """The note keeps what it says, and its form too."""
    write(file, Note("a", "osei-2014", page="118", remark="first", point="p77"))
    page = client.get(NOTES).text
    assert "For a point that is not there any more (p77)." in page
    address = address_in(page)
    own = client.get(address).text
    assert '<option value="p77" selected>' in own
    kept = {"source": "osei-2014", "page": "118", "remark": "second", "point": "p77", "was": state_in(own)}
    assert client.post(address, data=kept).status_code == 303
    assert "points.json#p77" in file.read_text("utf-8")


def test_the_annotated_bibliography_is_one_link_away(client: TestClient, file: Path) -> None:
    """Once something is noted; to be looked at, or kept in each form."""
    address = f"{NOTES}/bibliography"
    assert address not in client.get(NOTES).text
    write(file, Note("a", "osei-2014", page="118", remark="Counts loans.", kind="summary"))
    page = client.get(NOTES).text
    assert f'{address}/pdf?look=yes"' in page
    shown = client.get(f"{address}/pdf?look=yes")
    assert (shown.headers["content-type"], shown.content[:5]) == ("application/pdf", b"%PDF-")
    assert shown.headers["content-disposition"].startswith("inline")
    kept = client.get(f"{address}/docx")
    assert kept.headers["content-disposition"].startswith("attachment")
    assert client.get(f"{address}/exe").status_code == 404


@pytest.mark.parametrize("way", [{"color_scheme": "dark"}, {"viewport": {"width": 390, "height": 844}}])
def test_nothing_hinders_anybody_where_notes_are_shown(
    browser: Browser,
    served: str,
    hindrances: Callable[[Page], list[str]],
    desk: Path,
    file: Path,
    way: dict[str, Any],
) -> None:
    """Beside a point, a question, a source and its page, and those of one point alone; none wider than its window."""
    (desk / "tram-libraries" / "focus.toml").write_text('[[questions]]\nid = "q1"\ntext = "Who paid?"\n', "utf-8")
    write(
        file,
        Note("a", "osei-2014", page="118", remark="who counted?", kind="thought", question="q1", point="p1"),
        Note("b", "lund-1999", quotation="not in it", point="p2"),
    )
    with browser.new_context(**way) as context:
        page = context.new_page()
        page.goto(served)
        base = served.partition("/?")[0] + PAPER
        for path in (
            "/notes?point=p1",
            "/points",
            "/points/p1",
            "/focus",
            "/focus/q1",
            "/support",
            "/sources/lund-1999",
            "/sources/osei-2014/text?page=118",
        ):
            page.goto(base + path)
            page.wait_for_load_state()
            assert hindrances(page) == [], path
            assert page.evaluate("document.documentElement.scrollWidth <= window.innerWidth"), path
