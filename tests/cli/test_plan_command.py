"""``fairhand plan`` and ``fairhand done``."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

import pytest


def test_one_line_says_what_to_do_now_for_how_long_and_why(
    ends: Callable[..., int], demo_paper: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """And nothing else."""
    assert ends("plan", str(demo_paper.parent), "--now", "--on", "2027-02-08") == 0
    said = capsys.readouterr().out
    assert said.count("\n") == 1
    assert "find 1 more source, for 50 minutes" in said
    assert said.endswith("One point has fewer sources than you want.\n")


def test_the_week_is_shown_with_what_is_due(
    ends: Callable[..., int], demo_paper: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Further days on request; the assumptions are said."""
    assert ends("plan", str(demo_paper.parent), "--on", "2027-02-08") == 0
    week = capsys.readouterr().out
    assert "Wednesday 10 February\n  18:00–20:00  Nine Minutes of Reading: revise the argument\n" in week
    assert "Friday 19 February, 16:00  Nine Minutes of Reading, ready Monday 15 February" in week
    assert "Monday 15 February\n" not in week
    assert "are assumed" in " ".join(week.split())
    assert ends("plan", str(demo_paper.parent), "--all", "--on", "2027-02-08") == 0
    assert "Monday 15 February\n" in capsys.readouterr().out


def test_what_does_not_fit_ends_with_one(
    ends: Callable[..., int], demo_paper: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """It is said with its price, and only then."""
    assert ends("plan", str(demo_paper.parent), "--on", "2027-02-17") == 1
    assert "What does not fit" in (shown := capsys.readouterr().out)
    assert "70 becomes 65." in shown


def test_other_programs_get_json_and_a_calendar(
    ends: Callable[..., int], demo_paper: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """The calendar is a file of its own; of JSON nothing but JSON is printed."""
    assert ends("plan", str(demo_paper.parent), "--json", "--on", "2027-02-08") == 0
    assert json.loads(capsys.readouterr().out)["sittings"]
    assert ends("plan", str(demo_paper.parent), "--ics", str(tmp_path / "plan.ics"), "--on", "2027-02-08") == 0
    assert (tmp_path / "plan.ics").read_bytes().startswith(b"BEGIN:VCALENDAR\r\n")


def test_a_step_is_done_left_out_and_taken_back(
    ends: Callable[..., int], demo_paper: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Each time what to do now is said; an unknown step is refused in one line."""
    desk = ("--desk", str(demo_paper))
    assert ends("done", "sources", "--minutes", "20", *desk) == 0
    assert "Find 1 more source: done." in capsys.readouterr().out
    assert ends("done", "reader-1", "--leave-out", *desk) == 0
    assert ends("done", "revision", "--minutes", "30", "--left", "60", *desk) == 0
    assert "60 minutes left" in capsys.readouterr().out
    log = (demo_paper / "time.jsonl").read_text("utf-8")
    assert [json.loads(line)["step"] for line in log.splitlines()] == ["sources", "reader-1", "revision"]
    assert ends("done", "sources", "--undo", *desk) == 0
    assert "sources: taken back." in capsys.readouterr().out
    assert ends("done", "sing", *desk) == 2
    assert capsys.readouterr().err.count("\n") == 1


def test_a_desk_without_a_paper_is_told_from_one_on_which_all_is_done(
    ends: Callable[..., int], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Nothing is called done where nothing is begun; how to begin is said."""
    (tmp_path / "desk.toml").write_text('name = "Ida Vance"\n')
    assert ends("plan", str(tmp_path)) == 0
    said = capsys.readouterr().out
    assert "No paper is in hand here" in said
    assert "fairhand new TITLE --brief FILE" in said


def test_a_step_that_is_done_is_not_called_unknown(
    ends: Callable[..., int], demo_paper: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """How to take it back is said; a name that no step has is answered with every step of that paper."""
    desk, step = str(demo_paper.parent), f"{demo_paper.name}/revision"
    assert ends("done", step, "--minutes", "5", "--desk", desk) == 0
    assert ends("done", step, "--minutes", "5", "--desk", desk) == 2
    assert "--undo" in capsys.readouterr().err
    assert ends("done", f"{demo_paper.name}/no-such", "--minutes", "5", "--desk", desk) == 2
    said = capsys.readouterr().err
    assert f"{demo_paper.name}/hand-in" in said
