"""The brief in the page: the sheet with its margins, what the writer says of it, and sheets given to the paper."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect
from starlette.testclient import TestClient

from fairhand.model.requirement import Requirement
from fairhand.model.span import Span
from fairhand.readiness.judgement import Judgement, State
from fairhand.web.pages.brief_page import Demand, tell_notes

BRIEF = "/paper/tram-libraries/brief"


def seen_of(client: TestClient, requirement: str) -> str:
    """What a form knows of the requirement as it now stands."""
    shown = client.get(f"{BRIEF}?asked={requirement}").text
    (seen,) = set(re.findall(r'name="seen" value="([0-9a-f]+)"', shown))
    return str(seen)


def told_of(client: TestClient, requirement: str) -> str:
    """What the page tells of a requirement, where it is chosen."""
    told = client.get(f"{BRIEF}?asked={requirement}").text.partition(f'id="asked-{requirement}"')[2]
    return told.partition('class="shut"')[0]


def held(desk: Path) -> dict[str, dict[str, object]]:
    """What ``paper.toml`` holds of the requirements."""
    settings = tomllib.loads((desk / "tram-libraries" / "paper.toml").read_text("utf-8"))
    found: dict[str, dict[str, object]] = settings.get("requirements", {})
    return found


def test_each_state_stands_in_the_margin_beside_the_words(client: TestClient) -> None:
    """In words; what was not understood says so there; values are told in words below."""
    shown = client.get(BRIEF).text
    plain = re.sub(r"\s+", " ", re.sub(r"<[^>]+>", "", shown))
    assert "The sample paper on the course page runs to 2,000 words" in plain
    for note in ("length, met", "policy, artificial intelligence, yours to answer", "5 sections: 1 not met, 4 met"):
        assert note in plain
    assert "not understood: read this yourself" in plain
    assert "850 to 1,200 words; headings and references are not counted; met" in plain


def test_each_requirement_takes_an_answer_in_its_place(client: TestClient) -> None:
    """Its values stand in fields of their kind."""
    told = told_of(client, "due.final")
    assert 'value="2027-02-19" autocomplete="off" type="date"' in told
    assert 'value="16:00" autocomplete="off" type="time"' in told
    assert "<select" in told_of(client, "length.paper")
    assert client.get(f"{BRIEF}/due.final").headers["location"].endswith("?asked=due.final#asked-due.final")


def test_an_answer_is_kept_and_taken_back(client: TestClient, desk: Path) -> None:
    """It stands in ``paper.toml`` with who said so and when, the page says so, and it is gone when it is taken back."""
    sent = {"words": "kept", "by": "me", "do": "answer", "seen": seen_of(client, "policy.ai")}
    assert client.post(f"{BRIEF}/policy.ai", data=sent).headers["location"] == f"{BRIEF}#policy.ai"
    assert held(desk)["policy.ai"]["answer"] == "kept"
    assert re.search(r"Answered by me on \w+day \d+ \w+ \d{4}: kept\.", told_of(client, "policy.ai"))
    client.post(f"{BRIEF}/policy.ai", data={"do": "undo", "seen": seen_of(client, "policy.ai")})
    assert "policy.ai" not in held(desk)
    assert "Answered" not in told_of(client, "policy.ai")


def test_a_waiver_says_who_and_why(client: TestClient, desk: Path) -> None:
    """The state in the margin is *waived* then."""
    sent = {"by": "Dr. Marrow", "words": "any will do", "do": "waive", "seen": seen_of(client, "style")}
    client.post(f"{BRIEF}/style", data=sent)
    assert held(desk)["style"] | {"when": ""} == {
        "waived": True,
        "by": "Dr. Marrow",
        "when": "",
        "answer": "any will do",
    }
    assert "style, waived" in client.get(BRIEF).text


def test_a_value_is_corrected_and_judged_by(client: TestClient, desk: Path) -> None:
    """Only what differs from the sheet is kept, as a number where it is one."""
    sent = {"value-unit": "words", "value-min": "850", "value-max": "1,400", "do": "correct"}
    client.post(f"{BRIEF}/length.paper", data={**sent, "seen": seen_of(client, "length.paper")})
    assert held(desk)["length.paper"]["answer"] == {"max": 1400}
    assert "850 to 1,400 words" in client.get(BRIEF).text
    client.post(f"{BRIEF}/length.paper", data={**sent, "value-max": "1200", "seen": seen_of(client, "length.paper")})
    assert "length.paper" not in held(desk)


@pytest.mark.parametrize(
    ("id_", "sent", "status", "says"),
    [
        ("policy.ai", {"do": "answer", "words": " "}, 400, "nothing was said"),
        ("length.paper", {"do": "correct", "value-max": "many"}, 400, "“many” is not a number"),
        ("due.final", {"do": "correct", "value-on": "soon"}, 400, "“soon” is not a day"),
        ("length.paper", {"do": "correct", "value-unit": ""}, 400, "cannot be left empty"),
    ],
)
def test_what_cannot_be_kept_is_told_beside_it(
    client: TestClient, desk: Path, id_: str, sent: dict[str, str], status: int, says: str
) -> None:
    """What was typed stays in its fields, and nothing is written."""
    before = held(desk)
    answer = client.post(f"{BRIEF}/{id_}", data={**sent, "by": "Dr. Marrow", "seen": seen_of(client, id_)})
    assert answer.status_code == status
    assert says in answer.text
    assert 'value="Dr. Marrow"' in answer.text
    assert held(desk) == before


def test_what_changed_meanwhile_is_shown_beside_what_was_typed(client: TestClient, desk: Path) -> None:
    """Neither is lost: the page shows both, and what is sent from it then is kept."""
    seen = seen_of(client, "length.paper")
    settings = desk / "tram-libraries" / "paper.toml"
    settings.write_text(
        settings.read_text("utf-8") + '\n[requirements."length.paper"]\nanswer = { max = 1300 }\n', "utf-8"
    )
    answer = client.post(f"{BRIEF}/length.paper", data={"do": "correct", "value-max": "1500", "seen": seen})
    assert answer.status_code == 409
    assert "850 to 1,300 words" in answer.text
    assert 'value="1500"' in answer.text
    assert held(desk)["length.paper"]["answer"] == {"max": 1300}
    again = seen_of(client, "length.paper")
    client.post(f"{BRIEF}/length.paper", data={"do": "correct", "value-max": "1500", "seen": again})
    assert held(desk)["length.paper"]["answer"] == {"max": 1500}


def test_an_unknown_demand_is_not_there(client: TestClient) -> None:
    """Nothing is written for what the sheet does not ask."""
    assert client.post(f"{BRIEF}/length.poem", data={"do": "waive"}).status_code == 404


def test_a_further_sheet_joins_with_its_day(client: TestClient, desk: Path) -> None:
    """A later message overrules the sheet, and both are shown."""
    sent = {"do": "sheet", "pasted": "The essay may have up to 1,500 words.", "given": "2027-02-01"}
    assert client.post(BRIEF, data=sent).status_code == 303
    assert (desk / "tram-libraries" / "brief" / "2027-02-01 message.txt").is_file()
    shown = client.get(BRIEF).text
    assert "2027-02-01 message.txt" in shown
    assert "The sheets contradict each other" in shown


def test_a_paper_without_a_sheet_asks_for_one(client: TestClient, desk: Path) -> None:
    """By file or pasted; it is the paper's brief then, and its day is kept."""
    (desk / "ferry").mkdir()
    (desk / "ferry" / "paper.toml").write_text('title = "The Ferry"\n', "utf-8")
    assert "drop it on the line below" in client.get("/paper/ferry/brief").text
    sheet = {"sheet": ("Sheet.TXT", b"Write 900 words. Due 3 March.")}
    client.post("/paper/ferry/brief", data={"do": "sheet", "given": "2027-01-11"}, files=sheet)
    assert (desk / "ferry" / "brief.txt").is_file()
    shown = client.get("/paper/ferry/brief").text
    assert "on Wednesday 3 March 2027" in shown
    assert 'value="2027-01-11"' in shown
    client.post("/paper/ferry/brief", data={"do": "given", "given": "2028-01-11"})
    assert "3 March 2028" in client.get("/paper/ferry/brief").text


