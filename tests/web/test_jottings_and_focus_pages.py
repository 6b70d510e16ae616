from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page
from starlette.testclient import TestClient

from fairhand.session.research.focus import look_at_focus
from fairhand.session.research.jottings import look_at_groups

PAPER = "/paper/tram-libraries"
SORTED = f"{PAPER}/jottings/sorted"


def read_field(page: str, name: str) -> str:
    """The value of a hidden field of a page."""
    found = re.search(rf'name="{name}" value="([^"]*)"', page)
    assert found
    return found[1]


def test_nothing_is_sorted_unless_it_is_asked(client: TestClient, desk: Path) -> None:
    """The jottings' own page shows the text alone, and a way to sort it."""
    page = client.get(f"{PAPER}/jottings").text
    assert 'type="checkbox"' not in page
    assert f'href="{SORTED}"' in page
    client.get(SORTED)
    assert not (desk / "tram-libraries" / "groups.toml").exists()


def test_a_time_is_set_and_told_when_asked_without_scripts(client: TestClient) -> None:
    """What was typed is kept with it; while it runs nothing is said of it."""
    sent = {"text": "a tram", "seen": read_field(client.get(f"{PAPER}/jottings").text, "seen")}
    begun = client.post(f"{PAPER}/jottings", data={**sent, "do": "begin", "minutes": "12"})
    page = client.get(begun.headers["location"]).text
    assert "a tram" in page
    assert "minutes yet" not in page
    until = read_field(page, "until")
    sent = {"text": "a tram", "seen": read_field(page, "seen"), "until": until.replace("&#43;", "+"), "do": "time"}
    asked = client.post(f"{PAPER}/jottings", data=sent)
    assert "12 minutes yet." in client.get(asked.headers["location"]).text


@pytest.mark.parametrize(
    ("until", "says"),
    [
        ("2027-02-08T11:59:00%2B00:00", "The time is over. Write on, or stop here."),
        ("2027-02-08T12:00:20%2B00:00", "Less than a minute yet."),
        ("soon", ""),
    ],
)
def test_the_time_by_itself(client: TestClient, until: str, says: str) -> None:
    """The piece that the page asks for when the time is over, or when somebody wants to know."""
    found = client.get(f"{PAPER}/jottings/time?until={until}")
    assert re.sub(r"<[^>]*>|\{#.*?#\}", "", found.text).strip() == says
    if until != "soon":
        assert ("hx-get" in found.text) == ("minute" in says)


def test_what_is_ticked_moves(client: TestClient, desk: Path) -> None:
    """To a group of its own, and all stay there; sorted afresh, they are as the program has them."""
    page = client.get(SORTED).text
    groups = len(look_at_groups(desk / "tram-libraries").arrangement.groups)
    sent = {"was": read_field(page, "was"), "jotting": ["0", "4"], "to": str(groups), "do": "move"}
    assert client.post(SORTED, data=sent).status_code == 303
    found = look_at_groups(desk / "tram-libraries")
    assert found.is_kept
    assert len(found.arrangement.groups[-1].jottings) == 2
    refused = client.post(SORTED, data=sent)
    assert refused.status_code == 409
    assert "changed meanwhile" in refused.text
    client.post(SORTED, data={"was": found.state, "do": "afresh"})
    assert not look_at_groups(desk / "tram-libraries").is_kept


def test_a_jotting_becomes_a_question_to_read_for(client: TestClient, desk: Path) -> None:
    """Its words are taken as they stand; where none is ticked, that is said."""
    page = client.get(f"{SORTED}?by=wording").text
    number = re.search(r'value="(\d+)"> <label for="jotting-\d+">who counted', page)
    assert number
    sent = {"was": read_field(page, "was"), "jotting": number[1], "do": "ask"}
    assert client.post(SORTED, data=sent).headers["location"] == f"{PAPER}/focus#questions"
    (question,) = look_at_focus(desk / "tram-libraries")[0].questions
    assert question.text.startswith("who counted? conductors")
    assert "No jotting was ticked" in client.post(SORTED, data={"was": sent["was"], "do": "ask"}).text


