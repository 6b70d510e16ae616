"""``fairhand revised``: what was revised between two states of the draft."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable
from pathlib import Path

import pytest

from fairhand.desk.record import keep_state, list_states

MORNING = dt.datetime(2027, 2, 3, 9, 0, tzinfo=dt.UTC)
FIRST = "Rain fell for nine days. The mill stood.\n\nIts owner kept a book."
SECOND = "Rain fell for eleven days. The mill stood.\n\nIts owner kept a book. It names every sack."


@pytest.fixture
def paper(tmp_path: Path) -> Path:
    """A paper whose draft has two states."""
    folder = tmp_path / "mills"
    folder.mkdir()
    (folder / "brief.txt").write_text("Write about mills.", "utf-8")
    for hours, text in ((0, FIRST), (2, SECOND)):
        keep_state(folder, "draft.md", text.encode(), "written", at=MORNING + dt.timedelta(hours=hours))
    (folder / "draft.md").write_text(SECOND.replace("kept", "had"), "utf-8")
    return folder


def test_the_first_state_is_held_against_the_present(run: Callable[..., tuple[int, str]], paper: Path) -> None:
    """By default, passage by passage, with what is new in argument told from what is wording."""
    code, told = run("revised", str(paper))
    assert code == 0
    says = "Revised in argument: 1 sentence new, 1 sentence changed, it may be; in wording: 1 sentence."
    assert says in " ".join(told.split())
    assert "⸢eleven⸣" in told
    short = run("revised", str(paper), "--short")[1]
    assert "Revised in argument" in short
    assert "⸢" not in short


def test_two_states_are_held_against_each_other(run: Callable[..., tuple[int, str]], paper: Path) -> None:
    """Whatever stands there now."""
    numbers = [str(state.seq) for state in list_states(paper, "draft.md")]
    told = run("revised", str(paper), "--since", numbers[0], "--until", numbers[1])[1]
    assert "a figure came or went: eleven, nine" in " ".join(told.split())
    assert "had" not in told


def test_states_that_cannot_be_compared_are_refused(told: Callable[..., tuple[int, str, str]], paper: Path) -> None:
    """No such state, states of two files, and a file without any: one line says which, and what to do."""
    keep_state(paper, "jottings.md", b"Mills.", "written", at=MORNING)
    (other,) = list_states(paper, "jottings.md")
    for words in (("--since", "99"), ("--file", "rough.md"), ("--until", str(other.seq))):
        code, out, err = told("revised", paper, *words)
        assert code == 2
        assert (out, err.count("\n")) == ("", 1), err
