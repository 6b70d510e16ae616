"""The plan in the page, and the writer's hours."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect
from starlette.testclient import TestClient

PLAN = "/paper/tram-libraries/plan"
WEEK = dict.fromkeys(("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"), "")
HOURS = {**WEEK, "off": "", "longest": "60", "pause": "5"}


def text_of(page: str) -> str:
    """What a page says, without its markup."""
    return " ".join(re.sub(r"<[^>]+>", "", page).split())


def test_the_week_stands_by_its_days(client: TestClient) -> None:
    """What to do now, for how long and why, then each day; everything fits, and nothing is said of it."""
    shown = text_of(client.get("/plan").text)
    assert (
        "Now, or today at 18:00: find 1 more source, in Nine Minutes of Reading, for 50 minutes. One point has" in shown
    )
    assert "Wednesday 10 February 18:00–20:00" in shown
    assert "does not fit" not in shown
    assert "Monday 15 February 18:00–18:55" not in shown
    assert "Monday 15 February 18:00–18:55" in text_of(client.get("/plan?every=yes").text)


def test_a_step_is_called_done_and_taken_back(client: TestClient, desk: Path) -> None:
    """It is asked once, with the planned minutes filled in; the plan goes on from there."""
    shown = client.get(PLAN).text
    assert 'name="minutes" value="50"' in shown
    sent = client.post(PLAN, data={"step": "sources", "minutes": "40", "do": "done"})
    assert sent.headers["location"] == PLAN
    log = json.loads((desk / "tram-libraries" / "time.jsonl").read_text("utf-8"))
    assert (log["step"], log["took"], log["planned"], log["usual"]) == ("sources", 40, 50, 30)
    shown = text_of(client.get(PLAN).text)
    assert "sources: done, in 40 minutes" in shown
    assert "Find 1 more source" not in shown
    client.post(PLAN, data={"step": "sources", "do": "back"})
    assert "Find 1 more source" in text_of(client.get(PLAN).text)


def test_a_reader_is_left_out_and_a_step_is_left_half_done(client: TestClient, desk: Path) -> None:
    """What was filled in for the end is not taken for what a part took."""
    client.get(PLAN)
    client.post(PLAN, data={"step": "reader-1", "minutes": "35", "do": "out"})
    client.post(PLAN, data={"step": "revision", "minutes": "120", "left": "45", "do": "left"})
    shown = text_of(client.get(PLAN).text)
    assert "first reader" not in shown
    assert "revision: begun, 45 minutes left" in shown
    assert "Revise the argument 45 minutes" in shown
    lines = (desk / "tram-libraries" / "time.jsonl").read_text("utf-8").splitlines()
    assert [json.loads(line).get("took") for line in lines] == [None, None]


@pytest.mark.parametrize(
    ("sent", "says"),
    [
        ({"step": "sources", "minutes": "soon", "do": "done"}, "“soon” is no number of minutes"),
        ({"step": "sources", "left": "", "do": "left"}, "how many minutes of it are left"),
        ({"step": "sing", "do": "done"}, "no one step is called that"),
        ({"step": "sing", "do": "back"}, "nothing was said of such a step"),
    ],
)
def test_what_cannot_be_done_is_said_on_the_page(
    client: TestClient, desk: Path, sent: dict[str, str], says: str
) -> None:
    """And nothing is written."""
    answer = client.post(PLAN, data=sent)
    assert answer.status_code >= 400
    assert says in text_of(answer.text)
    assert not (desk / "tram-libraries" / "time.jsonl").exists()


def test_hours_are_kept_and_the_plan_follows(client: TestClient, desk: Path) -> None:
    """Of desk.toml nothing else is touched; an empty week is no week of assumed hours."""
    assert "two each evening" in text_of(client.get("/plan/hours").text)
    before = (desk / "desk.toml").read_text("utf-8")
    typed = {**HOURS, "tuesday": "9-11, 14.30 to 16", "off": "2027-02-16"}
    assert client.post("/plan/hours", data=typed).headers["location"] == "/plan"
    kept = (desk / "desk.toml").read_text("utf-8")
    assert kept.startswith(before)
    assert 'tuesday = "09:00–11:00, 14:30–16:00"' in kept
    shown = client.get("/plan").text
    assert "Tuesday 9 February" in shown
    assert "Tuesday 16 February" not in text_of(client.get("/plan?every=yes").text)
    assert 'value="09:00–11:00, 14:30–16:00"' in client.get("/plan/hours").text
    client.post("/plan/hours", data=HOURS)
    assert "There are no hours to work in" in client.get("/plan").text


def test_hours_that_cannot_be_read_are_said_with_what_was_typed(client: TestClient, desk: Path) -> None:
    """Nothing is kept."""
    before = (desk / "desk.toml").read_bytes()
    answer = client.post("/plan/hours", data={**HOURS, "friday": "<late>", "off": "Easter", "pause": "-3"})
    assert answer.status_code == 422
    assert answer.text.count('role="alert"') == 3
    assert 'value="&lt;late&gt;"' in answer.text
    assert (desk / "desk.toml").read_bytes() == before


def test_what_does_not_fit_is_told_with_its_ways_out(client: TestClient) -> None:
    """On the desk in one line that leads to them."""
    client.post("/plan/hours", data={**HOURS, "sunday": "10-12"})
    shown = text_of(client.get("/plan").text)
    assert "What does not fit" in shown
    assert "Ways out, the cheapest first" in shown
    assert "becomes" in shown
    desk = client.get("/").text
    assert "What can be done" in desk


def test_the_calendar_is_handed_out(client: TestClient) -> None:
    """As a file that calendars open."""
    answer = client.get("/plan/plan.ics")
    assert answer.headers["content-type"].startswith("text/calendar")
    assert answer.text.startswith("BEGIN:VCALENDAR")


def test_a_paper_just_past_is_asked_about(client: TestClient, desk: Path) -> None:
    """One button says that it was handed in."""
    sheet = desk / "tram-libraries" / "brief.txt"
    sheet.write_text(sheet.read_text("utf-8").replace("February 19", "February 5"), "utf-8")
    assert "Was it handed in?" in client.get("/plan").text
    client.post(PLAN, data={"step": "hand-in", "desk": "yes", "do": "done"})
    assert "Nothing is left to do" in client.get("/plan").text


def test_the_desk_waits_for_its_sentence_only_while_it_is_not_known(client: TestClient) -> None:
    """A plan that is known stands there at once, with its strokes on the line of time."""
    assert "hx-get" in client.get("/").text
    assert "find 1 more source" in client.get("/now", headers={"hx-request": "true"}).text
    known = client.get("/").text
    assert "hx-get" not in known
    assert 'class="worked"' in known


def test_the_plan_works_without_scripts_and_by_keyboard(browser: Browser, served: str) -> None:
    """The form opens, is filled in, and is sent."""
    with browser.new_context(java_script_enabled=False) as context:
        page = context.new_page()
        page.goto(served)
        page.goto(served.partition("/?")[0] + "/plan")
        page.locator("summary").first.focus()
        page.keyboard.press("Enter")
        page.locator("details[open]").wait_for()
        page.keyboard.press("Tab")
        assert page.locator(":focus").get_attribute("name") == "minutes"
        page.keyboard.type("25")
        page.keyboard.press("Enter")
        expect(page.locator("#now")).to_contain_text("read Quist")


def test_on_paper_the_plan_is_a_plain_week(browser_page: Page) -> None:
    """Nothing to click is printed."""
    browser_page.goto(browser_page.url.partition("/?")[0].rstrip("/") + "/plan")
    browser_page.emulate_media(media="print")
    assert not browser_page.locator("summary").first.is_visible()
    assert browser_page.locator(".sittings").first.is_visible()