def test_the_focus_is_kept_and_asked_about(client: TestClient, desk: Path) -> None:
    """What the task's verb wants and the sentence lacks is a question, with the handbook that asks it."""
    page = client.get(f"{PAPER}/focus").text
    assert "The tram libraries of Velden did not end" in page  # the thesis of the points, until a focus is written
    was = read_field(page, "was")
    sent = {"was": was, "focus": "Reading in\r\ntrams", "audience": "riders"}
    assert client.post(f"{PAPER}/focus", data=sent).status_code == 303
    page = client.get(f"{PAPER}/focus").text
    assert "It names a subject. What do you say of it?" in page
    assert (desk / "tram-libraries" / "focus.toml").read_text() == 'focus = "Reading in trams"\naudience = "riders"\n'
    refused = client.post(f"{PAPER}/focus", data={"was": was, "focus": "Trams"})
    assert refused.status_code == 409
    assert "Reading in trams" in refused.text


def test_another_thesis_of_the_points_is_said(client: TestClient, desk: Path) -> None:
    """A focus called the thesis is that of the points too; where another stands there, neither is written over."""
    was = read_field(client.get(f"{PAPER}/focus").text, "was")
    client.post(f"{PAPER}/focus", data={"was": was, "focus": "Trams were read in.", "thesis": "yes"})
    assert "Trams were read in." in client.get(f"{PAPER}/points").text
    (desk / "tram-libraries" / "points.json").write_text('{"thesis": "Trams were fast."}')
    page = client.get(f"{PAPER}/focus").text
    assert "Another thesis stands with the points: “Trams were fast.”" in page


def test_a_question_is_answered_by_notes_and_leads_to_points(client: TestClient, desk: Path) -> None:
    """Its state, the points that follow, and the words of a form that came too late."""
    client.post(f"{PAPER}/focus", data={"question": "Did it fall on all lines?"})
    page = client.get(f"{PAPER}/focus/q1").text
    was = read_field(page, "was")
    sent = {"was": was, "text": "Did it fall on all lines?", "state": "answered", "point": "p3"}
    assert client.post(f"{PAPER}/focus/q1", data=sent).status_code == 303
    page = client.get(f"{PAPER}/focus").text
    assert "Answered. By which notes?" in page
    assert "Borrowing fell only on the line" in page
    late = client.post(f"{PAPER}/focus/q1", data={"was": was, "text": "Did it?", "state": "open"})
    assert late.status_code == 409
    assert "Did it?" in late.text
    assert "answered:" in late.text
    now = read_field(late.text, "was")
    assert client.post(f"{PAPER}/focus/q1", data={"was": now, "do": "remove"}).status_code == 303
    assert client.get(f"{PAPER}/focus/q1").status_code == 404
    assert client.post(f"{PAPER}/focus", data={"question": " "}).status_code == 400


@pytest.mark.parametrize("way", [{"color_scheme": "dark"}, {"viewport": {"width": 390, "height": 844}}])
def test_nothing_hinders_anybody_while_sorting(
    browser: Browser, served: str, desk: Path, hindrances: Callable[[Page], list[str]], way: dict[str, object]
) -> None:
    """The pages behind the jottings and the focus: no violation, none wider than its window."""
    (desk / "tram-libraries" / "focus.toml").write_text(
        '[[questions]]\ntext = "Who?"\nstate = "answered"\npoints = ["p3"]'
    )
    with browser.new_context(**way) as context:  # type: ignore[arg-type]
        page = context.new_page()
        page.goto(served)
        for path in (
            SORTED,
            f"{SORTED}?by=wording",
            f"{PAPER}/jottings?until=2027-02-08T12:09:00%2B00:00",
            f"{PAPER}/focus",
            f"{PAPER}/focus/q1",
        ):
            page.goto(served.partition("/?")[0] + path)
            assert hindrances(page) == [], path
            assert page.evaluate("document.documentElement.scrollWidth <= window.innerWidth"), path


def test_the_time_is_told_in_place_when_asked(browser_page: Page, served: str) -> None:
    """With scripts what is being typed stays as it is; and the page says by itself that the time is over."""
    before = served.partition("/?")[0] + f"{PAPER}/jottings?until="
    browser_page.goto(f"{before}2027-02-08T12:09:00%2B00:00")
    browser_page.get_by_label("Jottings").fill("a tram")
    browser_page.get_by_role("button", name="How long yet?").click()
    browser_page.get_by_text("9 minutes yet.").wait_for()
    assert browser_page.get_by_label("Jottings").input_value() == "a tram"
    assert browser_page.locator("#time").get_attribute("hx-trigger") == "load delay:540000ms"
