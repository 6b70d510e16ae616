"""The desk in the page."""

from __future__ import annotations

from starlette.testclient import TestClient


def test_the_desk_shows_the_work_in_hand(client: TestClient) -> None:
    """Each paper stands there by its title, with the hour when it is due."""
    shown = client.get("/").text
    assert "Nine Minutes of Reading" in shown
    assert "Friday 19 February 2027" in shown
