"""Sources in the page: the list, what joins it, each record and each text."""

from __future__ import annotations

import html
import json
import re
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect
from starlette.testclient import TestClient

from fairhand.model.note import Note
from fairhand.reading.notes_file import put_note
from fairhand.web.forms import MOST_FILE

PAPER = "/paper/tram-libraries"
SOURCES = f"{PAPER}/sources"
ADD = f"{SOURCES}/add"
NOTES = f"{PAPER}/notes"
EVIL = "<script>alert(1)</script>"


@pytest.fixture
def listed(desk: Path) -> Callable[[], dict[str, dict[str, object]]]:
    """The records of the paper's list, by id."""
    return lambda: {r["id"]: r for r in json.loads((desk / "tram-libraries" / "sources.json").read_text("utf-8"))}


def hidden(page: str, name: str) -> str:
    """What a hidden field of the page holds."""
    found = re.search(rf'name="{name}" value="([^"]*)"', page)
    assert found is not None
    return html.unescape(found[1])


def test_the_list_is_set_in_the_style(client: TestClient) -> None:
    """Each source as it will be printed, with its text, whether it is cited, and what it carries."""
    page = client.get(SOURCES).text
    assert "Lund, Petra." in page
    assert "<i>" in page
    assert "Text at hand, pages 118–120" in page
    assert "serves p2, p3" in page
    assert "cited in the draft" in page
    assert "not cited yet" in page


def test_an_empty_list_says_what_to_do_first(client: TestClient, desk: Path) -> None:
    """Add the first source."""
    (desk / "tram-libraries" / "sources.json").unlink()
    assert "Add the first source" in client.get(SOURCES).text


def test_a_pasted_list_joins(client: TestClient, listed: Callable[[], dict[str, object]]) -> None:
    """BibTeX, RIS and CSL-JSON alike; what was there stays, and what is in doubt is told."""
    sent = client.post(ADD, data={"pasted": "@book{salt-2001, author={Ame, Bo}, title={Salt}, year=2001}"})
    assert sent.headers["location"] == SOURCES
    client.post(ADD, data={"pasted": "TY  - BOOK\nAU  - Dun, Eva\nTI  - Peat\nPY  - 2004\nER  - \n"})
    client.post(ADD, files={"list": ("x.json", b'[{"id":"fen-1","type":"book","title":"Fen","x":{"y":1}}]')})
    assert {"salt-2001", "dun-2004", "fen-1", "lund-1999"} <= set(listed())
    again = client.post(ADD, data={"pasted": "@book{salt-2001, title={Other}}"})
    assert "left as they are: salt-2001" in again.text
    assert client.post(ADD, data={"pasted": "Salt. 2001."}).status_code == 400
    assert client.post(ADD, data={}).status_code == 400


def test_a_source_is_written_by_hand(
    client: TestClient, desk: Path, listed: Callable[[], dict[str, dict[str, object]]]
) -> None:
    """With the fields of its type, and its text beside it; the id is made of author and year; sent twice it is one."""
    page = client.get(f"{ADD}?type=article-journal").text
    assert 'name="issue"' in page
    assert 'name="publisher"' not in page
    record = {"type": "article-journal", "title": "Ebb", "author": "Lind, Ada\r\nMarsh, Bo", "issued": "2019-05"}
    text = {"file": ("../../Ebb and flow.TXT", b"The ebb scours the channel.")}
    sent = client.post(ADD, data=record, files=text)
    assert sent.headers["location"] == f"{SOURCES}#lind-2019"
    assert listed()["lind-2019"] == {
        "id": "lind-2019",
        "type": "article-journal",
        "author": [{"family": "Lind", "given": "Ada"}, {"family": "Marsh", "given": "Bo"}],
        "title": "Ebb",
        "issued": {"date-parts": [[2019, 5]]},
    }
    assert (desk / "tram-libraries" / "sources" / "lind-2019.txt").is_file()
    client.post(ADD, data=record)
    assert "lind-2019-2" not in listed()
    empty = client.post(ADD, data={"type": "book", "publisher": "Quay"})
    assert empty.status_code == 400
    assert 'value="Quay"' in empty.text


