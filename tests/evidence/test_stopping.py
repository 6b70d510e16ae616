"""When to stop looking."""

from __future__ import annotations

from fairhand.evidence.stopping import holes_first, list_needs, say_when_to_stop
from fairhand.evidence.support import PointSupport
from fairhand.model.point import Point


def point(name: str, weight: str, needed: int, has: int) -> PointSupport:
    """A point with so many independent sources."""
    ids = tuple(f"s{n}" for n in range(has))
    own = Point(name, f"Point {name}.", "main" if weight == "main" else "optional")
    return PointSupport(own, needed, ids, ids, (), ())


MANY = [point("a", "main", 2, 2), point("b", "optional", 1, 0), point("c", "main", 2, 1), point("d", "main", 2, 0)]


def test_the_most_needed_comes_first() -> None:
    """Main points before optional ones, the emptiest first; those that have enough come last."""
    assert [one.point.id for one in holes_first(MANY)] == ["d", "c", "b", "a"]
    assert [need.lacking for need in list_needs(MANY)] == [2, 1, 1]


def test_one_sentence_says_what_to_do() -> None:
    """Two things to look for at most, or that it is time to stop."""
    assert say_when_to_stop(MANY) == (
        "Look for 2 more independent sources for “Point d” and 1 more independent source for “Point c”; "
        "1 point more can wait until then."
    )
    assert say_when_to_stop(MANY[:1]).startswith("Stop looking")
    assert say_when_to_stop([]).startswith("Write down the points")
