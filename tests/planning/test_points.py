"""The contents of ``points.json``."""

from __future__ import annotations

import json
from collections.abc import Callable
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.errors import FileUnreadable
from fairhand.model.point import Point, Support
from fairhand.planning.points import drop_point, move_point, put_point, put_thesis, read_points

WHOLE: dict[str, Any] = {
    "thesis": "The ebb does the work.",
    "by": "A. Writer",
    "points": [
        {
            "id": "a",
            "text": "Ebb tides scour.",
            "sources": [{"id": "lind-2019", "page": "7", "sure": True}, 7, "marsh-2021"],
        },
        {"text": ""},
        {"id": "b", "text": "Floods fill.", "weight": "optional", "colour": "blue"},
        {"id": "c", "text": "Silt settles.", "weight": "heavy"},
    ],
}
TEXT = json.dumps(WHOLE)
BROKEN = ['{"points": [', "7", "[]", '{"points": {"a": 1}}', '{"points": "a"}', "[" * 100_000]


def ids(text: str) -> list[str]:
    """The ids of the points, in order."""
    return [point.id for point in read_points(text)[0].points]


def test_a_faulty_point_does_not_stop_the_rest() -> None:
    """Each fault is named with its number."""
    points, problems = read_points(
        '{"thesis": "T", "points": [{"text": ""}, 7, '
        '{"id": "b", "text": "B", "weight": ["heavy"], "sources": [{}, "x"]}]}'
    )
    assert points.thesis == "T"
    assert [(p.id, p.weight, [s.source for s in p.support]) for p in points.points] == [("b", "main", ["x"])]
    assert [p.where for p in problems] == [f"points.json, point {n}" for n in (1, 2, 3, 3)]


@pytest.mark.parametrize("text", BROKEN)
def test_what_cannot_be_read_is_told_in_one_line(text: str) -> None:
    """The message names the whole file, and says what it looks like when it is right."""
    points, (problem,) = read_points(text)
    assert points.points == ()
    assert problem.where == "points.json"
    assert "thesis" in problem.mend
    assert "\n" not in str(problem)


@pytest.mark.parametrize("text", BROKEN)
def test_what_cannot_be_read_is_not_written_over(text: str) -> None:
    """Whatever is to be changed in it."""
    changes: tuple[Callable[[], str], ...] = (
        lambda: put_thesis(text, "T"),
        lambda: put_point(text, Point("", "T")),
        lambda: drop_point(text, "a"),
        lambda: move_point(text, "a", 1),
    )
    for change in changes:
        with pytest.raises(FileUnreadable, match=r"points\.json: .*; nothing was written: mend it first"):
            change()


def test_a_file_not_there_yet_is_begun() -> None:
    """The thesis first, or a point first; new points are numbered past those that there are."""
    text = put_point(put_thesis("", "T"), Point("", "One", support=(Support("lind-2019", "7"),)))
    text = put_point(text, Point("", "Two", "optional"))
    text = put_point(drop_point(text, "p1"), Point("", "Three"))
    assert json.loads(text) == {
        "thesis": "T",
        "points": [{"id": "p2", "text": "Two", "weight": "optional"}, {"id": "p1", "text": "Three", "weight": "main"}],
    }


def test_two_points_of_one_id_are_told_apart() -> None:
    """The second goes by a name of its own, told, so that it can be changed without the first."""
    text = '{"points": [{"id": "p2", "text": "One"}, {"text": "Two"}, {"id": "p2", "text": "Three"}]}'
    points, problems = read_points(text)
    assert [point.id for point in points.points] == ["p2", "p2-2", "p2-3"]
    assert [problem.where for problem in problems] == ["points.json, point 2", "points.json, point 3"]
    changed, problems = read_points(put_point(text, Point("p2-2", "Second")))
    assert [point.text for point in changed.points] == ["One", "Second", "Three"]
    assert len(problems) == 1


def test_only_what_changed_is_changed() -> None:
    """Unknown keys, faulty records and sources in another form stay as they stand; so does what says the same."""
    a, b, c = read_points(TEXT)[0].points
    for same in (a, b):
        assert json.loads(put_point(TEXT, same)) == WHOLE
    assert json.loads(put_point(TEXT, c))["points"][3]["weight"] == "main"  # what could not be read is put right
    turned = json.loads(put_point(TEXT, Point("a", "Ebb.", "main", (Support("marsh-2021"), Support("lind-2019", "9")))))
    assert turned["points"][0] == {
        "id": "a",
        "text": "Ebb.",
        "sources": ["marsh-2021", {"id": "lind-2019", "page": "9", "sure": True}, 7],
    }
    assert turned["points"][1:] == WHOLE["points"][1:]
    paged = json.loads(put_point(TEXT, Point("a", a.text, "main", (Support("marsh-2021", "3"),))))
    assert paged["points"][0]["sources"] == [{"id": "marsh-2021", "page": "3"}, 7]
    assert json.loads(put_thesis(TEXT, "T")) == {**WHOLE, "thesis": "T"}


def test_a_point_is_moved_among_the_points() -> None:
    """Past records that are none, and not past either end; nothing is lost."""
    assert ids(move_point(TEXT, "b", -1)) == ["b", "a", "c"]
    assert ids(move_point(TEXT, "a", 1)) == ["b", "a", "c"]
    assert ids(move_point(TEXT, "a", -1)) == ids(move_point(TEXT, "c", 1)) == ids(move_point(TEXT, "x", 1)) == ids(TEXT)
    moved = json.loads(move_point(TEXT, "c", -1))
    assert sorted(map(repr, moved["points"])) == sorted(map(repr, WHOLE["points"]))


def test_a_point_is_taken_out_alone() -> None:
    """Records that cannot be read stay."""
    assert json.loads(drop_point(TEXT, "a"))["points"] == WHOLE["points"][1:]
    assert json.loads(drop_point(TEXT, "x")) == WHOLE


def test_half_a_letter_is_written_as_it_came() -> None:
    """The text can be saved whatever else it holds."""
    put_thesis('{"x": "\\ud800"}', "T").encode()


VALUE = st.recursive(
    st.none() | st.booleans() | st.integers() | st.text(max_size=8),
    lambda inner: (
        st.lists(inner, max_size=4)
        | st.dictionaries(st.sampled_from(["id", "text", "weight", "sources", "page", "x"]), inner, max_size=5)
    ),
    max_leaves=12,
)


@given(st.text())
def test_any_text_is_read(text: str) -> None:
    """A text that is no list of points gives none."""
    read_points(text)


@given(st.lists(VALUE, max_size=5), st.integers(-3, 3))
def test_any_records_are_read_and_kept(records: list[object], by: int) -> None:
    """Ids are distinct; moving keeps every record, and putting a point back changes nothing that it reads as."""
    text = json.dumps({"points": records})
    points, _ = read_points(text)
    assert len({point.id for point in points.points}) == len(points.points)
    for point in points.points:
        assert read_points(put_point(text, point))[0] == points
        moved = json.loads(move_point(text, point.id, by))["points"]
        assert sorted(map(repr, moved)) == sorted(map(repr, records))
        assert len(json.loads(drop_point(text, point.id))["points"]) == len(records) - 1
