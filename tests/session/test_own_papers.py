"""The writer's other papers on the desk, held against the draft."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from fairhand.session.opened import OpenPaper
from fairhand.session.own_papers import load_own_papers

WORDS = (
    "The boxes stood under every second seat, and whoever rode to the end of the line could finish a chapter in them"
)


@pytest.fixture
def paper(demo_desk: Path, tmp_path: Path) -> Path:
    """The demo's paper, with one sentence of another paper in it."""
    desk = Path(shutil.copytree(demo_desk, tmp_path / "desk"))
    draft = desk / "tram-libraries" / "draft.md"
    draft.write_text(draft.read_text("utf-8").replace("\n\n## ", f"\n\n{WORDS}.\n\n## ", 1), "utf-8")
    return desk / "tram-libraries"


def put(folder: Path, words: str) -> None:
    """Another paper stands there."""
    folder.mkdir(parents=True)
    (folder / "draft.md").write_text(words, "utf-8")


def test_papers_in_work_and_put_away_are_both_read(paper: Path) -> None:
    """By the title of their draft; one without any, or without a draft, is passed over."""
    desk = paper.parent
    put(desk / "history", f"# *Riding* and Reading\n\n{WORDS}.\n")
    put(desk / "done" / "english", "No title, and no matter.\n")
    put(desk / "empty", "")
    (desk / "folder").mkdir()
    found = {one.name: (one.title, one.put_away) for one in load_own_papers(paper)}
    earlier = {"bread-by-weight": ("Bread by Weight", True), "the-ferry-clock": ("The Ferry Clock", True)}
    assert found == {"history": ("Riding and Reading", False), "english": ("english", True)} | earlier
    assert load_own_papers(desk / "done" / "english") == ()


def test_a_sentence_of_another_paper_is_found(paper: Path) -> None:
    """In the verdict, as a query of the copy-edit."""
    put(paper.parent / "done" / "history", f"# Riding\n\nSome words before. {WORDS}, or two.\n")
    told = [
        one for one in OpenPaper(paper).verdict().findings if one.check == "copied-unmarked" and "own paper" in one.says
    ]
    assert len(told) == 1
    assert "your own paper “Riding”, which has come back" in told[0].says
    assert told[0].weight == "query"


def test_a_paper_that_stands_alone_has_no_others(tmp_path: Path) -> None:
    """Without a desk nothing beside it is read."""
    put(tmp_path / "one", "Words.\n")
    put(tmp_path / "two", "Words.\n")
    assert load_own_papers(tmp_path / "one") == ()


def test_a_draft_that_cannot_be_read_is_passed_over(paper: Path) -> None:
    """It is told of where that paper is opened."""
    put(paper.parent / "broken", "x")
    (paper.parent / "broken" / "draft.md").write_bytes(b"\x89PNG\r\n\x1a\n\x00\x00")
    assert all(one.name != "broken" for one in load_own_papers(paper))
