"""The thesis and the points changed from within the program, in ``points.json``."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from fairhand.errors import FairhandError
from fairhand.model.point import Point, Points
from fairhand.planning.points import WHERE, drop_point, move_point, put_point, put_thesis, read_points
from fairhand.session.editing import Written, read_text, refuse_changed, save_text, state_of


def order_of(points: Points) -> str:
    """A hash that changes when the points stand in another order, or others do."""
    return state_of([point.id for point in points.points])


def keep_thesis(folder: Path, thesis: str, was: str) -> None:
    """The thesis stands in the file.

    Args:
        folder: The paper's folder.
        thesis: What the paper is to show; nothing, to take it back.
        was: The state of the thesis that the change was made from.

    Raises:
        FileUnreadable: The file must be mended first.
        DraftChangedOnDisk: Another program changed the thesis meanwhile.
    """
    present = read_text(folder, WHERE)
    text = put_thesis(present.text, thesis)
    now = read_points(present.text)[0].thesis
    if now == thesis:
        return  # sent twice, or nothing changed
    refuse_changed(WHERE, "the thesis", state_of(now), was)
    save_text(folder, WHERE, text, present.seen)


def keep_point(folder: Path, point: Point, was: str) -> str:
    """The point stands in the file; its id is returned.

    Args:
        folder: The paper's folder.
        point: The point; without an id it is a new one, and stands last.
        was: The state of the point that the change was made from; empty for a new one.

    Raises:
        FairhandError: It has no words.
        FileUnreadable: The file must be mended first.
        DraftChangedOnDisk: Another program changed the point meanwhile, or it has gone.
    """
    if not point.text:
        message = "A point needs words: write what the paper is to say there."
        raise FairhandError(message)
    present = read_text(folder, WHERE)
    text = put_point(present.text, point)
    points = read_points(present.text)[0].points
    if not point.id:
        twin = next((one for one in points if replace(one, id="") == point), None)
        if twin is not None:
            return twin.id  # sent twice
    else:
        now = _find(present, point.id)
        if now == point:
            return point.id
        refuse_changed(WHERE, f"the point {point.id}", state_of(now) if now else "", was)
    save_text(folder, WHERE, text, present.seen)
    return point.id or read_points(text)[0].points[-1].id


def remove_point(folder: Path, point_id: str, was: str) -> None:
    """The point is gone; what it was stays among the earlier states.

    Raises:
        FileUnreadable: The file must be mended first.
        DraftChangedOnDisk: Another program changed the point meanwhile, or it has gone.
    """
    present = read_text(folder, WHERE)
    text = drop_point(present.text, point_id)
    now = _find(present, point_id)
    refuse_changed(WHERE, f"the point {point_id}", state_of(now) if now else "", was)
    save_text(folder, WHERE, text, present.seen)


def reorder_point(folder: Path, point_id: str, by: int, was: str) -> None:
    """The point stands so many places later, or earlier where ``by`` is below nought.

    Args:
        folder: The paper's folder.
        point_id: The point's id.
        by: How many places.
        was: The order that the change was made from, as ``order_of`` has it.

    Raises:
        FileUnreadable: The file must be mended first.
        DraftChangedOnDisk: Another program changed the order meanwhile.
    """
    present = read_text(folder, WHERE)
    text = move_point(present.text, point_id, by)
    refuse_changed(WHERE, "the order of the points", order_of(read_points(present.text)[0]), was)
    save_text(folder, WHERE, text, present.seen)


def _find(present: Written, point_id: str) -> Point | None:
    return next((point for point in read_points(present.text)[0].points if point.id == point_id), None)
