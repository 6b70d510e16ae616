"""The contents of ``points.json``."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence

from fairhand.model.point import Point, Points, Support
from fairhand.model.problem import Problem

WHERE = "points.json"
FORM = '{"thesis": "…", "points": [{"id": "p1", "text": "…", "weight": "main", "sources": [{"id": "…", "page": "…"}]}]}'
"""What the file looks like, for the messages."""


def read_points(text: str) -> tuple[Points, tuple[Problem, ...]]:
    """The thesis and the points that the text holds, with a problem for each that is not as it should be.

    >>> points, problems = read_points('{"points": [{"text": "Ebb tides scour.", "sources": ["lind-2019"]}]}')
    >>> points.points[0].id, points.points[0].support[0].source, problems
    ('p1', 'lind-2019', ())
    """
    try:
        found = json.loads(text)
    except ValueError as error:
        return Points(), (Problem(WHERE, f"it is not JSON ({error})", f"write it as {FORM}"),)
    if not isinstance(found, Mapping):
        return Points(), (Problem(WHERE, "it holds no thesis and points", f"write it as {FORM}"),)
    thesis = found.get("thesis")
    records = found.get("points")
    problems: list[Problem] = []
    points = []
    for number, record in enumerate(
        records if isinstance(records, Sequence) and not isinstance(records, str) else (), 1
    ):
        if not isinstance(record, Mapping) or not str(record.get("text") or "").strip():
            problems.append(
                Problem(f"{WHERE}, point {number}", "it has no text", "write what the paper is to say there")
            )
            continue
        points.append(_read_point(record, number, problems))
    return Points(thesis if isinstance(thesis, str) else "", tuple(points)), tuple(problems)


def _read_point(record: Mapping[str, object], number: int, problems: list[Problem]) -> Point:
    """One point; what is missing of it is taken from custom."""
    weight = record.get("weight", "main")
    if weight not in {"main", "optional"}:
        problems.append(
            Problem(
                f"{WHERE}, point {number}", f"its weight is {weight!r}", 'write "main" or "optional"; main was taken'
            )
        )
    support = []
    sources = record.get("sources")
    for source in sources if isinstance(sources, Sequence) and not isinstance(sources, str) else ():
        if isinstance(source, str):
            support.append(Support(source))
        elif isinstance(source, Mapping) and source.get("id"):
            support.append(Support(str(source["id"]), str(source.get("page") or "")))
        else:
            problems.append(Problem(f"{WHERE}, point {number}", "one of its sources has no id", "name the source's id"))
    return Point(
        id=str(record.get("id") or f"p{number}"),
        text=str(record["text"]),
        weight="optional" if weight == "optional" else "main",
        support=tuple(support),
    )
