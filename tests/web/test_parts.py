"""The way from page to page: parts, their pages, what stands within a page, and what is open at any stage."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from starlette.testclient import TestClient

from fairhand.web.parts import BESIDES, PARTS, Part

HOME = "/paper/tram-libraries"


def links_of(page: str, label: str) -> list[str]:
    """The words of the links in the navigation of that name."""
    found = re.search(rf'<nav[^>]* aria-label="{label}">(.*?)</nav>', page, re.DOTALL)
    assert found
    return re.findall(r"<a [^>]*>([^<]+)</a>", found[1])


@pytest.mark.parametrize("part", PARTS, ids=[part.title for part in PARTS])
def test_a_part_names_its_main_pages_and_what_stands_within_the_open_one(client: TestClient, part: Part) -> None:
    """Leads, length or hearing it stand in no row until the page that they serve lies open."""
    parts = [one.title for one in PARTS]
    for leaf in part.leaves:
        row = [one.title for one in part.leaves]
        for name in (leaf.name, *(one.name for one in leaf.within)):
            page = client.get(f"{HOME}/{name}").text
            assert links_of(page, "Parts of the paper") == [*parts, *row, *(one.title for one in leaf.within)]
            assert page.count('aria-current="page"') >= 1


def test_what_belongs_to_no_part_alone_is_open_at_any_stage(client: TestClient) -> None:
    """First readers, the record and earlier states stand at the foot of each page."""
    for name in ("brief", "record", "hand-in"):
        page = client.get(f"{HOME}/{name}").text
        assert links_of(page, "Besides") == [one.title for one in BESIDES]


@pytest.mark.parametrize("leaf", ["revision", "fit", "offcuts", "proof", "aloud", "copy-edit", "fair-copy", "final"])
def test_a_page_that_waits_for_a_draft_leads_to_it(client: TestClient, desk: Path, leaf: str) -> None:
    """Where there is no draft, one step leads to where it is written."""
    (desk / "tram-libraries" / "draft.md").unlink()
    assert f'href="{HOME}/draft">Draft</a>' in client.get(f"{HOME}/{leaf}").text.partition("<main")[2]
