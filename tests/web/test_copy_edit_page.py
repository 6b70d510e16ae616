"""The copy-edit in the page: one kind at a time, words learnt, lapses, the sheet's rule on tools, ease on request."""

from __future__ import annotations

import html
import re
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect
from starlette.testclient import TestClient

COPY_EDIT = "/paper/tram-libraries/copy-edit"


@pytest.fixture
def slips(desk: Path) -> Path:
    """The demo's paper with slips of the language in a new paragraph at its end, by a writer without lapses."""
    (desk / "lapses.toml").unlink()
    draft = desk / "tram-libraries" / "draft.md"
    text = draft.read_text("utf-8")
    place = text.index("## ") if "## " in text else len(text)
    slipped = "The goverment ran the cars. They were larger then the others. The goverments of the day agreed.\n\n"
    draft.write_text(text[:place] + slipped + text[place:], "utf-8")
    return draft


def field(page: str, name: str) -> str:
    """What a hidden field of the page holds."""
    found = re.search(rf'name="{name}" value="([^"]*)"', page)
    assert found is not None
    return html.unescape(found[1])


def numbers(page: str) -> list[str]:
    """The numbers of the marks on a page, in order."""
    return list(dict.fromkeys(re.findall(r"finding=(\d+)", page)))


def test_one_kind_is_shown_alone(client: TestClient, slips: Path) -> None:
    """Its marks are numbered by themselves, and every way on keeps to it."""
    page = client.get(COPY_EDIT).text
    assert f'href="{COPY_EDIT}?kind=spelling"' in page
    alone = client.get(f"{COPY_EDIT}?kind=spelling&finding=1").text
    assert numbers(alone) == ["1", "2"]
    assert "Was “government” or" in alone
    assert "kind=spelling" in re.findall(r'rel="next" href="([^"]*)"', alone)[0]
    assert client.get(f"{COPY_EDIT}?kind=nothing").text.count('class="label"') == page.count('class="label"')


def test_a_word_is_added_to_the_writers_list(client: TestClient, slips: Path, desk: Path) -> None:
    """Its mark is gone, here and in every paper of the desk; the next of the kind is shown."""
    page = client.get(f"{COPY_EDIT}?kind=spelling&finding=1").text
    sent = {"finding": "1", "mark": field(page, "mark"), "kind": "spelling"}
    answer = client.post(f"{COPY_EDIT}/word", data=sent)
    assert answer.status_code == 303
    assert "kind=spelling" in answer.headers["location"]
    assert (desk / "words.txt").read_text("utf-8") == "goverment\n"
    assert "No dictionary has “goverment”" not in client.get(f"{COPY_EDIT}?kind=spelling&finding=1").text
    assert client.post(f"{COPY_EDIT}/word", data=sent).status_code == 409


def test_what_is_mended_is_learnt(client: TestClient, slips: Path, desk: Path) -> None:
    """The slip that was taken out is a lapse from then on, shown before the marks with its count."""
    page = client.get(f"{COPY_EDIT}?kind=confused-words&finding=1").text
    was = field(page, "was")
    sent = {"finding": "1", "was": was, "which": "0", "many": "1", "kind": "confused-words"}
    assert (
        client.post(f"{COPY_EDIT}/mend", data={**sent, "text": was.replace("larger then", "larger than")}).status_code
        == 303
    )
    assert "larger than the others" in slips.read_text("utf-8")
    assert 'wrong = "then"' in (desk / "lapses.toml").read_text("utf-8")
    assert "then for than: not in this draft" in client.get(COPY_EDIT).text


@pytest.mark.parametrize("leaf", ["copy-edit", "proof"])
def test_lapses_stand_before_the_marks(client: TestClient, leaf: str) -> None:
    """The three most frequent, with their number in the draft and the day; one that has died out is told."""
    page = client.get(f"/paper/tram-libraries/{leaf}").text
    said = [html.unescape(one) for one in re.findall(r"<li>([^<]*(?:in this draft|died out)[^<]*)</li>", page)]
    assert [one.partition(",")[0] for one in said] == [
        "the same word twice: 1 in this draft",
        "“very” before a plain fact: 1 in this draft",
        "“amount of” for “number of”: not in this draft",
        "“reason is because” for “reason is that”: in none of your last three drafts; it has died out",
    ]
    assert page.index("Your lapses") < page.index('class="proof')


def test_a_mark_is_noted_as_a_lapse(client: TestClient, slips: Path, desk: Path) -> None:
    """Without mending it; noted again, it counts twice."""
    page = client.get(f"{COPY_EDIT}?kind=spelling&finding=1").text
    for _ in range(2):
        answer = client.post(f"{COPY_EDIT}/lapse", data={"finding": "1", "mark": field(page, "mark")})
        assert answer.status_code == 303
    assert "count = 2" in (desk / "lapses.toml").read_text("utf-8")


