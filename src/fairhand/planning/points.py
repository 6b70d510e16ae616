"""``points.json``: the thesis, and the points that the paper must or may support.

What the program changes it changes in place: keys that it does not know, records that it cannot read and whatever did
not change stay as they stand. A file that it cannot read at all is never written over.
"""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from dataclasses import replace

from fairhand.errors import FileUnreadable
from fairhand.language.json_text import write_json
from fairhand.model.point import Point, Points, Support
from fairhand.model.problem import Problem

WHERE = "points.json"
FORM = '{"thesis": "…", "points": [{"id": "p1", "text": "…", "weight": "main", "sources": [{"id": "…", "page": "…"}]}]}'
"""What the file looks like, for the messages."""


def read_points(text: str) -> tuple[Points, tuple[Problem, ...]]:
    """The thesis and the points that the text holds, no two of one id, with a problem for each that is amiss.

    A problem of the whole file, of which nothing was read then, names the file alone.

    >>> points, problems = read_points('{"points": [{"text": "Ebb tides scour.", "sources": ["lind-2019"]}]}')
    >>> points.points[0].id, points.points[0].support[0].source, problems
    ('p1', 'lind-2019', ())
    """
    try:
        found = _read_whole(text)
    except ValueError as error:
        return Points(), (Problem(WHERE, str(error), f"write it as {FORM}"),)
    problems: list[Problem] = []
    points = tuple(point for point in _read_records(found, problems) if point is not None)
    thesis = found.get("thesis")
    return Points(thesis if isinstance(thesis, str) else "", points), tuple(problems)


def put_thesis(text: str, thesis: str) -> str:
    """The file's text with another thesis.

    Raises:
        FileUnreadable: The file is no thesis and points, and must be mended first.
    """
    return _write({**_read_to_change(text), "thesis": thesis})


def put_point(text: str, point: Point) -> str:
    """The file's text with the point in it: in place of the one with its id, or at the end; without one, with a new id.

    Raises:
        FileUnreadable: The file is no thesis and points, and must be mended first.

    >>> put_point('{"x": 1}', Point("", "Ebb tides scour.")).split()
    ['{', '"x":', '1,', '"points":', '[', '{', '"id":', '"p1",', '"text":', '"Ebb', 'tides', 'scour.",', ...]
    """
    found = _read_to_change(text)
    present = _read_records(found, [])
    records = list(_list(found.get("points")))
    at = _place(present, point.id)
    if at is None:
        taken = {one.id for one in present if one is not None}
        new = next(name for n in range(1, len(records) + 2) if (name := f"p{n}") not in taken)
        records.append(_tell(replace(point, id=point.id or new), {}))
    else:
        records[at] = _tell(point, records[at])
    return _write({**found, "points": records})


def drop_point(text: str, point_id: str) -> str:
    """The file's text without the point of that id.

    Raises:
        FileUnreadable: The file is no thesis and points, and must be mended first.
    """
    found = _read_to_change(text)
    at = _place(_read_records(found, []), point_id)
    return _write({**found, "points": [record for n, record in enumerate(_list(found.get("points"))) if n != at]})


def move_point(text: str, point_id: str, by: int) -> str:
    """The file's text with the point so many places later in the order, or earlier where ``by`` is below nought.

    Raises:
        FileUnreadable: The file is no thesis and points, and must be mended first.
    """
    found = _read_to_change(text)
    present = _read_records(found, [])
    at = _place(present, point_id)
    records = list(_list(found.get("points")))
    if at is not None:
        places = [n for n, one in enumerate(present) if one is not None]
        to = places[min(max(places.index(at) + by, 0), len(places) - 1)]
        records.insert(to, records.pop(at))
    return _write({**found, "points": records})


