"""The whole way of somebody who has never seen the program, from an empty desk to the fair copy, in a real browser."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import AbstractContextManager
from pathlib import Path

import pytest
from docx import Document
from playwright.sync_api import Browser, BrowserContext, Page, expect

SHEET = """HIST 214: Towns and Water

Research essay

Write an essay of 100 to 400 words on one public works of a town between the wars. Use MLA style (9th edition), and
cite at least two sources. Double-space it throughout. Due Friday, 12 March 2027, at 5 pm, by upload as a PDF.
"""
LIST = """@book{harrow1994, author = {Harrow, Edith}, title = {The Pump at Saltby}, publisher = {Quay House},
 year = {1994}}
@article{moss2011, author = {Moss, Daniel}, title = {Water by the Bucket}, journaltitle = {Journal of Small Towns},
 volume = {7}, number = {2}, date = {2011}, pages = {31--48}}
"""
TEXT = """The pump was shut on a Sunday, and nobody in the lower town was told before the Monday.
\fThe key lay with the clerk."""
DRAFT = """Saltby closed its public pump in 1931 without a vote. Edith Harrow writes that "nobody in the lower town was
warned before the Monday" (Harrow 1), and that "[t]he key lay with the clerk" (Harrow 2).

The the council had reasons of its own. Buckets were cheaper than pipes, as Moss shows (33), and the town went on paying
for them until the war. What it saved in a year it lost in in the next.
"""
TEXTS = (".md", ".json", ".toml", ".jsonl")
NAME = "water-by-the-year"
DROP = """([where, name, type, text]) => {
  const moved = new DataTransfer();
  moved.items.add(new File([text], name, { type }));
  for (const kind of ["dragenter", "dragover", "drop"]) {
    document.querySelector(where).dispatchEvent(
      new DragEvent(kind, { dataTransfer: moved, bubbles: true, cancelable: true }));
  }
}"""


@pytest.fixture
def address(tmp_path: Path, serve: Callable[..., AbstractContextManager[str]]) -> Iterator[str]:
    """The desk of somebody who has none yet."""
    (tmp_path / "desk").mkdir()
    with serve(tmp_path / "desk") as address:
        yield address


@pytest.fixture
def context(browser: Browser) -> Iterator[BrowserContext]:
    """A window of the browser, of which no error may be reported."""
    faults: list[str] = []
    with browser.new_context(accept_downloads=True) as context:
        context.on("weberror", lambda error: faults.append(str(error.error)))
        context.on("console", lambda told: faults.append(told.text) if told.type == "error" else None)
        yield context
    assert faults == []


def test_from_an_empty_desk_to_the_fair_copy(address: str, context: BrowserContext, tmp_path: Path) -> None:
    """A sheet dropped on the page, what it asks, sources, a draft pasted, two marks mended, one let stand, printed."""
    page, folder = context.new_page(), tmp_path / "desk" / NAME
    page.goto(address)
    home = address.partition("/?")[0]
    page.evaluate(DROP, ["body", "water by the year.txt", "text/plain", SHEET])
    page.get_by_role("button", name="Begin the paper").click()
    page.wait_for_url(f"**/paper/{NAME}/**")
    assert (folder / "brief.txt").read_text("utf-8") == SHEET

    page.goto(f"{home}/paper/{NAME}/brief")
    for told in ("100 to 400 words", "MLA", "12 March 2027"):
        expect(page.locator("main")).to_contain_text(told)

    page.get_by_role("link", name="Research").click()
    add_sources(page)
    page.get_by_role("link", name="Drafting").click()
    page.get_by_role("link", name="Draft", exact=True).click()
    page.wait_for_url("**/draft")
    page.get_by_role("textbox", name="Draft", exact=True).fill(DRAFT)
    expect(page.locator("#kept")).to_contain_text("Kept.")
    page.get_by_role("button", name="Citations").click()
    expect(page.locator("#citations li")).to_have_count(3)

    page.get_by_role("link", name="Correction").click()
    expect(page.locator(".proof .label")).to_have_text(
        ["quotation differs, must", "doubled word, should", "doubled word, should"]
    )
    mend(page, 1, "warned before", "told before")
    mend(page, 1, "The the council", "The council")
    page.goto(f"{home}/paper/{NAME}/copy-edit?finding=1#mark-1")
    page.get_by_text("Stet", exact=True).click()
    page.get_by_label("Why it shall stand").fill("a stammer, and meant")
    page.get_by_role("button", name="Let it stand").click()
    expect(page.locator(".proof .label")).to_have_text(["doubled word, stet"])
    assert "told before" in (folder / "draft.md").read_text("utf-8")

    page.goto(f"{home}/paper/{NAME}/fair-copy")
    with page.expect_download() as coming:
        page.get_by_role("link", name="PDF", exact=True).click()
    assert coming.value.path().read_bytes().startswith(b"%PDF")
    with page.expect_download() as coming:
        page.get_by_role("link", name="DOCX", exact=True).click()
    coming.value.save_as(tmp_path / "fair.docx")
    words = "\n".join(one.text for one in Document(str(tmp_path / "fair.docx")).paragraphs)
    assert "Works Cited" in words
    assert "in in the next" in words


def add_sources(page: Page) -> None:
    """Two sources by a pasted list, and the text of one of them."""
    page.get_by_role("link", name="Add sources").click()
    page.get_by_label("Or a list, pasted").fill(LIST)
    page.get_by_role("button", name="Add", exact=True).click()
    expect(page.locator("main")).to_contain_text("Water by the Bucket")
    page.get_by_role("link", name="Correct The Pump at Saltby").click()
    page.get_by_label("A file of it").set_input_files(
        {"name": "pump.txt", "mimeType": "text/plain", "buffer": TEXT.encode()}
    )
    page.get_by_role("button", name="Put it with the sources").click()
    expect(page.locator("main")).to_contain_text("pages 1–2")


def mend(page: Page, mark: int, was: str, now: str) -> None:
    """One passage mended in place, at its mark."""
    page.goto(page.url.partition("?")[0].partition("#")[0] + f"?finding={mark}#mark-{mark}")
    page.get_by_text("Mend", exact=True).click()
    field = page.get_by_label("The passage as you wrote it")
    assert was in field.input_value()
    field.fill(field.input_value().replace(was, now))
    page.get_by_role("button", name="Save").click()
    page.wait_for_load_state()


def test_what_one_tab_saves_another_shows(browser_page: Page, desk: Path) -> None:
    """A second tab is brought up to date; what is being typed in it stays, and both versions are offered."""
    draft = f"{browser_page.url.rstrip('/')}/paper/tram-libraries/draft"
    other = browser_page.context.new_page()
    for tab in (browser_page, other):
        tab.goto(draft)
    browser_page.get_by_role("textbox", name="Draft").fill("The tram ran at nine.")
    expect(other.get_by_role("textbox", name="Draft")).to_have_value("The tram ran at nine.")

    other.get_by_role("textbox", name="Draft").fill("The tram ran at ten.")
    (desk / "tram-libraries" / "draft.md").write_text("It never ran.", "utf-8")
    other.get_by_role("button", name="Save").click()
    expect(other.locator("main")).to_contain_text("It never ran.")
    expect(other.locator("main")).to_contain_text("The tram ran at ten.")


def test_a_lost_server_loses_nothing_typed(
    browser: Browser, desk: Path, serve: Callable[..., AbstractContextManager[str]]
) -> None:
    """The page says so and keeps the words; once Fairhand runs again there, they can be saved."""
    with browser.new_context() as context:
        page = context.new_page()
        with serve(desk) as address:
            home, port = address.partition("/?")[0], int(address.partition("/?")[0].rpartition(":")[2])
            page.goto(address)
            page.goto(f"{home}/paper/tram-libraries/draft")
        page.get_by_role("textbox", name="Draft").fill("Typed into the void.")
        expect(page.get_by_role("status")).to_contain_text("Fairhand is not running any more")
        expect(page.get_by_role("textbox", name="Draft")).to_have_value("Typed into the void.")
        with serve(desk, port):
            page.get_by_role("button", name="Save").click()
            page.wait_for_load_state()
            assert (desk / "tram-libraries" / "draft.md").read_text("utf-8") == "Typed into the void."


def test_back_and_reload_send_nothing_twice(browser_page: Page, desk: Path) -> None:
    """After each kind of form, going back and reloading shows pages and changes no file."""
    home, folder = browser_page.url.rstrip("/"), desk / "tram-libraries"
    page = browser_page
    page.goto(f"{home}/paper/tram-libraries/sources/add")
    page.get_by_label("Or a list, pasted").fill(LIST)
    page.get_by_role("button", name="Add", exact=True).click()
    page.goto(f"{home}/paper/tram-libraries/jottings")
    page.get_by_role("textbox", name="Jottings").fill("Who kept the key?")
    page.get_by_role("button", name="Save").click()
    page.wait_for_load_state()
    stood = {path: path.read_bytes() for path in folder.iterdir() if path.is_file() and path.suffix in TEXTS}
    for _ in range(3):
        page.reload()
        page.go_back()
        page.reload()
    assert {path: path.read_bytes() for path in stood} == stood


def test_every_control_is_reached_by_the_keyboard(browser_page: Page) -> None:
    """On each page Tab comes to every link, field and button in turn, and where it stands can be seen."""
    home = browser_page.url.rstrip("/")
    for leaf in ("brief", "sources/add", "draft", "copy-edit?finding=1", "verdict", "fair-copy"):
        browser_page.goto(f"{home}/paper/tram-libraries/{leaf}")
        reached = browser_page.evaluate(CONTROLS)
        for number in range(1, reached + 1):
            browser_page.keyboard.press("Tab")
            assert browser_page.evaluate(FOCUSED) == "seen", f"{leaf}, control {number}"


CONTROLS = """() => [...document.querySelectorAll("a[href], button, input, select, textarea, summary, iframe")]
  .filter((one) => one.type !== "hidden" && one.checkVisibility() && one.tabIndex >= 0 && one.tagName !== "IFRAME")
  .length"""
FOCUSED = """() => {
  const one = document.activeElement;
  if (one === document.body) return "nothing";
  const look = getComputedStyle(one);
  return look.outlineStyle !== "none" || one.matches("textarea, input, select, iframe, .skip") ? "seen" : one.outerHTML;
}"""
