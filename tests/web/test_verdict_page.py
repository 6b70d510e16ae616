"""The verdict and the fair copy in the page."""

from __future__ import annotations

from pathlib import Path

import pytest
from starlette.testclient import TestClient

VERDICT = "/paper/tram-libraries/verdict"
FAIR_COPY = "/paper/tram-libraries/fair-copy"


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


def test_a_paper_leads_to_a_page(client: TestClient) -> None:
    """The paper's own address is never a dead end."""
    answer = client.get("/paper/tram-libraries", follow_redirects=True)
    assert answer.status_code == 200
    assert "tram-libraries" in str(answer.url)