def named(page: str) -> dict[str, str]:
    """What the forms of the mark that is told of send."""
    return {name: field(page, name) for name in ("finding", "mark", "kind")}


def test_marks_are_left_for_afterwards(client: TestClient, slips: Path, desk: Path) -> None:
    """The draft stands as it was; the next mark is shown; the margin and the row of ways say what was marked."""
    before = slips.read_bytes()
    kind = f"{COPY_EDIT}?kind=spelling"
    answer = client.post(f"{COPY_EDIT}/mark", data={**named(client.get(f"{kind}&finding=1").text), "do": "mend"})
    assert answer.headers["location"] == f"{kind.replace('?', '?finding=2&')}#mark-2"
    client.post(f"{COPY_EDIT}/mark", data={**named(client.get(f"{kind}&finding=2").text), "do": "later"})
    assert slips.read_bytes() == before
    page = client.get(COPY_EDIT).text
    assert "spelling, mend later" in page
    assert "spelling, come back" in page
    assert "Mend later (1)" in page
    assert "; 2 wait for afterwards" in page
    assert numbers(client.get(f"{COPY_EDIT}?left=mend").text) == ["1"]
    assert "“goverments”" in client.get(f"{COPY_EDIT}?left=later&finding=1").text
    assert "Everything here was gone through" in client.get(kind).text
    page = client.get(f"{kind}&finding=1").text
    assert client.post(f"{COPY_EDIT}/mark", data={**named(page), "do": "back"}).status_code == 303
    assert "spelling, mend later" not in client.get(COPY_EDIT).text
    assert client.post(f"{COPY_EDIT}/mark", data={**named(page), "mark": "none", "do": "mend"}).status_code == 409


def test_what_was_marked_is_mended_one_by_one(client: TestClient, slips: Path) -> None:
    """Narrowed to what is to be mended later, each answer leads to the next of them."""
    for kind in ("spelling", "confused-words"):
        page = client.get(f"{COPY_EDIT}?kind={kind}&finding=1").text
        client.post(f"{COPY_EDIT}/mark", data={**named(page), "do": "mend"})
    page = client.get(f"{COPY_EDIT}?left=mend&finding=1").text
    sent = {"finding": "1", "mark": field(page, "mark"), "left": "mend", "do": "put"}
    assert client.post(f"{COPY_EDIT}/mark", data=sent).headers["location"].endswith("?finding=1&left=mend#mark-1")
    page = client.get(f"{COPY_EDIT}?left=mend&finding=1").text
    assert "was “than” meant?" in page
    sent = {"finding": "1", "mark": field(page, "mark"), "left": "mend", "do": "put"}
    assert client.post(f"{COPY_EDIT}/mark", data=sent).headers["location"] == f"{COPY_EDIT}?left=mend"
    assert "The government ran the cars. They were larger than the others." in slips.read_text("utf-8")


def test_what_is_offered_is_put_at_once(client: TestClient, slips: Path, desk: Path) -> None:
    """By one press, and learnt as a lapse."""
    page = client.get(f"{COPY_EDIT}?kind=confused-words&finding=1").text
    assert "Put “than”" in page
    client.post(f"{COPY_EDIT}/mark", data={**named(page), "do": "put"})
    assert "They were larger than the others." in slips.read_text("utf-8")
    assert 'wrong = "then"' in (desk / "lapses.toml").read_text("utf-8")


def test_marks_are_mended_in_one_go(client: TestClient, slips: Path, desk: Path) -> None:
    """Each passage once, what is offered put in and named; all are saved together, and what was mended is learnt."""
    for kind in ("spelling", "confused-words", "doubled-word"):
        page = client.get(f"{COPY_EDIT}?kind={kind}&finding=1").text
        client.post(f"{COPY_EDIT}/mark", data={**named(page), "do": "mend"})
    page = client.get(f"{COPY_EDIT}/marked").text
    assert page.count("<textarea") == 2
    assert "put “government”; put “than”" in page
    assert "strike “and”" in page
    sent = form_of(page)
    assert "The government ran the cars. They were larger than the others. The goverments" in sent["text-1"]
    answer = client.post(f"{COPY_EDIT}/marked", data=sent)
    assert answer.status_code == 303
    draft = slips.read_text("utf-8")
    assert "The government ran the cars. They were larger than the others." in draft
    assert "several pages and too short" in draft
    lapses = (desk / "lapses.toml").read_text("utf-8")
    assert 'wrong = "then"' in lapses
    assert 'check = "doubled-word"' in lapses
    assert "Nothing is marked to be mended" in client.get(f"{COPY_EDIT}/marked").text


