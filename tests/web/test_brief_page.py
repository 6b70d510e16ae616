"""The brief in the page."""

from __future__ import annotations

from pathlib import Path

from hypothesis import given
from hypothesis import strategies as st
from starlette.testclient import TestClient

from fairhand.model.requirement import Requirement
from fairhand.model.span import Span
from fairhand.web.brief_page import cut_sheet

BRIEF = "/paper/tram-libraries/brief"
OWN = {"origin": "http://127.0.0.1", "sec-fetch-site": "same-origin"}


@given(st.text(max_size=60), st.lists(st.tuples(st.integers(0, 60), st.integers(0, 60)), max_size=6))
def test_the_pieces_are_the_sheet(text: str, places: list[tuple[int, int]]) -> None:
    """Whatever is marked, and however it overlaps, no word of the sheet is lost or doubled."""
    asked = [Requirement("task", {}, "", Span(min(p), max(p)), id=str(n)) for n, p in enumerate(places)]
    assert "".join(piece.text for piece in cut_sheet(text, asked)) == text


def test_the_sheet_is_shown_with_its_demands(client: TestClient) -> None:
    """The sheet's own words, each demand with its state."""
    shown = client.get(BRIEF).text
    assert "The sample paper on the course page runs to 2,000 words" in shown
    assert 'id="words-length.paper"' in shown
    assert "policy, ai" in shown
    assert "yours to answer" in shown


def test_an_answer_is_kept_and_taken_back(client: TestClient, desk: Path) -> None:
    """It stands in ``paper.toml`` with who said so, and is gone when it is taken back."""
    settings = desk / "tram-libraries" / "paper.toml"
    sent = client.post(f"{BRIEF}/policy.ai", data={"words": "kept", "by": "me", "do": "answer"}, headers=OWN)
    assert sent.status_code in {200, 303}
    assert 'answer = "kept"' in settings.read_text("utf-8")
    client.post(f"{BRIEF}/style", data={"by": "Dr. Marrow", "do": "waive"}, headers=OWN)
    assert "waived = true" in settings.read_text("utf-8")
    assert ", waived." in client.get(BRIEF).text
    client.post(f"{BRIEF}/policy.ai", data={"do": "undo"}, headers=OWN)
    assert "policy.ai" not in settings.read_text("utf-8")


def test_an_unknown_demand_is_not_there(client: TestClient) -> None:
    """Nothing is written for what the sheet does not ask."""
    assert client.post(f"{BRIEF}/length.poem", data={"do": "waive"}, headers=OWN).status_code == 404


def test_a_script_in_a_sheet_is_text(client: TestClient, desk: Path) -> None:
    """The sheet is shown and never run."""
    sheet = desk / "tram-libraries" / "brief.txt"
    sheet.write_text(sheet.read_text("utf-8") + "\nYou must <script>alert(1)</script> hand it in.\n", "utf-8")
    assert "<script>alert" not in client.get(BRIEF).text
