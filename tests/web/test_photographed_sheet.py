"""A photograph given as an assignment sheet in the page."""

from __future__ import annotations

import html
import io
import re
from pathlib import Path

import pytest
import typst
from starlette.testclient import TestClient

from fairhand.session.assignment import photographed

SHEET = b"#set page(width: 16cm, height: 9cm)\nWrite an essay of 1,000 words in MLA style.\n\nDue 3 March 2027."


@pytest.fixture
def picture() -> bytes:
    """The sheet as a picture."""
    return typst.compile(SHEET, format="png", ppi=150)


def test_a_paper_is_begun_from_a_photograph(client: TestClient, desk: Path, picture: bytes) -> None:
    """The photograph stands in the paper's folder, its words in the brief, with the line that they are unsure."""
    pytest.importorskip("rapidocr", reason="the extra for OCR is not installed: pip install 'fairhand[ocr]'")
    answer = client.post("/new", data={"title": "The port"}, files={"sheet": ("IMG 7.PNG", picture, "image/png")})
    assert answer.headers["location"] == "/paper/the-port/brief"
    assert (desk / "the-port" / "brief.png").read_bytes() == picture
    page = client.get("/paper/the-port/brief").text
    assert "1,000 words" in page
    assert "brief.png: read by OCR, which misreads; hold it against the sheet" in page
    address = re.search(r'src="([^"]*/brief/photograph[^"]*)"', page)
    assert address is not None
    assert client.get(html.unescape(address[1])).content == picture
    assert client.get("/paper/the-port/brief/photograph?of=paper.toml").status_code == 404


def test_without_ocr_the_page_says_what_to_do(
    client: TestClient, desk: Path, picture: bytes, monkeypatch: pytest.MonkeyPatch
) -> None:
    """No paper is begun, and the form still holds what was written; with its words pasted beside it, one is."""
    monkeypatch.setattr(photographed, "has_ocr", lambda: False)
    files = {"sheet": ("sheet.png", io.BytesIO(picture), "image/png")}
    refused = client.post("/new", data={"title": "The port"}, files=files)
    assert refused.status_code == 400
    assert "it is a photograph, and nothing here reads its words" in refused.text
    assert 'value="The port"' in refused.text
    assert not (desk / "the-port").exists()
    files["sheet"][1].seek(0)
    begun = client.post("/new", data={"title": "The port", "pasted": "Write 900 words."}, files=files)
    assert begun.headers["location"] == "/paper/the-port/brief"
    shown = client.get("/paper/the-port/brief").text
    assert "900 words" in shown
    assert "install the extra for it" in shown