def test_both_wordings_stand_over_the_passage(client: TestClient) -> None:
    """Where a quotation differs from its source, the writer mends it with both in view."""
    page = client.get(f"{COPY_EDIT}?kind=quotation-differs&finding=1").text
    client.post(f"{COPY_EDIT}/mark", data={**named(page), "do": "mend"})
    page = client.get(f"{COPY_EDIT}/marked").text
    assert page.index("We put our ⸢trust⸣ in the public") < page.index("<textarea")
    assert form_of(page)["text-1"] == form_of(page)["was-1"]


def test_line_ends_stay_when_passages_are_mended(client: TestClient, slips: Path, desk: Path) -> None:
    """A draft with the line ends of another system keeps them, and what was mended is learnt."""
    text = slips.read_text("utf-8").replace("larger then the", "larger then\nthe")
    slips.write_bytes(text.replace("\n", "\r\n").encode())
    page = client.get(f"{COPY_EDIT}?kind=confused-words&finding=1").text
    client.post(f"{COPY_EDIT}/mark", data={**named(page), "do": "mend"})
    sent = form_of(client.get(f"{COPY_EDIT}/marked").text)
    assert client.post(f"{COPY_EDIT}/marked", data=sent).status_code == 303
    assert b"They were larger than\r\nthe others." in slips.read_bytes()
    assert b"\n" not in slips.read_bytes().replace(b"\r\n", b"")
    assert 'wrong = "then"' in (desk / "lapses.toml").read_text("utf-8")


def test_a_draft_changed_meanwhile_is_not_written_over(client: TestClient, slips: Path) -> None:
    """Nothing is saved; what was typed stands beside what the draft has now, and may be saved again."""
    page = client.get(f"{COPY_EDIT}?kind=spelling&finding=1").text
    client.post(f"{COPY_EDIT}/mark", data={**named(page), "do": "mend"})
    sent = form_of(client.get(f"{COPY_EDIT}/marked").text)
    slips.write_text(slips.read_text("utf-8").replace("ran the cars.", "ran the trams."), "utf-8")
    answer = client.post(f"{COPY_EDIT}/marked", data=sent)
    assert answer.status_code == 409
    assert "was changed meanwhile; nothing was written" in answer.text
    assert "The goverment ran the trams." in answer.text
    assert "The government ran the cars." in answer.text
    assert client.post(f"{COPY_EDIT}/marked", data=form_of(answer.text)).status_code == 303
    assert "The government ran the cars." in slips.read_text("utf-8")
    unchanged = {**sent, "text-1": sent["was-1"]}
    assert "Nothing was changed" in client.post(f"{COPY_EDIT}/marked", data=unchanged).text


def form_of(page: str) -> dict[str, str]:
    """What the form of the passages sends as it stands."""
    hidden = re.findall(r'name="((?:was|which|many)-\d+)" value="([^"]*)"', page)
    typed = re.findall(r'<textarea id="text-\d+" name="(text-\d+)"[^>]*>\n(.*?)</textarea>', page, re.DOTALL)
    return {name: html.unescape(value) for name, value in (*hidden, *typed)}


def test_a_rule_of_the_sheet_keeps_it_shut(client: TestClient, slips: Path, desk: Path) -> None:
    """The language is not marked until leave is given, and not where it is refused; the rest is."""
    brief = desk / "tram-libraries" / "brief.txt"
    brief.write_text(f"{brief.read_text('utf-8')}\n\nDo not use grammar checkers on this paper.\n", "utf-8")
    page = client.get(COPY_EDIT).text
    assert "The sheet has a rule on tools that check the language: “Do not use grammar checkers" in page
    assert "not looked at until you have answered it" in page
    assert "Answer first whether tools that check the language may be used" in page
    assert "confused words" not in page
    assert "quotation differs" in page
    sent = {"rule": field(page, "rule"), "by": "Dr. Marrow"}
    client.post(f"{COPY_EDIT}/rule", data={**sent, "do": "refuse"})
    page = client.get(f"{COPY_EDIT}?used=1&ease=1").text
    assert "You answered: They may not be used (Dr. Marrow). So they are not used on this paper" in page
    assert "confused words" not in page
    assert "Spelling, grammar and words confused: not looked at" in page
    assert "Flesch" not in page
    client.post(f"{COPY_EDIT}/rule", data={**sent, "do": "leave"})
    page = client.get(f"{COPY_EDIT}?used=1").text
    assert "confused words" in page
    for used in ("Spelling: words held", "Words confused", "Grammar and marks", "Copying: the draft held"):
        assert used in page
    assert client.post(f"{COPY_EDIT}/rule", data={"rule": "policy.none", "do": "leave"}).status_code == 409


