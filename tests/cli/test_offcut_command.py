"""Offcuts from the terminal."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from pathlib import Path

import pytest


@pytest.fixture
def run(run: Callable[..., tuple[int, str]], demo_paper: Path) -> Callable[..., tuple[int, str]]:
    """Runs the command on the paper."""
    return partial(run, "offcut", demo_paper)


def test_lines_and_words_are_cut_and_brought_back(run: Callable[..., tuple[int, str]], demo_paper: Path) -> None:
    """They are listed with the reason and the line where they would stand; brought back, the draft is as it was."""
    draft = demo_paper / "draft.md"
    before = draft.read_text("utf-8")
    assert "Nothing is cut." in run()[1]
    assert "Cut, and kept" in run("--lines", "9", "--why", "a digression")[1]
    told = run()[1]
    assert "a digression It would stand at line 9 again, as it was." in told
    words = " ".join(draft.read_text("utf-8").split("\n")[10].split()[2:9])
    assert run("--words", words)[0] == 0
    assert run()[1].startswith("1. " + words[:10])
    assert run("--back", "1")[0] == run("--back", "1")[0] == 0
    assert draft.read_text("utf-8") == before


@pytest.mark.parametrize(
    ("options", "says"),
    [
        (("--lines", "x"), "write them as 12-14"),
        (("--lines", "900"), "it has no lines 900 to 900"),
        (("--words", "no such words"), "it has no such words"),
        (("--words", "the"), "times; give them as they stand there"),
        (("--back", "3"), "there are 0 offcuts"),
    ],
)
def test_what_cannot_be_done_is_said(
    run: Callable[..., tuple[int, str]], demo_paper: Path, options: tuple[str, ...], says: str
) -> None:
    """One line: what, where, what to do; nothing is written."""
    before = (demo_paper / "draft.md").read_bytes()
    code, told = run(*options)
    assert (code, says in told) == (2, True), told
    assert (demo_paper / "draft.md").read_bytes() == before