@pytest.mark.parametrize(
    ("data", "files", "status", "says"),
    [
        ({"do": "sheet"}, {}, 400, "Nothing was sent"),
        ({"do": "sheet", "pasted": "Write.", "given": "soon"}, {}, 400, "no day"),
        ({"do": "sheet"}, {"sheet": ("sheet.pdf", b"no PDF")}, 400, "it is no PDF"),
        ({"do": "sheet"}, {"sheet": ("run.exe", b"MZ\0\0")}, 415, "not read"),
    ],
)
def test_what_is_no_sheet_is_told(
    client: TestClient, desk: Path, data: dict[str, str], files: dict[str, tuple[str, bytes]], status: int, says: str
) -> None:
    """The page comes back with what was wrong and what was pasted, and nothing is put there."""
    answer = client.post(BRIEF, data=data, files=files or None)
    assert answer.status_code == status
    assert says in answer.text
    assert data.get("pasted", "") in answer.text
    assert not (desk / "tram-libraries" / "brief").exists()


def test_a_script_in_a_sheet_is_text(client: TestClient, desk: Path) -> None:
    """The sheet is shown and never run, nor is what a correction holds."""
    sheet = desk / "tram-libraries" / "brief.txt"
    sheet.write_text(sheet.read_text("utf-8") + "\nYou must <script>alert(1)</script> hand it in.\n", "utf-8")
    sent = {"do": "answer", "words": '"><script>alert(2)</script>', "seen": seen_of(client, "policy.ai")}
    client.post(f"{BRIEF}/policy.ai", data=sent)
    assert "<script>alert" not in client.get(f"{BRIEF}?asked=policy.ai").text