def test_a_record_is_corrected_and_nothing_else_of_it(
    client: TestClient, desk: Path, listed: Callable[[], dict[str, dict[str, object]]]
) -> None:
    """Fields that were not touched stay as they are in the file, those that no form shows among them."""
    path = desk / "tram-libraries" / "sources.json"
    records = json.loads(path.read_text("utf-8"))
    own = next(r for r in records if r["id"] == "lund-1999")
    own |= {"keyword": "trams", "author": [{"family": "Lund", "given": "Petra", "non-dropping-particle": "af"}]}
    path.write_text(json.dumps(records), "utf-8")
    page = client.get(f"{SOURCES}/lund-1999").text
    shown = dict(re.findall(r'<input id="field-[^"]*" name="([^"]*)" value="([^"]*)"', page))
    written = {**{k: html.unescape(v) for k, v in shown.items()}, "author": "af Lund, Petra", "title": "Ten Minutes"}
    sent = client.post(f"{SOURCES}/lund-1999", data={"seen": hidden(page, "seen"), "type": own["type"], **written})
    assert sent.headers["location"] == f"{SOURCES}#lund-1999"
    assert listed()["lund-1999"] == {**own, "title": "Ten Minutes"}
    assert "Ten Minutes" in client.get(SOURCES).text


def test_a_record_changed_meanwhile_is_not_overwritten(
    client: TestClient, desk: Path, listed: Callable[[], dict[str, dict[str, object]]]
) -> None:
    """Both are shown, and saving again keeps what was typed."""
    path = desk / "tram-libraries" / "sources.json"
    seen = hidden(client.get(f"{SOURCES}/lund-1999").text, "seen")
    path.write_text(path.read_text("utf-8").replace("Nine Minutes", "Eight Minutes"), "utf-8")
    typed = {"type": "chapter", "title": "Ten Minutes", "author": "Lund, Petra"}
    both = client.post(f"{SOURCES}/lund-1999", data={"seen": seen, **typed})
    assert both.status_code == 409
    assert "Eight Minutes" in both.text
    assert "Ten Minutes" in both.text
    assert listed()["lund-1999"]["title"] == "Eight Minutes"
    client.post(f"{SOURCES}/lund-1999", data={"seen": hidden(both.text, "seen"), **typed})
    assert listed()["lund-1999"]["title"] == "Ten Minutes"


def test_a_source_is_taken_out_of_the_list(
    client: TestClient, desk: Path, listed: Callable[[], dict[str, dict[str, object]]]
) -> None:
    """Its text stays in the folder."""
    assert client.post(f"{SOURCES}/lund-1999/remove").headers["location"] == SOURCES
    assert "lund-1999" not in listed()
    assert (desk / "tram-libraries" / "sources" / "lund-1999.txt").is_file()


def test_a_type_is_chosen_again_and_nothing_typed_is_lost(client: TestClient) -> None:
    """Its fields are asked for, beside those that were filled; what another program changed meanwhile is still told."""
    typed = {"type": "book", "title": "Peat", "issue": "7", "do": "type"}
    again = client.post(ADD, data=typed).text
    assert 'name="translator"' in again
    assert 'name="issue" value="7"' in again
    shown = client.post(f"{SOURCES}/lund-1999", data={**typed, "seen": "of yesterday"}).text
    assert 'name="issue" value="7"' in shown
    assert hidden(shown, "seen") == "of yesterday"
    odd = client.post(
        f"{SOURCES}/lund-1999",
        data={"seen": hidden(client.get(f"{SOURCES}/lund-1999").text, "seen")}
        | {"type": "no-such", "title": "Nine Minutes"},
    )
    assert odd.status_code == 303


def test_what_cannot_be_read_is_told(client: TestClient, desk: Path) -> None:
    """A faulty record, and a file that is not what its name says; a list that is none is never written to."""
    paper = desk / "tram-libraries"
    (paper / "sources" / "quist-1988.pdf").write_bytes(b"no PDF")
    assert "sources/quist-1988.pdf: it is no PDF" in client.get(SOURCES).text
    faulty = '[{"id": "a", "type": "book", "title": "A"}, {"id" "b"}]'
    (paper / "sources.json").write_text(faulty, "utf-8")
    assert "sources.json, record 2" in client.get(SOURCES).text
    refused = client.post(ADD, data={"pasted": "@book{salt-2001, title={Salt}}"})
    assert refused.status_code == 400
    assert "mend it first" in refused.text
    assert "@book{salt-2001" in refused.text
    assert (paper / "sources.json").read_text("utf-8") == faulty


def test_a_source_whose_file_is_refused_is_in_the_list(
    client: TestClient, listed: Callable[[], dict[str, object]]
) -> None:
    """What was written is kept; its own page says what was wrong with the file."""
    sent = client.post(ADD, data={"type": "book", "title": "Peat"}, files={"file": ("peat.exe", b"MZ")})
    assert sent.status_code == 415
    assert "The source is in the list. peat.exe" in sent.text
    assert f'action="{SOURCES}/peat-nd"' in sent.text
    assert "peat-nd" in listed()


