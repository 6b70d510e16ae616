"""Earlier states in the page."""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect
from starlette.testclient import TestClient

from fairhand.desk.record import keep_state, list_states, state_bytes

STATES = "/paper/tram-libraries/states"
MORNING = dt.datetime(2027, 2, 3, 9, 0, tzinfo=dt.UTC)


@pytest.fixture
def paper(desk: Path) -> Path:
    """A paper with three earlier states of its rough draft, two of them saved at pauses within a minute."""
    folder = desk / "tram-libraries"
    for minutes, text in ((0, "The lamps."), (1, "The lamps were lit."), (95, "The lamps were lit late.\n\nWhy?")):
        keep_state(folder, "rough.md", text.encode(), "written", at=MORNING + dt.timedelta(minutes=minutes))
    (folder / "rough.md").write_text("The lamps were lit late.\n\nWhy <b>then</b>?\n", "utf-8")
    return folder


def state_of(folder: Path, number: int) -> str:
    """The address of a state of the rough draft, by its place among them."""
    return f"{STATES}/{[state for state in list_states(folder) if state.name == 'rough.md'][number].seq}"


def test_states_are_listed_by_day(client: TestClient, paper: Path) -> None:
    """What came in and went out, and what another program did; those between only on request."""
    shown = client.get(f"{STATES}?file=rough.md").text
    assert "Wednesday 3 February 2027" in shown
    assert "4 words in" in shown
    assert "; changed outside" in shown
    assert len(re.findall(r'<tr id="state-', shown)) == 3
    every = client.get(f"{STATES}?file=rough.md&every=yes").text
    assert len(re.findall(r'<tr id="state-', every)) == 4
    assert "2 words in, 0 out" not in every
    assert "draft.md" in shown


def test_a_state_is_looked_at_and_held_against_the_present(client: TestClient, paper: Path) -> None:
    """As text, never as anything else; and only where the two differ."""
    assert "The lamps were lit late." in client.get(state_of(paper, 2)).text
    against = client.get(f"{state_of(paper, 2)}?with=present").text
    assert "⸢Why?⸣" in against
    assert "⸢Why &lt;b&gt;then&lt;/b&gt;?⸣" in against
    assert "lit late" not in against
    assert "stands so now" in client.get(state_of(paper, 3)).text


def test_two_states_are_held_against_each_other(client: TestClient, paper: Path) -> None:
    """The later is chosen from a list; how much was revised in argument and in wording is said above the passages."""
    alone = client.get(state_of(paper, 0)).text
    later = state_of(paper, 2).rpartition("/")[2]
    assert f'<option value="{later}">' in alone
    against = client.get(f"{state_of(paper, 0)}?with={later}").text
    assert "Revised in argument: 1 sentence new, 1 sentence changed, it may be." in against
    assert "2 words more that say something" in against
    assert "As it was afterwards" in against
    assert "Bring back" not in against
    assert client.get(f"{state_of(paper, 0)}?with=99999").status_code == 404


def test_a_state_is_brought_back_beside(client: TestClient, paper: Path) -> None:
    """The present file is left as it is; the page says under which name the other stands."""
    before = (paper / "rough.md").read_bytes()
    sent = client.post(state_of(paper, 0), data={"do": "beside"})
    assert sent.status_code == 303
    (made,) = [path for path in paper.iterdir() if "(state" in path.name]
    assert made.read_text("utf-8") == "The lamps."
    assert made.name in client.get(sent.headers["location"]).text
    assert (paper / "rough.md").read_bytes() == before


def test_a_state_is_put_in_its_place(client: TestClient, paper: Path) -> None:
    """What stood there before is a state of its own; a file changed meanwhile is not written over."""
    address = state_of(paper, 0)
    found = re.search(r'name="seen" value="(\w+)"', client.get(address).text)
    assert found is not None
    (paper / "rough.md").write_text("Another program's words.", "utf-8")
    refused = client.post(address, data={"do": "place", "seen": found[1]})
    assert refused.status_code == 409
    assert "nothing was written" in refused.text
    again = re.search(r'name="seen" value="(\w+)"', refused.text)
    assert again is not None
    sent = client.post(address, data={"do": "place", "seen": again[1]})
    assert "stands so again" in client.get(sent.headers["location"]).text
    assert (paper / "rough.md").read_text("utf-8") == "The lamps."
    kept = client.get(f"{STATES}?file=rough.md").text
    assert "; brought back" in kept
    assert "Another program&#39;s words." in client.get(state_of(paper, -2)).text


