"""What each passage is to the paper."""

from __future__ import annotations

from fairhand.model.point import Point, Support
from fairhand.model.span import Span
from fairhand.revision.arguing import Argued
from fairhand.revision.body import BodyParagraph, Cited
from fairhand.revision.worth import ANY, MAIN, ONLY_CITED, OPTIONAL, list_lost, weigh_passages


def passage(*entries: str) -> BodyParagraph:
    """A passage that cites these sources."""
    return BodyParagraph(0, Span(0, 1), "", "body", (), 30, tuple(Cited(one, "", opens=False) for one in entries))


def point(name: str, source: str, *, main: bool = True) -> Point:
    """A point that rests on one source."""
    return Point(name, f"{name} is so.", "main" if main else "optional", (Support(source),))


def test_a_point_is_shared_by_those_that_carry_it() -> None:
    """Half to the passage that argues it, the rest to those that cite its sources; all to one that is alone."""
    body = [passage("lind"), passage("lind"), passage("lind"), passage("marsh"), passage()]
    first, second = point("p1", "lind"), point("p2", "marsh", main=False)
    argued = [Argued(first, 1, 0.9, is_argued=True), Argued(second, 3, 0.5, is_argued=True)]
    carried = weigh_passages(body, (first, second), argued)
    assert [one.worth - ANY for one in carried] == [MAIN // 4, MAIN // 2, MAIN // 4, OPTIONAL + ONLY_CITED, 0]
    assert [one.points for one in carried] == [("p1",), ("p1",), ("p1",), ("p2",), ()]
    assert carried[3].only_cites == ("marsh",)


def test_a_point_that_is_argued_nowhere_is_shared_by_those_that_cite_its_sources() -> None:
    """Equally; without points, fewer passages are the lesser loss."""
    body = [passage("lind"), passage("lind"), passage()]
    one = point("p1", "lind")
    carried = weigh_passages(body, (one,), [Argued(one, 0, 0.1, is_argued=False)])
    assert [each.worth - ANY for each in carried] == [MAIN // 2, MAIN // 2, 0]
    assert [each.worth for each in weigh_passages(body, (), ())] == [ANY, ANY, ANY]


def test_what_is_lost_is_what_nobody_carries_any_more() -> None:
    """A point that another passage carries too is not lost with one of them."""
    one = point("p1", "lind")
    carried = weigh_passages([passage("lind"), passage("lind"), passage("marsh")], (one,), ())
    assert list_lost(carried, [0]) == ((), ())
    assert list_lost(carried, [0, 1]) == (("p1",), ())
    assert list_lost(carried, [2]) == ((), ("marsh",))
