"""First readers in the page: asked one after another, and what they wrote stands at its place."""

from __future__ import annotations

import io
from collections.abc import Callable
from pathlib import Path

import docx
import pytest
from playwright.sync_api import Page, expect
from starlette.testclient import TestClient

from fairhand.readers.gathering import ReaderRemark
from fairhand.readers.remarks_file import put_remarks, read_remarks

READERS = "/paper/tram-libraries/readers"
ASK = {"name": "Ines Mora", "stage": "argument", "due": "2027-02-12", "questions": "Why?\nHow?", "kind": "docx"}


@pytest.fixture
def paper(desk: Path) -> Path:
    """The demo's paper."""
    return desk / "tram-libraries"


def commented(copy: Path, words: str, said: str, by: str) -> bytes:
    """The copy with a comment on the paragraph that holds some words."""
    document = docx.Document(str(copy))
    paragraph = next(one for one in document.paragraphs if words in one.text)
    document.add_comment(paragraph.runs, said, author=by)
    kept = io.BytesIO()
    document.save(kept)
    return kept.getvalue()


def bring_back(client: TestClient, paper: Path, by: str, said: str) -> None:
    """A reader's copy comes back with a comment."""
    (copy,) = (paper / "fair").glob("*for Ines Mora.docx")
    data = commented(copy, "What made the boxes work", said, by)
    sent = client.post(READERS, data={"whose": by}, files={"file": (f"{by}.docx", data)})
    assert sent.status_code == 303


def test_a_reader_is_asked_and_the_copy_handed_out(client: TestClient, paper: Path) -> None:
    """With the questions offered for the stage; the copy is the writer's to send."""
    shown = client.get(READERS).text
    assert "Where did you read a sentence twice?" in shown
    assert "ask the instructor before a draft goes out" in shown
    assert "Which word or phrase made you stop?" in client.get(f"{READERS}?for=language").text
    assert client.post(READERS, data=ASK).status_code == 303
    listed = client.get(READERS).text
    assert "Ines Mora; for the argument; sent 8 February; due 12 February; this version." in listed
    assert "Ines Mora is reading until 12 February: let it lie." in listed
    copy = client.get(f"{READERS}/copy/1")
    assert copy.status_code == 200
    text = "\n".join(one.text for one in docx.Document(io.BytesIO(copy.content)).paragraphs)
    assert "How?" in text
    for wrong in ("0", "2", "x", "9" * 9):
        assert client.get(f"{READERS}/copy/{wrong}").status_code == 404


def test_a_copy_outside_the_folder_is_not_handed_out(client: TestClient, paper: Path) -> None:
    """Whatever the register says."""
    (paper.parent / "other.pdf").write_bytes(b"%PDF")
    (paper / "readers.toml").write_text('[[readers]]\nname = "A"\nfile = "../other.pdf"\n', "utf-8")
    assert client.get(f"{READERS}/copy/1").status_code == 404


def test_a_second_reader_is_advised_against_and_the_writer_decides(client: TestClient, paper: Path) -> None:
    """What speaks against it is said, what was typed stands, and one step asks all the same."""
    client.post(READERS, data=ASK)
    second = ASK | {"name": "Tom <Reed>"}
    advised = client.post(READERS, data=second)
    assert advised.status_code == 409
    assert "is reading now, until 12 February" in advised.text
    assert 'value="Tom &lt;Reed&gt;"' in advised.text
    assert client.post(READERS, data=second | {"do": "anyway"}).status_code == 303
    again = client.post(READERS, data=ASK | {"do": "anyway"})
    assert "has this version already" in again.text
    assert client.post(READERS, data=ASK | {"name": "X", "due": "soon"}).status_code in {400, 409, 422}


def test_what_came_back_is_ruled_on_at_its_place(client: TestClient, paper: Path) -> None:
    """Two who stumble at one place are named; a remark left needs its reason; what was ruled on steps aside."""
    client.post(READERS, data=ASK)
    bring_back(client, paper, "Ines Mora", "I would not accept <this>.")
    bring_back(client, paper, "Tom Reed", "How do you know?")
    shown = client.get(READERS).text
    assert "What made the boxes work was that nobody had come for them." in shown
    assert "Ines Mora and Tom Reed both wrote here." in shown
    assert "I would not accept &lt;this&gt;." in shown
    assert "Two remarks wait for your word" in shown
    one, two = read_remarks((paper / "marks.jsonl").read_text("utf-8"))
    assert "Say why it is left" in client.post(READERS, data={"remark": one.id, "do": "left", "why": ""}).text
    assert client.post(READERS, data={"remark": one.id, "do": "left", "why": "It is said."}).status_code == 303
    assert client.post(READERS, data={"remark": two.id, "do": "taken"}).status_code == 303
    assert "How do you know?" not in client.get(READERS).text
    everything = client.get(f"{READERS}?all=yes").text
    assert "Left: It is said." in everything
    assert "Taken." in everything


def test_a_change_is_carried_out_by_one_button(client: TestClient, paper: Path) -> None:
    """Where its place is sure; a comment has no such button."""
    draft = (paper / "draft.md").read_text("utf-8")
    start = draft.index("never locked")
    before, after = draft[start - 40 : start], draft[start + 12 : start + 52]
    change = ReaderRemark("substitution", "always open", "never locked", before, after, reader="Ines Mora")
    asked = ReaderRemark("comment", "Which?", "never locked", before, after, reader="Ines Mora")
    (paper / "marks.jsonl").write_text(put_remarks("", [change, asked]), "utf-8")
    assert client.get(READERS).text.count('value="carry-out"') == 1
    assert client.post(READERS, data={"remark": change.id, "do": "carry-out"}).status_code == 303
    assert (paper / "draft.md").read_text("utf-8") == draft.replace("never locked", "always open")
    assert "mend the draft by hand" in client.post(READERS, data={"remark": change.id, "do": "carry-out"}).text


def test_what_cannot_be_done_is_told(client: TestClient, paper: Path) -> None:
    """No file, a file that is none, no such remark."""
    assert "Choose the file" in client.post(READERS, data={"whose": "A"}).text
    sent = client.post(READERS, data={"whose": "A"}, files={"file": ("x.docx", b"no")})
    assert "x.docx: it is broken" in sent.text
    assert "no remark has that number" in client.post(READERS, data={"remark": "zz", "do": "taken"}).text


def test_the_page_hinders_nobody(
    browser_page: Page, client: TestClient, paper: Path, hindrances: Callable[[Page], list[str]]
) -> None:
    """With a reader out, remarks waiting and cautions; by the keyboard alone a remark is ruled on."""
    client.post(READERS, data=ASK)
    bring_back(client, paper, "Ines Mora", "I would not accept this.")
    client.post(READERS, data=ASK | {"name": "Tom Reed", "do": "anyway"})
    base = browser_page.url.partition("/?")[0].rstrip("/")
    browser_page.goto(base + READERS)
    assert hindrances(browser_page) == []
    browser_page.get_by_label("Why, for:").focus()
    browser_page.keyboard.type("It stands in the slips.")
    browser_page.keyboard.press("Tab")
    browser_page.keyboard.press("Tab")
    browser_page.keyboard.press("Enter")
    expect(browser_page.get_by_text("Those that you have ruled on too (1)")).to_be_visible()
    (one,) = read_remarks((paper / "marks.jsonl").read_text("utf-8"))
    assert (one.ruling, one.why) == ("left", "It stands in the slips.")
    assert hindrances(browser_page) == []
