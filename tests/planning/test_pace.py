"""The writer's own pace."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.planning.pace import ENOUGH, PUBLISHED, Logged, add_to_log, learn_pace, list_ratios, read_log

LOGGED = st.builds(
    Logged,
    step=st.text(min_size=1).map(str.strip).filter(bool),
    took_minutes=st.none() | st.integers(0, 5000),
    planned_minutes=st.integers(0, 5000),
    usual_minutes=st.integers(0, 5000),
    left_minutes=st.integers(0, 5000),
    left_out=st.booleans(),
    when=st.text(max_size=30),
)


def test_below_five_steps_the_published_figure_holds_and_it_is_said() -> None:
    """Four logged steps say too little."""
    pace = learn_pace([1.0, 1.0, 1.0, 1.0])
    assert (pace.likely, pace.safe, pace.is_own) == (PUBLISHED, None, False)
    assert (
        str(pace)
        == "Only 4 of 5 steps are logged, so the plan takes 1.64 times the usual minutes, as a published study found."
    )


def test_a_step_done_by_parts_counts_once() -> None:
    """What was said to be left is still to come; what is left out says nothing of the pace."""
    log = [Logged("draft", 60, 100, 80, 50), Logged("draft", 60, 50, 80), Logged("reader-1", 5, 20, 20, left_out=True)]
    assert list_ratios(log) == (1.5,)


def test_a_step_whose_time_was_not_said_is_done_and_counts_for_nothing() -> None:
    """Nobody has to tell."""
    assert list_ratios([Logged("proof", None, 60, 40)]) == ()
    assert list_ratios([Logged("proof", None, 60, 40, left_minutes=20), Logged("proof", 30, 60, 40)]) == ()


@given(st.lists(LOGGED, max_size=5))
def test_the_log_reads_back_as_it_was_written(log: list[Logged]) -> None:
    """Whatever was logged."""
    text = ""
    for one in log:
        text = add_to_log(text, one)
    assert read_log(text) == (tuple(log), ())


@given(st.text())
def test_no_text_stops_the_reading(text: str) -> None:
    """Each faulty line is a problem, and the rest is read."""
    log, problems = read_log(text + '\n{"step": "draft", "took": 90}')
    assert log[-1] == Logged("draft", 90)
    assert len(problems) + len(log) == len([line for line in text.split("\n") if line.strip()]) + 1


@pytest.mark.parametrize("line", ['{"step": ""}', "[]", '{"step": "a", "took": true}', '{"step": "a", "took": -5}'])
def test_a_line_that_says_nothing_is_told_with_its_place(line: str) -> None:
    """The line's number stands in the problem."""
    assert read_log(f"\n{line}\n")[1][0].where == "time.jsonl, line 2"


@given(st.lists(st.floats(0.2, 5), min_size=ENOUGH, max_size=40))
def test_the_safe_pace_is_never_below_the_likely_one(ratios: list[float]) -> None:
    """Both lie within what was logged."""
    pace = learn_pace(ratios)
    assert pace.safe is not None
    assert min(ratios) - 1e-4 <= pace.likely <= pace.safe + 1e-4 <= max(ratios) + 2e-4
