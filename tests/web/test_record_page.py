"""The record in the page."""

from __future__ import annotations

import html
import re
from pathlib import Path

import pytest
from starlette.testclient import TestClient

RECORD = "/paper/tram-libraries/record"


def plain(page: str) -> str:
    """A page's text."""
    return " ".join(html.unescape(re.sub(r"<[^>]+>", " ", page)).split())


def test_the_record_is_told_with_a_picture_and_its_table(client: TestClient) -> None:
    """What came in by section, what it shows and does not; the picture is told in words as well."""
    page = client.get(RECORD).text
    assert "914 words came into the draft" in plain(page)
    assert "The Readers, 471 words in" in plain(page)
    assert "certifies nothing" in page
    assert page.count("<rect") == 1
    assert "Words by day" in page


@pytest.mark.parametrize("kind", ["pdf", "html"])
def test_a_printed_record_is_fetched_and_checked(client: TestClient, desk: Path, kind: str) -> None:
    """Whole as it was printed, and told apart once it is changed."""
    made = client.get(f"{RECORD}/{kind}").content
    page = client.post(RECORD, files={"file": (f"sent.{kind}", made)})
    assert "It is whole" in page.text
    assert "Each of its states is in the record of tram-libraries" in page.text
    if kind == "html":
        forged = made.replace(b"914 words", b"9,140 words")
        assert (
            "The page does not read as it was printed" in client.post(RECORD, files={"file": ("a.html", forged)}).text
        )


def test_what_is_no_record_is_refused_in_a_line(client: TestClient) -> None:
    """Nothing chosen, and something else chosen."""
    assert client.post(RECORD).status_code == 400
    refused = client.post(RECORD, files={"file": ("a.txt", b"words")})
    assert refused.status_code == 415
    assert "a printed record is a PDF or an HTML file" in refused.text
    assert client.get(f"{RECORD}/odt").status_code == 404