def _read_whole(text: str) -> Mapping[str, object]:
    """What the text holds, an empty one nothing; a ``ValueError`` says in words why it cannot be read."""
    try:
        found = json.loads(text) if text.strip() else {}
    except (ValueError, RecursionError) as error:
        message = f"it is not JSON ({error})"
        raise ValueError(message) from error
    if not isinstance(found, Mapping):
        message = "it holds no thesis and points"
    elif not isinstance(found.get("points", []), list):
        message = "its points are no list"
    else:
        return found
    raise ValueError(message)


def _read_to_change(text: str) -> Mapping[str, object]:
    try:
        return _read_whole(text)
    except ValueError as error:
        message = f"{WHERE}: {error}; nothing was written: mend it first"
        raise FileUnreadable(message) from error


def _write(found: Mapping[str, object]) -> str:
    return write_json(found, indent=2) + "\n"


def _place(points: Sequence[Point | None], point_id: str) -> int | None:
    return next((n for n, one in enumerate(points) if one is not None and one.id == point_id), None)


def _read_records(found: Mapping[str, object], problems: list[Problem]) -> tuple[Point | None, ...]:
    """The point of each record; None where it has no text."""
    points: list[Point | None] = []
    taken: set[str] = set()
    for number, record in enumerate(_list(found.get("points")), 1):
        where = f"{WHERE}, point {number}"
        if not isinstance(record, Mapping) or not str(record.get("text") or "").strip():
            problems.append(Problem(where, "it has no text", "write what the paper is to say there"))
            points.append(None)
            continue
        point = _read_point(record, number, problems)
        if point.id in taken:
            own = next(name for n in range(number, 2 * number + 1) if (name := f"{point.id}-{n}") not in taken)
            problems.append(
                Problem(where, f"another point has its id, {point.id}", f"give it its own; {own} was taken")
            )
            point = replace(point, id=own)
        taken.add(point.id)
        points.append(point)
    return tuple(points)


def _read_point(record: Mapping[str, object], number: int, problems: list[Problem]) -> Point:
    """One point; what is missing of it is taken from custom."""
    where = f"{WHERE}, point {number}"
    weight = record.get("weight", "main")
    if weight not in ("main", "optional"):
        problems.append(Problem(where, f"its weight is {weight!r}", 'write "main" or "optional"; main was taken'))
    support = [_read_support(source) for source in _list(record.get("sources"))]
    problems += [
        Problem(where, "one of its sources has no id", "name the source's id") for one in support if one is None
    ]
    return Point(
        id=str(record.get("id") or f"p{number}"),
        text=str(record["text"]),
        weight="optional" if weight == "optional" else "main",
        support=tuple(one for one in support if one is not None),
    )


def _read_support(source: object) -> Support | None:
    if isinstance(source, str):
        return Support(source)
    if isinstance(source, Mapping) and source.get("id"):
        return Support(str(source["id"]), str(source.get("page") or ""))
    return None


def _tell(point: Point, before: object) -> Mapping[str, object]:
    """A point as a record; of what was there before, all that did not change is kept."""
    record = before if isinstance(before, Mapping) else {}
    told = {**record, "id": point.id, "text": point.text}
    if record.get("weight", "main" if record else "") != point.weight:
        told["weight"] = point.weight
    present = _list(record.get("sources"))
    if [one for one in map(_read_support, present) if one is not None] != list(point.support):
        told["sources"] = _tell_support(point.support, present)
    return told


def _tell_support(support: Sequence[Support], before: Sequence[object]) -> list[object]:
    """The sources of a point as records: each as it stood, where it stood; what names none stays, at the end."""
    left = [(_read_support(record), record) for record in before]
    told: list[object] = []
    for one in support:
        exact = next((pair for pair in left if pair[0] == one), None)
        alike = exact or next((pair for pair in left if pair[0] is not None and pair[0].source == one.source), None)
        if alike is not None:
            left.remove(alike)
        record = alike[1] if alike is not None else None
        own = record if isinstance(record, Mapping) else {}
        told.append(record if exact is not None else {**own, "id": one.source, "page": one.page})
    return [*told, *(record for one, record in left if one is None)]


def _list(value: object) -> Sequence[object]:
    return value if isinstance(value, list) else ()
