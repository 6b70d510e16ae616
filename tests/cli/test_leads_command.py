"""Leads from the terminal."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from pathlib import Path

import pytest

LISTED = """References

Ashdown, V. (1931). Waiting rooms of the northern lines. Quay University Press.

Farnsworth, I. (1988). Borrowing books on the tram. Journal of Idle Hours, 12(3), 113–128.
"""


@pytest.fixture
def paper(tmp_path: Path) -> Path:
    """A paper with one source."""
    folder = tmp_path / "trams"
    (folder / "sources").mkdir(parents=True)
    (folder / "sources.json").write_text('[{"id": "reid", "type": "book", "title": "Trams"}]', "utf-8")
    (folder / "sources" / "reid.txt").write_text(LISTED, "utf-8")
    return folder


@pytest.fixture
def run(run: Callable[..., tuple[int, str]], paper: Path) -> Callable[..., tuple[int, str]]:
    """Runs the command on the paper."""
    return partial(run, "leads", paper)


def test_leads_are_shown_with_their_names_and_words(run: Callable[..., tuple[int, str]]) -> None:
    """Each with what it is, where it is pointed to, and, if asked for, the reference itself."""
    code, told = run("--words")
    assert code == 0
    assert told.startswith("2 leads from 1 reference list in 1 source text")
    assert "Farnsworth. 1988. Borrowing books on the tram. Journal of Idle Hours." in told
    assert "[farnsworth-1988-borrowing-books] An article in a journal. In “Trams”" in told
    assert "“Ashdown, V. (1931)." in told


def test_a_lead_is_put_aside_brought_back_and_taken(run: Callable[..., tuple[int, str]]) -> None:
    """Each says what became of it; a name that is none is told in one line."""
    assert run("--aside", "ashdown-1931-waiting-rooms", "--why", "out of print")[0] == 0
    assert "Put aside Ashdown. 1931." in run()[1]
    assert ": out of print" in run()[1]
    assert run("--back", "ashdown-1931-waiting-rooms")[1] == "ashdown-1931-waiting-rooms is among the leads again."
    assert run("--take", "farnsworth-1988-borrowing-books")[1].startswith("farnsworth-1988 is a source now")
    assert run()[1].startswith("1 lead from")
    assert run("--take", "nobody")[0] == 2


def test_a_source_is_marked_as_read_for_its_references(run: Callable[..., tuple[int, str]], paper: Path) -> None:
    """And as read whole again; one that is not on the list is told."""
    assert "is read for its references only." in run("--only", "reid")[1]
    assert '"read-for"' in (paper / "sources.json").read_text("utf-8")
    assert "is read whole." in run("--whole", "reid")[1]
    assert run("--only", "nobody")[0] == 2
