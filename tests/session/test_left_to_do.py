"""What is left before the hour."""

from __future__ import annotations

import datetime as dt
import os
import subprocess
import sys
from pathlib import Path

from fairhand.session.kept import told_verdict
from fairhand.session.schedule.left_to_do import read_left
from fairhand.session.schedule.steps_done import end_step, find_step

ROOT = Path(__file__).parents[2]
AT = dt.datetime(2027, 2, 8, 12, tzinfo=dt.UTC)


def test_a_step_that_is_done_is_left_no_more(demo_paper: Path) -> None:
    """And the minutes are the plan's own."""
    left = read_left(demo_paper, told_verdict(demo_paper, at=AT), AT)
    asked = find_step(demo_paper, "revision", AT)
    assert asked.step.minutes in {one.minutes for one in left.todos if one.says == "revise the argument"}
    end_step(asked, 60, at=AT)
    after = read_left(demo_paper, told_verdict(demo_paper, at=AT), AT)
    assert "revise the argument" not in {one.says for one in after.todos}
    assert after.minutes < left.minutes


def test_what_is_left_is_told_again_at_once(demo_paper: Path) -> None:
    """While nothing has changed a new process works nothing out: it loads neither analysis nor plan."""
    code = (
        "import sys, contextlib, io\n"
        "from fairhand.cli import main\n"
        "with contextlib.suppress(SystemExit), contextlib.redirect_stdout(io.StringIO()):\n"
        f"    main(['ready', {str(demo_paper)!r}])\n"
        "print('fairhand.readiness.analysis' in sys.modules, 'fairhand.planning.steps' in sys.modules)"
    )
    environment = {**os.environ, "PYTHONPATH": str(ROOT / "src")}
    said = [
        subprocess.run([sys.executable, "-c", code], env=environment, capture_output=True, text=True, check=True).stdout
        for _ in range(2)
    ]
    assert said == ["True True\n", "False False\n"]
