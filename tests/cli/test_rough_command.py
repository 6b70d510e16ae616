"""The rough draft from the terminal."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path


def test_the_draft_is_begun_from_the_terminal(run: Callable[..., tuple[int, str]], demo_paper: Path) -> None:
    """A draft that is there is asked about first; the words are counted when that is asked."""
    paper = str(demo_paper)
    assert "Nothing is written yet" in run("rough", paper)[1]
    assert run("rough", paper, "--points")[0] == 0
    (demo_paper / "rough.md").write_text("Three more words.\n", "utf-8")
    assert "rough.md: 3 words." in run("rough", paper)[1]
    code, told = run("rough", paper, "--begin")
    assert (code, "there is a draft already" in told) == (2, True)
    assert run("rough", paper, "--begin", "--over")[0] == 0
    assert (demo_paper / "draft.md").read_text("utf-8") == "Three more words.\n"