@pytest.mark.parametrize("states", [("met", "unmet"), ("met", "met", "unmet", "ask"), ("waived",) * 3])
def test_no_requirement_is_without_a_note(states: tuple[State, ...]) -> None:
    """Few have one each; many of one kind have one that counts them and leads to the most pressing."""
    demands = [
        Demand(
            Requirement("section", {"name": f"part {n}"}, "", Span(0, 1), id=f"section.{n}"),
            Judgement(state, None, ""),
            "",
            "",
        )
        for n, state in enumerate(states)
    ]
    notes = tell_notes(demands)
    assert sorted(one for note in notes for one in note.ids) == [one.requirement.id for one in demands]
    if len(states) > 2:
        (note,) = notes
        assert note.says.startswith(f"{len(states)} sections: ")
        assert note.to == next(
            (one.requirement.id for one in demands if one.judgement.state == "unmet"), demands[0].requirement.id
        )


def test_a_requirement_is_answered_in_a_browser(browser_page: Page, hindrances: Callable[[Page], list[str]]) -> None:
    """Its note stands in a margin on its line; chosen, it takes the answer there; nothing hinders anybody meanwhile."""
    page = browser_page
    page.goto(page.url.rstrip("/") + BRIEF)
    note = page.get_by_role("link", name="policy, artificial intelligence, yours to answer")
    sheet, beside = page.locator(".sheet").bounding_box(), note.bounding_box()
    assert sheet
    assert beside
    assert beside["x"] + beside["width"] <= sheet["x"] or beside["x"] >= sheet["x"] + sheet["width"]
    note.click()
    expect(page.locator(".told")).to_be_focused()
    page.get_by_text("Answer", exact=True).click()
    page.get_by_text("Correct", exact=True).click()
    assert hindrances(page) == []
    page.get_by_label("The answer, in a word or two").fill("kept")
    page.get_by_role("button", name="Keep the answer").click()
    expect(page.get_by_role("link", name="policy, artificial intelligence, met").first).to_be_visible()


def test_without_scripts_a_requirement_is_waived(browser: Browser, served: str) -> None:
    """Links and forms alone are enough."""
    with browser.new_context(java_script_enabled=False) as context:
        page = context.new_page()
        page.goto(served)
        page.goto(served.partition("/?")[0] + BRIEF)
        page.get_by_role("link", name="style, met").click()
        page.locator("summary", has_text="Waive").click()
        page.locator("#by-waive").fill("Dr. Marrow")
        page.get_by_role("button", name="Waive it").click()
        assert page.get_by_role("link", name="style, waived").is_visible()
