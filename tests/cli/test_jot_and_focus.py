from __future__ import annotations

from collections.abc import Callable
from pathlib import Path


def test_each_line_is_kept(says: Callable[..., str], demo_paper: Path) -> None:
    """Blank ones are none; the time is said only when it ends."""
    assert "2 jottings kept" in says("jot", str(demo_paper), "--minutes", "5", typed="a red tram\n\nwho paid?\n")
    assert (demo_paper / "jottings.md").read_text().endswith("- a red tram\n- who paid?\n")


def test_jottings_are_shown_sorted(says: Callable[..., str], demo_paper: Path) -> None:
    """In groups, or by wording; every one is shown."""
    grouped = says("jot", str(demo_paper), "--sort")
    assert "Lund's mother" in grouped
    told = says("jot", str(demo_paper), "--wording")
    assert told.index("Questions") < told.index("who counted?") < told.index("To find out") < told.index("timetable")
    (demo_paper / "jottings.md").unlink()
    assert "Nothing is jotted down yet" in says("jot", str(demo_paper), "--sort")


def test_the_focus_is_set_and_asked_about(says: Callable[..., str], demo_paper: Path) -> None:
    """The sentence, its audience and the questions with their state."""
    (demo_paper / "points.json").unlink()
    assert "No focus yet" in says("focus", str(demo_paper))
    said = says("focus", str(demo_paper), "--set", "Trams and reading", "--audience", "readers", "--ask", "Who read?")
    for words in ("The focus: Trams and reading", "For: readers", "It names a subject", "q1", "Who read? (open)"):
        assert words in said
    assert "Who read? (answered)" in says("focus", str(demo_paper), "--answered", "q1", "--thesis")
    assert "The thesis: Trams" in says("focus", str(demo_paper), "--open", "q1")


def test_the_hint_names_the_papers_folder(says: Callable[..., str], demo_paper: Path) -> None:
    """What it says to type works from where one stands."""
    (demo_paper / "points.json").unlink()
    assert f'fairhand focus {demo_paper} --set "…"' in " ".join(says("focus", str(demo_paper)).split())
