"""The paper's length from the terminal."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from pathlib import Path

import pytest


@pytest.fixture
def run(run: Callable[..., tuple[int, str]], demo_paper: Path) -> Callable[..., tuple[int, str]]:
    """Runs the command on the paper."""
    sheet = demo_paper / "brief.txt"
    sheet.write_text(sheet.read_text("utf-8").replace("850 to 1,200 words", "600 to 800 words"), "utf-8")
    return partial(run, "fit", demo_paper)


def test_the_length_is_shown_and_a_way_taken(run: Callable[..., tuple[int, str]]) -> None:
    """Cast off by section, with ways that cost least; taken, the paper has its length."""
    code, told = run()
    assert (code, "The Readers" in told) == (0, True)
    assert "too long: the sheet allows 800 words. 1. Cut " in told
    assert "are within what the sheet asks" in run("--take", "1")[1]
    code, told = run("--take", "1")
    assert (code, "there is no such way any more" in told) == (2, True)


def test_a_move_is_looked_at_and_made(run: Callable[..., tuple[int, str]], demo_paper: Path) -> None:
    """Nothing is moved before it is asked for."""
    before = (demo_paper / "draft.md").read_text("utf-8")
    assert "Nothing was moved" in run("--move", "11")[1]
    assert (demo_paper / "draft.md").read_text("utf-8") == before
    assert "It is moved" in run("--move", "11", "--do")[1]
    assert sorted((demo_paper / "draft.md").read_text("utf-8").split()) == sorted(before.split())
    code, told = run("--move", "1")
    assert (code, "no passage stands there that can be moved" in told) == (2, True)
