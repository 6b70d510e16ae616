"""Papers begun in the page."""

from __future__ import annotations

import shutil
import tomllib
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect
from starlette.testclient import TestClient

SHEET = b"Write an essay of 1,000 words in MLA style. Due 3 March 2027."
DROP = """([where, name, text]) => {
  const moved = new DataTransfer();
  moved.items.add(new File([text], name, { type: "text/plain" }));
  for (const kind of ["dragover", "drop"]) {
    document.querySelector(where).dispatchEvent(
      new DragEvent(kind, { dataTransfer: moved, bubbles: true, cancelable: true }));
  }
}"""
TWO = b"""Geography 110

Paper 1: A river
Write 1,500 words on one river. Due 3 March 2027.

Paper 2: A port
Write 2,000 words on one port. Due 7 April 2027.
"""


@pytest.fixture
def empty(tmp_path: Path) -> Path:
    """A folder in which nothing stands yet."""
    (tmp_path / "new-desk").mkdir()
    return tmp_path / "new-desk"


def test_an_empty_desk_says_what_to_do_first(empty: Path, open_desk: Callable[[Path], TestClient]) -> None:
    """It offers a paper from a sheet, or the demo, which then stands there."""
    client = open_desk(empty)
    shown = client.get("/").text
    assert 'action="/new"' in shown
    assert str(empty) in shown
    assert 'action="/new/demo"' in shown
    assert client.post("/new/demo").headers["location"] == "/paper/tram-libraries"
    assert "Nine Minutes of Reading" in client.get("/").text
    assert client.post("/new/demo").status_code == 409


def test_a_paper_is_begun_from_a_sheet(empty: Path, open_desk: Callable[[Path], TestClient]) -> None:
    """The sheet stands in the paper's folder as it was sent; the desk and the course are made on the way."""
    client = open_desk(empty)
    answer = client.post(
        "/new",
        data={"title": " The  Ferry ", "course": "History 2", "name": "Robin Å"},
        files={"sheet": ("Sheet 4.txt", SHEET)},
    )
    assert answer.status_code == 303
    assert answer.headers["location"] == "/paper/the-ferry/brief"
    assert (empty / "the-ferry" / "brief.txt").read_bytes() == SHEET
    assert tomllib.loads((empty / "desk.toml").read_text("utf-8"))["name"] == "Robin Å"
    assert "Wednesday 3 March 2027" in client.get("/").text
    assert "History 2" in client.get("/new").text


def test_pasted_words_are_a_sheet(client: TestClient, desk: Path) -> None:
    """What was pasted stands there with the line ends that files have."""
    assert client.post("/new", data={"title": "Pasted", "pasted": "Write.\r\n900 words.\r\n"}).status_code == 303
    assert (desk / "pasted" / "brief.txt").read_bytes() == b"Write.\n900 words.\n"


def test_a_sheet_names_the_paper_where_nobody_does(client: TestClient, desk: Path) -> None:
    """The name of its file stands in."""
    answer = client.post("/new", files={"sheet": ("../the_long_essay.txt", SHEET)})
    assert answer.headers["location"] == "/paper/the-long-essay/brief"


def test_a_sheet_for_several_papers_is_asked_about(client: TestClient, desk: Path) -> None:
    """Those that are ticked are begun, each with the sheet; reloading or going back begins none again."""
    asked = client.post("/new", data={"title": "Geography"}, files={"sheet": ("sheet.txt", TWO)})
    where = asked.headers["location"]
    assert where.startswith("/new/")
    shown = client.get(where).text
    names = [line.split('value="')[1].split('"')[0] for line in shown.splitlines() if 'name="assignment"' in line]
    assert len(names) == 2
    assert client.post(where, data={"assignment": names[1]}).headers["location"] == "/paper/geography/brief"
    assert tomllib.loads((desk / "geography" / "paper.toml").read_text("utf-8"))["assignment"] == names[1]
    assert client.post(where, data={"assignment": names}).headers["location"] == "/"
    assert client.get("/new/gone").headers["location"] == "/new"


@pytest.mark.parametrize(
    ("data", "files", "status", "says"),
    [
        ({}, {}, 400, "no title yet"),
        ({"title": "Nine minutes"}, {"sheet": ("sheet.pdf", b"no PDF at all")}, 400, "it is no PDF"),
        ({"title": "Nine minutes"}, {"sheet": ("sheet.pdf", b"")}, 400, "it is empty"),
        ({"title": "Nine minutes"}, {"sheet": ("run.exe", b"MZ\0\0\1")}, 415, "not read"),
        ({"title": "Nine minutes"}, {"sheet": ("sheet.txt", b"PK\3\4zipped")}, 415, "not read"),
        ({"title": "Nine minutes", "given": "soon"}, {}, 400, "no day"),
        ({"title": "Tram libraries"}, {}, 409, "at one"),
    ],
)
def test_what_cannot_be_begun_is_told_and_stays_written(
    client: TestClient,
    desk: Path,
    data: dict[str, str],
    files: dict[str, tuple[str, bytes]],
    status: int,
    says: str,
) -> None:
    """The form comes back with what was wrong and with what was typed, and no folder is left behind."""
    before = sorted(desk.iterdir())
    answer = client.post("/new", data=data, files=files or None)
    assert answer.status_code == status
    assert says in answer.text
    assert data.get("title", "") in answer.text
    assert sorted(desk.iterdir()) == before


def test_a_file_dropped_anywhere_is_chosen(
    browser_page: Page, desk: Path, hindrances: Callable[[Page], list[str]]
) -> None:
    """On the empty desk a sheet that is dropped beside its field begins a paper at the next key."""
    shutil.rmtree(desk / "tram-libraries")
    browser_page.reload()
    assert hindrances(browser_page) == []
    browser_page.evaluate(DROP, ["h1", "a port.txt", SHEET.decode()])
    expect(browser_page.get_by_role("status")).to_contain_text("Chosen: a port.txt.")
    expect(browser_page.get_by_role("button", name="Begin the paper")).to_be_focused()
    browser_page.keyboard.press("Enter")
    browser_page.wait_for_url("**/paper/a-port/brief")
    assert (desk / "a-port" / "brief.txt").read_bytes() == SHEET


def test_words_that_are_dropped_are_left_alone(browser_page: Page) -> None:
    """Only files are taken."""
    browser_page.goto(browser_page.url.rstrip("/") + "/new")
    taken = browser_page.evaluate("""() => {
      const moved = new DataTransfer();
      moved.setData("text/plain", "words");
      const event = new DragEvent("drop", { dataTransfer: moved, bubbles: true, cancelable: true });
      document.querySelector("h1").dispatchEvent(event);
      return event.defaultPrevented;
    }""")
    assert not taken
    expect(browser_page.get_by_role("status")).to_have_text("")


def test_without_scripts_a_paper_is_begun(browser: Browser, desk: Path, served: str) -> None:
    """The field alone is enough."""
    shutil.rmtree(desk / "tram-libraries")
    with browser.new_context(java_script_enabled=False) as context:
        page = context.new_page()
        page.goto(served)
        page.locator("#sheet").set_input_files({"name": "a_port.txt", "mimeType": "text/plain", "buffer": SHEET})
        page.get_by_role("button", name="Begin the paper").click()
        page.wait_for_url("**/paper/a-port/brief")
