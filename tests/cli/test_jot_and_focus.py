from __future__ import annotations

from pathlib import Path

from click.testing import CliRunner

from fairhand.cli import commands


def run(*args: str, typed: str = "") -> str:
    """What the command prints, once it has ended well."""
    result = CliRunner().invoke(commands, args, input=typed, catch_exceptions=False)
    assert result.exit_code == 0, result.output
    return result.output


def test_each_line_is_kept(demo_paper: Path) -> None:
    """Blank ones are none; the time is said only when it ends."""
    assert "2 jottings kept" in run("jot", str(demo_paper), "--minutes", "5", typed="a red tram\n\nwho paid?\n")
    assert (demo_paper / "jottings.md").read_text().endswith("- a red tram\n- who paid?\n")


def test_jottings_are_shown_sorted(demo_paper: Path) -> None:
    """In groups, or by wording; every one is shown."""
    grouped = run("jot", str(demo_paper), "--sort")
    assert "Lund's mother" in grouped
    told = run("jot", str(demo_paper), "--wording")
    assert told.index("Questions") < told.index("who counted?") < told.index("To find out") < told.index("timetable")
    (demo_paper / "jottings.md").unlink()
    assert "Nothing is jotted down yet" in run("jot", str(demo_paper), "--sort")


def test_the_focus_is_set_and_asked_about(demo_paper: Path) -> None:
    """The sentence, its audience and the questions with their state."""
    (demo_paper / "points.json").unlink()
    assert "No focus yet" in run("focus", str(demo_paper))
    said = run("focus", str(demo_paper), "--set", "Trams and reading", "--audience", "readers", "--ask", "Who read?")
    for words in ("The focus: Trams and reading", "For: readers", "It names a subject", "q1", "Who read? (open)"):
        assert words in said
    assert "Who read? (answered)" in run("focus", str(demo_paper), "--answered", "q1", "--thesis")
    assert "The thesis: Trams" in run("focus", str(demo_paper), "--open", "q1")


def test_the_hint_names_the_papers_folder(demo_paper: Path) -> None:
    """What it says to type works from where one stands."""
    (demo_paper / "points.json").unlink()
    assert f'fairhand focus {demo_paper} --set "…"' in " ".join(run("focus", str(demo_paper)).split())
