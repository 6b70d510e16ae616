"""The demo's desk as it is laid out."""

from __future__ import annotations

from pathlib import Path

from fairhand.desk.paper_files import read_paper
from fairhand.desk.record import list_states
from fairhand.session.saving import keep_record


def test_what_the_program_laid_out_is_not_called_changed_outside(demo_paper: Path) -> None:
    """The first state of each of the demo's files is written by the program, and opening it adds none."""
    keep_record(read_paper(demo_paper))
    states = list_states(demo_paper)
    assert {state.how for state in states} == {"written"}
    assert {state.name for state in states} >= {"paper.toml", "draft.md", "points.json"}
    assert len({state.name for state in states}) == len(states)
