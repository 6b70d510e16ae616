"""The contents of ``points.json``."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from fairhand.planning.points import read_points


def test_a_faulty_point_does_not_stop_the_rest() -> None:
    """Each fault is named with its number."""
    points, problems = read_points(
        '{"thesis": "T", "points": [{"text": ""}, 7, '
        '{"id": "b", "text": "B", "weight": "heavy", "sources": [{}, "x"]}]}'
    )
    assert points.thesis == "T"
    assert [(p.id, p.weight, [s.source for s in p.support]) for p in points.points] == [("b", "main", ["x"])]
    assert [p.where for p in problems] == [f"points.json, point {n}" for n in (1, 2, 3, 3)]


def test_what_is_no_json_is_told_in_one_line() -> None:
    """The message says what the file looks like when it is right."""
    points, (problem,) = read_points('{"points": [')
    assert points.points == ()
    assert "thesis" in problem.mend
    assert "\n" not in str(problem)


@given(st.text())
def test_any_text_is_read(text: str) -> None:
    """A text that is no list of points gives none."""
    read_points(text)
