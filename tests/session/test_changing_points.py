"""The thesis and the points changed from within the program."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path

import pytest

from fairhand.errors import DraftChangedOnDisk, FairhandError, FileUnreadable
from fairhand.model.point import Point, Points
from fairhand.planning.points import read_points
from fairhand.session.editing import state_of
from fairhand.session.research.points import keep_point, keep_thesis, order_of, remove_point, reorder_point


def present(folder: Path) -> Points:
    """What the file now holds."""
    return read_points((folder / "points.json").read_text("utf-8"))[0]


def test_a_file_is_begun_with_a_thesis_or_a_point(tmp_path: Path) -> None:
    """Neither asks for the other; a thing sent twice is there once."""
    for _ in range(2):
        assert keep_point(tmp_path, Point("", "Ebb tides scour."), "") == "p1"
        keep_thesis(tmp_path, "The ebb does the work.", state_of(""))
    assert present(tmp_path) == Points("The ebb does the work.", (Point("p1", "Ebb tides scour."),))


def test_a_point_needs_words(tmp_path: Path) -> None:
    """It is refused, and no file is made."""
    with pytest.raises(FairhandError, match="needs words"):
        keep_point(tmp_path, Point("", ""), "")
    assert list(tmp_path.iterdir()) == []


def test_nothing_changed_meanwhile_is_overwritten(tmp_path: Path) -> None:
    """Neither thesis, point nor order; a change elsewhere in the file is no hindrance."""
    keep_thesis(tmp_path, "T", state_of(""))
    for words in ("One.", "Two."):
        keep_point(tmp_path, Point("", words), "")
    old = present(tmp_path)
    first = old.points[0]
    keep_point(tmp_path, replace(first, text="Theirs."), state_of(first))
    keep_thesis(tmp_path, "Theirs", state_of("T"))
    reorder_point(tmp_path, "p1", 1, order_of(old))
    before = (tmp_path / "points.json").read_bytes()
    with pytest.raises(DraftChangedOnDisk, match="the point p1 was changed meanwhile"):
        keep_point(tmp_path, replace(first, text="Mine."), state_of(first))
    with pytest.raises(DraftChangedOnDisk, match="the point p1 was changed meanwhile"):
        remove_point(tmp_path, "p1", state_of(first))
    with pytest.raises(DraftChangedOnDisk, match="the thesis was changed meanwhile"):
        keep_thesis(tmp_path, "Mine", state_of("T"))
    with pytest.raises(DraftChangedOnDisk, match="the order of the points was changed meanwhile"):
        reorder_point(tmp_path, "p1", 1, order_of(old))
    assert (tmp_path / "points.json").read_bytes() == before
    remove_point(tmp_path, "p1", state_of(present(tmp_path).points[1]))
    assert [point.text for point in present(tmp_path).points] == ["Two."]
    with pytest.raises(DraftChangedOnDisk, match="the point p1 has gone"):
        keep_point(tmp_path, replace(first, text="Mine."), state_of(first))


def test_a_file_that_cannot_be_read_is_left_as_it_is(tmp_path: Path) -> None:
    """Whatever is to be done to it."""
    path = tmp_path / "points.json"
    path.write_text('{"points": [', "utf-8")
    for change in (
        lambda: keep_thesis(tmp_path, "T", state_of("")),
        lambda: keep_point(tmp_path, Point("", "One."), ""),
        lambda: remove_point(tmp_path, "p1", ""),
        lambda: reorder_point(tmp_path, "p1", 1, ""),
    ):
        with pytest.raises(FileUnreadable, match="nothing was written"):
            change()
    assert path.read_text("utf-8") == '{"points": ['


def test_what_the_program_does_not_know_stays(tmp_path: Path) -> None:
    """Through every change."""
    path = tmp_path / "points.json"
    path.write_text(json.dumps({"x": 1, "points": [{"id": "a", "text": "One.", "y": 2}, {"z": 3}]}), "utf-8")
    keep_thesis(tmp_path, "T", state_of(""))
    keep_point(tmp_path, Point("", "Two."), "")
    reorder_point(tmp_path, "a", 1, order_of(present(tmp_path)))
    keep_point(tmp_path, Point("a", "Last."), state_of(Point("a", "One.")))
    found = json.loads(path.read_text("utf-8"))
    assert found["x"] == 1
    assert {"z": 3} in found["points"]
    assert found["points"][-1] == {"id": "a", "text": "Last.", "y": 2}
