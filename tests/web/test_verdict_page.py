"""The verdict and the fair copy in the page."""

from __future__ import annotations

import html
import re
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect
from starlette.testclient import TestClient

VERDICT = "/paper/tram-libraries/verdict"
FAIR_COPY = "/paper/tram-libraries/fair-copy"


def is_open(page: str, check: str) -> bool:
    """Whether the verdict tells of something that a check found and that is not let stand."""
    return re.search(rf'(?:must|should|query): <a href="[^"]*">{check}</a>', page) is not None


def test_the_verdict_tells_what_the_terminal_tells(client: TestClient) -> None:
    """What is unmet, each finding with its line and both wordings, and the one thing to do next."""
    shown = client.get(VERDICT).text
    assert "The paper is not ready." in shown
    assert "What the Records Leave Out" in shown
    assert "⸢faith⸣" in shown
    assert "⸢trust⸣" in shown
    assert "Nothing here says that the paper is good" in shown


def test_a_script_in_a_draft_is_text(client: TestClient, desk: Path) -> None:
    """What the writer, or a source, wrote is shown and never run."""
    draft = desk / "tram-libraries" / "draft.md"
    draft.write_text(draft.read_text("utf-8") + "\n\nthe the [NB: <script>alert(1)</script>]\n", "utf-8")
    shown = client.get(VERDICT).text
    assert "<script>alert" not in shown
    assert "&lt;script&gt;alert" in shown


def test_each_finding_leads_to_its_mark(client: TestClient) -> None:
    """The pass that it belongs to, at the mark that tells of it; by a link, and without a script."""
    shown = client.get(VERDICT).text
    leads = re.findall(r'class="where">[^<]*: <a href="([^"]+)">([^<]+)</a>', shown)
    assert len(leads) >= 9
    for where, check in leads:
        page = client.get(html.unescape(where)).text
        current = page.split('aria-current="true"')[-1].split("</a>")[0]
        assert check in current, where


def test_each_demand_leads_to_where_it_is_answered(client: TestClient) -> None:
    """The brief opens at the sheet's words, with the form to answer, correct or waive it."""
    shown = client.get(VERDICT).text
    where = re.search(r'<dt id="policy.ai"><a href="([^"#]+)#asked-policy.ai">', shown)
    assert where
    assert 'id="asked-policy.ai"' in client.get(html.unescape(where[1])).text


def test_what_a_requirement_tells_is_not_told_twice(client: TestClient) -> None:
    """A missing section stands among what the sheet asks, and not again among what was found."""
    shown = client.get(VERDICT).text
    assert not is_open(shown, "section missing")
    assert 'id="section.' in shown


def test_what_is_let_stand_is_listed_and_taken_back(client: TestClient) -> None:
    """With its reason; taken back, it is a finding again."""
    copy_edit = "/paper/tram-libraries/copy-edit"
    name = re.search(r'name="mark" value="(\w+)"', client.get(f"{copy_edit}?finding=5").text)
    assert name is not None
    client.post(f"{copy_edit}/stet", data={"mark": name[1], "reason": "she said it so", "do": "stet"})
    shown = client.get(VERDICT).text
    assert "Let stand: 1" in shown
    assert "she said it so" in shown
    assert not is_open(shown, "doubled word")
    assert client.post(VERDICT, data={"mark": name[1]}).headers["location"] == VERDICT
    shown = client.get(VERDICT).text
    assert "Let stand" not in shown
    assert is_open(shown, "doubled word")


def test_a_plain_page_names_no_manual(client: TestClient, desk: Path) -> None:
    """Where no style is named, no sources are asked for and nothing is cited."""
    (desk / "bare").mkdir()
    (desk / "bare" / "brief.txt").write_text("Write a story of 300 words.", "utf-8")
    (desk / "bare" / "draft.md").write_text("# Lamps\n\nThey were lit late.\n", "utf-8")
    shown = client.get("/paper/bare/verdict").text
    assert "1 page printed" in shown
    assert "Style: a plain manuscript page" in shown
    assert "APA" not in shown
    assert "it has 1 page." in client.get("/paper/bare/fair-copy").text


def test_left_matter_is_asked_about_before_it_is_left_out(client: TestClient) -> None:
    """Asides and TKs never print; printing with any left asks first."""
    shown = client.get(FAIR_COPY).text
    assert "Print without them" in shown
    assert "<iframe" not in shown
    assert "<iframe" in client.get(f"{FAIR_COPY}?anyway=yes").text


@pytest.mark.parametrize("kind", ["pdf", "docx", "odt", "html", "md"])
def test_each_form_is_handed_out(client: TestClient, kind: str) -> None:
    """Under its own name, as a file to be kept."""
    answer = client.get(f"{FAIR_COPY}/{kind}?anyway=yes")
    assert answer.status_code == 200
    assert f"tram-libraries.{kind}" in answer.headers["content-disposition"]
    assert len(answer.content) > 1000


def test_an_unknown_form_is_not_there(client: TestClient) -> None:
    """No other kind of file is made."""
    assert client.get(f"{FAIR_COPY}/exe").status_code == 404


def test_a_paper_leads_to_what_is_to_be_done(client: TestClient, desk: Path) -> None:
    """The page of the next step, whatever stands in the folder: the sheet, then the draft, then what was found."""
    assert client.get("/paper/tram-libraries").headers["location"] == "/paper/tram-libraries/revision"
    bare = desk / "bare"
    bare.mkdir()
    (bare / "jottings.md").write_text("Lamps.", "utf-8")
    assert client.get("/paper/bare").headers["location"] == "/paper/bare/brief"
    (bare / "brief.txt").write_text("Write a story of 300 words.", "utf-8")
    assert client.get("/paper/bare").headers["location"] == "/paper/bare/draft"


def test_back_and_reload_always_work(browser_page: Page) -> None:
    """From the desk into a paper, a mark, a stet taken back and forth: back leads back, and reload shows the same."""
    page = browser_page
    page.get_by_role("link", name="Nine Minutes of Reading").last.click()
    expect(page).to_have_url(re.compile("tram-libraries/revision$"))
    page.goto(page.url.replace("revision", "copy-edit?finding=5"))
    page.get_by_text("Stet", exact=True).click()
    page.get_by_role("button", name="Let it stand").click()
    page.get_by_role("link", name="Verdict").click()
    page.get_by_text("Let stand: 1").click()
    page.get_by_role("button", name="Take back").click()
    expect(page.get_by_text("Let stand: 1")).to_have_count(0)
    page.reload()
    expect(page.get_by_role("heading", name="Verdict")).to_be_visible()
    page.go_back()
    expect(page.get_by_text("Let stand: 1")).to_have_count(0)
    for heading in ("Copy-edit", "Copy-edit", "Revision", "Work in hand"):
        page.go_back()
        expect(page.get_by_role("heading", level=1, name=heading)).to_be_visible()
