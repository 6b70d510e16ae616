"""How well each point is supported."""

from __future__ import annotations

from fairhand.evidence.support import weigh_support
from fairhand.model.entry import Entry, Name
from fairhand.model.point import Point, Points, Support

ENTRIES = {i: Entry(i, "book", i, authors=(Name(i.title()),)) for i in ("lind", "marsh")}


def test_a_point_counts_each_source_once() -> None:
    """Two pages of one source are one source."""
    points = Points("", (Point("p1", "Ebbs scour.", "main", (Support("lind", "1"), Support("lind", "2"))),))
    (weighed,) = weigh_support(points, ENTRIES, {})
    assert weighed.sources == weighed.independent == ("lind",)
    assert weighed.needed == 2


def test_the_writers_own_rule_is_kept() -> None:
    """How many sources a point needs is the desk's setting."""
    points = Points("", (Point("p1", "a", "main"), Point("p2", "b", "optional")))
    assert [w.needed for w in weigh_support(points, ENTRIES, {}, main=3, optional=0)] == [3, 0]


def test_a_source_off_the_list_is_named() -> None:
    """A point may name a source that is not on the list: it does not count."""
    points = Points("", (Point("p1", "a", "main", (Support("marsh"), Support("gone"))),))
    (weighed,) = weigh_support(points, ENTRIES, {})
    assert (weighed.sources, weighed.missing) == (("marsh",), ("gone",))