def test_where_the_language_is_shut_nothing_is_called_clear(client: TestClient, desk: Path) -> None:
    """The rest may be; the language is the writer's own to look through."""
    paper = desk / "tram-libraries"
    (paper / "draft.md").write_text("The goverment ran the cars.\n", "utf-8")
    (paper / "sources.json").unlink()
    (paper / "brief.txt").write_text("Write 5 words. Do not use grammar checkers on this paper.\n", "utf-8")
    client.post(f"{COPY_EDIT}/rule", data={"rule": field(client.get(COPY_EDIT).text, "rule"), "do": "refuse"})
    assert "The language is yours alone to look through" in client.get(COPY_EDIT).text


def test_ease_is_shown_when_it_is_asked_for(client: TestClient, slips: Path) -> None:
    """The sentences drawn, with their range in words, and each figure with its formula."""
    assert "Flesch" not in client.get(COPY_EDIT).text
    page = client.get(f"{COPY_EDIT}?ease=1").text
    assert "Flesch reading ease" in page
    assert "206.835" in page
    assert re.search(r'aria-label="The lengths of the sentences, from \d+ to \d+ words"', page)


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_the_page_hinders_nobody(
    slips: Path, browser_page: Page, hindrances: Callable[[Page], list[str]], scheme: str
) -> None:
    """axe-core finds nothing, by day and by night, wide and narrow; a mark is added to the words by keyboard."""
    browser_page.emulate_media(color_scheme="dark" if scheme == "dark" else "light")
    host = browser_page.url.split("/", 3)
    address = f"{host[0]}//{host[2]}{COPY_EDIT}"
    for width in (1280, 380):
        browser_page.set_viewport_size({"width": width, "height": 900})
        browser_page.goto(f"{address}?kind=spelling&finding=1&ease=1")
        assert hindrances(browser_page) == []
    assert "By key: o put “government”, m mend, l mend later" in browser_page.locator(".told .keys").inner_text()
    browser_page.get_by_role("button", name="Add to your words").press("Enter")
    browser_page.wait_for_url("**/copy-edit?*")
    assert "No dictionary has “goverment”" not in browser_page.content()


def test_marks_are_gone_through_by_key(slips: Path, browser_page: Page) -> None:
    """Each key does what the line of keys says; none of them is taken from what is being typed."""
    before = slips.read_text("utf-8")
    host = browser_page.url.split("/", 3)
    browser_page.goto(f"{host[0]}//{host[2]}{COPY_EDIT}?kind=spelling&finding=1#mark-1")
    browser_page.keyboard.press("l")
    browser_page.wait_for_url("**finding=2**")
    browser_page.keyboard.press("b")
    browser_page.wait_for_url("**/copy-edit?kind=spelling")
    assert slips.read_text("utf-8") == before
    browser_page.goto(f"{host[0]}//{host[2]}{COPY_EDIT}?kind=spelling&finding=1#mark-1")
    browser_page.keyboard.press("n")
    browser_page.wait_for_url("**finding=2**")
    browser_page.keyboard.press("p")
    browser_page.wait_for_url("**finding=1**")
    browser_page.keyboard.press("m")
    expect(browser_page.get_by_label("The passage as you wrote it")).to_be_focused()
    browser_page.keyboard.type("lbn")
    assert "lbn" in browser_page.get_by_label("The passage as you wrote it").input_value()
    browser_page.get_by_label("The passage as you wrote it").fill("")
    browser_page.locator(".told .shut").focus()
    browser_page.keyboard.press("o")
    browser_page.get_by_text("The government ran the cars.").wait_for()
    assert "The government ran the cars." in slips.read_text("utf-8")


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_mending_in_one_go_hinders_nobody(
    client: TestClient, slips: Path, browser_page: Page, hindrances: Callable[[Page], list[str]], scheme: str
) -> None:
    """axe-core finds nothing, by day and by night, wide and narrow."""
    for kind, do in (("spelling", "mend"), ("confused-words", "later")):
        page = client.get(f"{COPY_EDIT}?kind={kind}&finding=1").text
        client.post(f"{COPY_EDIT}/mark", data={**named(page), "do": do})
    browser_page.emulate_media(color_scheme="dark" if scheme == "dark" else "light")
    host = browser_page.url.split("/", 3)
    for width in (1280, 380):
        browser_page.set_viewport_size({"width": width, "height": 900})
        browser_page.goto(f"{host[0]}//{host[2]}{COPY_EDIT}/marked")
        assert hindrances(browser_page) == []
        assert "To come back to" in browser_page.content()