@pytest.mark.parametrize(
    ("name", "data", "status"),
    [
        ("x.exe", b"MZ", 415),
        ("x.pdf", b"no pdf at all", 400),
        ("x.txt", b"", 400),
    ],
)
def test_a_wrong_file_is_refused(client: TestClient, desk: Path, name: str, data: bytes, status: int) -> None:
    """Nothing is written, and the page says why."""
    folder = desk / "tram-libraries" / "sources"
    before = {path: path.read_bytes() for path in folder.iterdir()}
    sent = client.post(f"{SOURCES}/lund-1999/text", files={"file": (name, data)})
    assert sent.status_code == status
    assert 'role="alert"' in sent.text or not data
    assert {path: path.read_bytes() for path in folder.iterdir()} == before


def test_a_file_too_large_is_refused(client: TestClient) -> None:
    """A hundred megabytes are not taken in, and neither is what is a little more than may be."""
    for size in (100 * 2**20, MOST_FILE + 1):
        sent = client.post(f"{SOURCES}/lund-1999/text", files={"file": ("x.pdf", b"%PDF-" + bytes(size))})
        assert sent.status_code == 413


def test_nothing_outside_the_list_is_reached(client: TestClient) -> None:
    """A source is known by its id alone, and no path is one."""
    for name in ("..%2f..%2fdesk.toml", "%2e%2e/%2e%2e/desk.toml", "no-such", "no-such/text"):
        assert client.get(f"{SOURCES}/{name}").status_code == 404
    assert client.post(f"{SOURCES}/..%2f../text", files={"file": ("x.txt", b"x")}).status_code == 404


def test_scripts_in_what_others_wrote_are_text(client: TestClient, desk: Path) -> None:
    """In a title, an id, a text and a note."""
    paper = desk / "tram-libraries"
    record = {"id": f"x/{EVIL}", "type": "book", "title": f"Salt {EVIL}", "author": [{"literal": EVIL}], "URL": EVIL}
    (paper / "sources.json").write_text(json.dumps([record, {"id": "y", "type": "webpage", "title": EVIL}]), "utf-8")
    (paper / "sources" / "y.html").write_text(f"<html><body><p>Peat {EVIL} &lt;script&gt;alert(2)</p></body></html>")
    client.post(NOTES, data={"source": "y", "quotation": EVIL, "remark": f"{EVIL} <img src=x onerror=alert(1)>"})
    own = f"{SOURCES}/x%2F%3Cscript%3Ealert(1)%3C%2Fscript%3E"
    for path in (SOURCES, own, f"{SOURCES}/y/text", NOTES, f"{SOURCES}/y"):
        page = client.get(path)
        assert page.status_code == 200
        assert "<script>alert" not in page.text
        assert "<img" not in page.text
    assert "Peat" in client.get(f"{SOURCES}/y/text").text
    given = client.post(f"{own}/text", files={"file": ("x.txt", b"The salt road.")})
    assert given.status_code == 303
    assert "The salt road." in client.get(f"{own}/text").text


def test_scripts_in_a_list_are_text(client: TestClient) -> None:
    """Pasted or sent as a file: in what is told of it, in what is shown again, and in the list that it joins."""
    address = "javascript:alert(1)"
    listed = f"@misc{{a, title={{Salt {EVIL}}}, url={{{address}}}, author={{{EVIL}}}}}\n@book{{{EVIL}, title={{x"
    for sent in (
        client.post(ADD, data={"pasted": listed}),
        client.post(ADD, data={"pasted": f"{EVIL}</textarea>{EVIL}"}),
        client.post(ADD, files={"list": (f"{EVIL}.bib", EVIL.encode())}),
        client.post(ADD, data={"type": "book", "publisher": f'"><b>{EVIL}'}),
        client.post(ADD, data={"type": EVIL, "title": EVIL, "DOI": address}),
        client.get(SOURCES),
    ):
        assert "<script>alert" not in sent.text
        assert f'href="{address}' not in sent.text
    assert "Salt" in client.get(SOURCES).text


def test_a_text_is_opened_at_a_page(client: TestClient) -> None:
    """By its label; the pages beside it are one link away, and what is taken down there is noted with its page."""
    page = client.get(f"{SOURCES}/osei-2014/text?page=119").text
    assert "page 119</h1>" in page
    assert "text?page=118" in page
    first = client.get(f"{SOURCES}/osei-2014/text?page=zz").text
    assert "page 118</h1>" in first
    sent = client.post(
        NOTES, data={"source": "osei-2014", "page": "119", "remark": "the key", "quotation": "", "from": "text"}
    )
    assert sent.headers["location"] == f"{SOURCES}/osei-2014/text?page=119"
    assert "the key" in client.get(sent.headers["location"]).text
    assert "the key" not in client.get(f"{SOURCES}/osei-2014/text?page=118").text


