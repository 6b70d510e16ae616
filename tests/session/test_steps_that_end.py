"""Steps that end by what stands in a paper's files, and steps that are named with their paper."""

from __future__ import annotations

from pathlib import Path

import pytest

from fairhand.errors import NoSuchStep
from fairhand.session.research.jottings import add_jotting
from fairhand.session.schedule.plan import plan_desk
from fairhand.session.schedule.steps_done import end_step, find_step, list_said


@pytest.fixture
def desk(tmp_path: Path) -> Path:
    """A desk with two papers that have a sheet and nothing else."""
    (tmp_path / "desk.toml").write_text('name = "Robin"\n', "utf-8")
    for name in ("seals", "tides"):
        (tmp_path / name).mkdir()
        (tmp_path / name / "brief.txt").write_text("Write an essay of 900 words. Due 3 March 2099.", "utf-8")
    return tmp_path


def test_how_long_a_step_took_is_logged_after_it_has_ended_by_itself(desk: Path) -> None:
    """The jottings are there, so that the plan has the step no more; its minutes are kept with what was planned."""
    assert "seals/jottings" in plan_desk(desk).steps
    add_jotting(desk / "seals", "they left in spring")
    assert "seals/jottings" not in plan_desk(desk).steps
    asked = find_step(desk, "seals/jottings")
    assert asked.planned_minutes > 0
    end_step(asked, 25)
    assert [(one.step, one.took_minutes) for one in list_said(desk / "seals")] == [("jottings", 25)]
    with pytest.raises(NoSuchStep, match="done already"):
        find_step(desk, "seals/jottings")


def test_a_step_of_one_paper_is_never_taken_for_that_of_another(desk: Path) -> None:
    """Where the paper is named, its own steps alone are meant; a paper that is not there is told as such."""
    add_jotting(desk / "seals", "they left in spring")
    with pytest.raises(NoSuchStep, match="seals/focus"):
        find_step(desk, "seals/jottings")
    with pytest.raises(NoSuchStep, match="no paper of that name is on the desk; there are seals, tides"):
        find_step(desk, "whales/jottings")
