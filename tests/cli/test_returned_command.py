"""``fairhand returned``, and the desk afterwards."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path


def test_marks_are_kept_and_the_paper_put_away(run: Callable[..., tuple[int, str]], demo_paper: Path) -> None:
    """What came back, what it took, and the desk with the paper done."""
    assert "Nothing is said yet" in run("returned", str(demo_paper))[1]
    words = ("--mark", "68", "--by", "Argument", "18/25", "--comment", "Whose diary?", "--put-away")
    code, said = run("returned", str(demo_paper), *words)
    assert code == 0
    assert "It came back with 68; 1 mark by criterion; 1 comment." in said
    assert "Put away as" in said
    code, said = run("desk", str(demo_paper.parent))
    assert "No paper is in hand" in said
    assert "The Ferry Clock 74, in done/the-ferry-clock Nine Minutes of Reading 68, in done/tram-libraries" in said