def test_a_text_without_pages_is_read_part_by_part(client: TestClient) -> None:
    """What is noted from it has no page, and leads back to the part that lay open."""
    page = client.get(f"{SOURCES}/museum-2020/text?part=1").text
    assert "Open at page" not in page
    note = {"source": "museum-2020", "remark": "their own word", "from": "text", "part": hidden(page, "part")}
    sent = client.post(NOTES, data=note)
    assert sent.headers["location"] == f"{SOURCES}/museum-2020/text?part=1"
    assert "Noted from it" in client.get(sent.headers["location"]).text


def test_a_source_shows_what_was_noted_from_it(client: TestClient) -> None:
    """In the order of its pages; nothing of another source; a link leads to the next note."""
    own = f"{SOURCES}/osei-2014"
    assert "Nothing was noted from it yet" in client.get(own).text
    for page, remark, source in (
        ("120", "later", "osei-2014"),
        ("118", "first", "osei-2014"),
        ("60", "no", "lund-1999"),
    ):
        client.post(NOTES, data={"source": source, "page": page, "remark": remark})
    shown = client.get(own).text
    assert shown.index("<p>first") < shown.index("<p>later")
    assert "<p>no " not in shown
    assert f'href="{NOTES}?source=osei-2014"' in shown
    assert re.search(r'<option value="osei-2014" selected', client.get(f"{NOTES}?source=osei-2014").text)


def test_a_source_is_added_and_noted_without_scripts(browser: Browser, served: str, desk: Path) -> None:
    """By links and forms alone, on a narrow screen, from the empty record to the note."""
    with browser.new_context(java_script_enabled=False, viewport={"width": 390, "height": 844}) as context:
        page = context.new_page()
        page.goto(served)
        page.goto(page.url.rstrip("/") + SOURCES)
        page.get_by_role("link", name="Add sources").click()
        page.get_by_label("Type of work").select_option("Report")
        page.get_by_role("button", name="Write its record").click()
        page.get_by_label("Title").fill("Tidal Gauges")
        page.get_by_label("Authors").fill("Harbour Board")
        page.get_by_label("Its text").set_input_files(
            {"name": "g.txt", "mimeType": "text/plain", "buffer": b"The gauge stood at nine."}
        )
        page.get_by_role("button", name="Add").click()
        page.get_by_role("link", name="Read Tidal Gauges").click()
        page.get_by_label("Words of the source").fill("The gauge stood at nine.")
        page.get_by_role("button", name="Note it").click()
        page.get_by_role("link", name="Notes").click()
        expect(page.get_by_role("main")).to_contain_text("The gauge stood at nine.")
    assert "gauge" in (desk / "tram-libraries" / "notes.jsonl").read_text("utf-8")


def test_nothing_hinders_anybody(browser_page: Page, hindrances: Callable[[Page], list[str]]) -> None:
    """Adding, a record, a text and a note: axe-core finds nothing on the pages behind the list."""
    base = browser_page.url.rstrip("/")
    for path in (ADD, f"{ADD}?type=book", f"{SOURCES}/lund-1999", f"{SOURCES}/osei-2014/text?page=119"):
        browser_page.goto(base + path)
        assert hindrances(browser_page) == [], path
    browser_page.get_by_label("What you say of it").fill("the key")
    browser_page.get_by_role("button", name="Note it").click()
    browser_page.goto(base + NOTES)
    assert hindrances(browser_page) == []
    browser_page.get_by_role("link", name="Correct the note the key", exact=True).click()
    assert hindrances(browser_page) == []


def test_a_text_is_replaced_and_the_old_one_kept(client: TestClient, desk: Path) -> None:
    """The page says where the old one stands, and what became of the notes; the file can be given again."""
    notes = desk / "tram-libraries" / "notes.jsonl"
    notes.write_text(put_note("", Note("a", "lund-1999", "60", quotation="not a word of this is in it")), "utf-8")
    page = client.get(f"{SOURCES}/lund-1999").text
    assert "Put it in place of this text" in page
    sent = client.post(f"{SOURCES}/lund-1999/text", files={"file": ("better.txt", b"A better text of the chapter.\n")})
    assert sent.status_code == 303
    shown = client.get(sent.headers["location"]).text
    assert "the old one stands in sources/set aside/lund-1999.txt." in shown
    assert "Of 1 noted quotation 1 was not found: look at the notes below." in shown
    assert "These words were not found in the text at hand" in shown
    assert "The new text is in place" not in client.get(f"{SOURCES}/lund-1999?aside=../../draft.md").text
    assert (desk / "tram-libraries" / "sources" / "set aside" / "lund-1999.txt").exists()