def test_a_closed_folder_is_told(client: TestClient, paper: Path) -> None:
    """Nothing is brought back there; the states can still be looked at."""
    address = state_of(paper, 0)
    client.get(STATES)
    paper.chmod(0o500)
    try:
        assert client.get(STATES).status_code == 200
        refused = client.post(address, data={"do": "beside"})
        assert refused.status_code == 409
        assert "nothing can be written there" in refused.text
    finally:
        paper.chmod(0o700)


def test_the_record_is_checked_in_a_sentence(client: TestClient, paper: Path) -> None:
    """Only when it is asked for."""
    assert "is chained" not in client.get(STATES).text
    assert "states are whole, and each is chained to the one before it." in client.get(f"{STATES}?check=yes").text


@pytest.mark.parametrize("wrong", ["0", "99999", "-1", "1e3", "٣", "9" * 30])
def test_no_such_state(client: TestClient, paper: Path, wrong: str) -> None:
    """A number that the record does not have leads to a page that says so."""
    assert client.get(f"{STATES}/{wrong}").status_code == 404
    assert client.get(f"{STATES}?before={wrong}&file={wrong}").status_code == 200


def test_a_paper_without_states_says_so(desk: Path, client: TestClient) -> None:
    """An empty list tells what will be in it."""
    (desk / "bare").mkdir()
    (desk / "bare" / "brief.txt").write_text("Write about lamps.", "utf-8")
    assert "Nothing was saved yet" in client.get("/paper/bare/states").text


def test_a_state_hinders_nobody(browser_page: Page, paper: Path, hindrances: Callable[[Page], list[str]]) -> None:
    """axe-core finds nothing in the way on a state's page, alone and against the present."""
    base = browser_page.url.partition("/?")[0].rstrip("/")
    for address in (state_of(paper, 0), f"{state_of(paper, 0)}?with=present", f"{STATES}?file=rough.md&check=yes"):
        browser_page.goto(base + address)
        assert hindrances(browser_page) == []
    expect(browser_page.locator("#said")).to_be_empty()


def test_a_copy_in_conflict_is_held_against_the_file_and_chosen(client: TestClient, paper: Path) -> None:
    """It is named above the states; in the file's place what stood there is kept, and the copy stays where it is."""
    name = "rough (Ada's conflicted copy 2027-02-04).md"
    (paper / name).write_text("The lamps were lit early.\n\nWhy <b>then</b>?\n", "utf-8")
    before = (paper / "rough.md").read_text("utf-8")
    listed = client.get(f"{STATES}?file=rough.md").text
    assert "another version of rough.md, left in conflict by a synchronised folder" in listed
    address = re.search(r'href="([^"]*states/beside/[^"]*)"', listed)
    assert address is not None
    shown = client.get(address[1]).text
    assert "⸢early.⸣" in shown
    assert "<b>" not in shown
    seen, was = (re.search(rf'name="{one}" value="([^"]*)"', shown) for one in ("seen", "was"))
    assert seen is not None
    assert was is not None
    assert client.post(address[1], data={"seen": "0", "was": was[1]}).status_code == 409
    assert client.post(address[1], data={"seen": seen[1], "was": was[1]}).status_code == 303
    assert (paper / "rough.md").read_bytes() == (paper / name).read_bytes()
    assert before.encode() in [state_bytes(paper, one.seq) for one in list_states(paper, "rough.md")]
    assert "stands so now" in client.get(address[1]).text
    for other in ("draft.md", "..%2Fdesk.toml", "nobody.md"):
        assert client.get(f"{STATES}/beside/{other}").status_code == 404


def test_a_copy_in_conflict_hinders_nobody(
    browser_page: Page, served: str, paper: Path, hindrances: Callable[[Page], list[str]]
) -> None:
    """By night too, and in a narrow window."""
    (paper / "rough (1).md").write_text("The lamps were lit early.\n", "utf-8")
    browser_page.goto(served)
    for width, scheme in ((1280, "light"), (390, "dark")):
        browser_page.set_viewport_size({"width": width, "height": 900})
        browser_page.emulate_media(color_scheme="dark" if scheme == "dark" else "light")
        browser_page.goto(served.partition("/?")[0] + f"{STATES}?file=rough.md")
        browser_page.get_by_role("link", name="rough (1).md").press("Enter")
        expect(browser_page.locator("h1")).to_have_text("rough (1).md")
        assert hindrances(browser_page) == []
        assert browser_page.evaluate("document.documentElement.scrollWidth <= window.innerWidth")
