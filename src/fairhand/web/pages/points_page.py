"""The points: what the paper is to show, each thing that it must or may support, and what that rests on."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace

from starlette.exceptions import HTTPException
from starlette.responses import Response

from fairhand.errors import DraftChangedOnDisk, FairhandError
from fairhand.evidence.support import PointSupport
from fairhand.language.counts import count_of, open_with
from fairhand.model.point import Point, Points, Support
from fairhand.planning.points import WHERE
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.naming import name_tie
from fairhand.reading.labels import labels_in
from fairhand.session.editing import state_of
from fairhand.session.research.notes_for import count_for, notes_for
from fairhand.session.research.noting import list_notes, name_note
from fairhand.session.research.points import keep_point, keep_thesis, order_of, remove_point, reorder_point
from fairhand.web.asked import Asked, get, post
from fairhand.web.error_pages import page_of

MORE_SOURCES = 2
"""Empty rows for sources below those that a point has."""
MOVES = {"earlier": -1, "later": 1}
"""The buttons that reorder, and by how many places."""


def show(
    asked: Asked, *, fault: str = "", status: int = 200, thesis: str | None = None, point: Point | None = None
) -> Response:
    """The thesis, every point in order, and a form for the next one.

    Args:
        asked: The request.
        fault: Why something that was sent was not done.
        status: The HTTP status.
        thesis: A thesis that was typed and not kept.
        point: A point that was typed and not kept.
    """
    known = asked.paper.opened.look()
    points = known.paper.points
    problems = [one for one in known.paper.problems if one.where.startswith(WHERE)]
    readable = all(one.where != WHERE for one in problems)
    return asked.page(
        "points_page.html",
        status=status,
        title="Points",
        step=_step(known) if readable else f"Mend {WHERE} in an editor; until then nothing is written to it.",
        problems=problems,
        fault=fault,
        readable=readable,
        points=points,
        thesis=points.thesis if thesis is None else thesis,
        now=thesis is not None and thesis != points.thesis,
        was=state_of(points.thesis),
        order=order_of(points),
        rests={one.point.id: tell_support(one, known.names) for one in known.support} if known.asks_for_sources else {},
        noted=count_for(list_notes(asked.paper.folder)[0]),
        named=_namer(known.names),
        asks=known.asks_for_sources,
        point=point or Point("", ""),
        sources=known.names,
        rows=_rows(known, point),
    )


def _step(known: Analysis) -> str:
    points = known.paper.points
    if not points.thesis and not points.points:
        return "Write in one sentence what the paper is to show; then each point that it must support."
    thin = sum(len(one.independent) < one.needed for one in known.support) if known.asks_for_sources else 0
    if thin:
        what = open_with(thin, "point rests", "points rest")
        return f"{what} on fewer independent sources than your rule asks: look for another there first."
    if not points.thesis:
        return "Write in one sentence what the paper is to show: what all these points are for."
    if not points.points:
        return "Write down each point that the paper must support, and those that it may."
    return "Put the points in the order in which the paper is to make them."


def tell_support(support: PointSupport, names: Mapping[str, str]) -> str:
    """What a point rests on beside what the writer's rule asks, as one plain sentence.

    >>> tell_support(PointSupport(Point("p1", "Ebb tides scour."), 2, ("a",), ("a",), (), ()), {"a": "Lind (2019)"})
    'It rests on 1 source; your rule asks for 2.'
    """
    found, apart = len(support.sources), len(support.independent)
    rests = count_of(found, "source") if found else "no source yet"
    if 1 < found == apart:
        rests = count_of(found, "independent source")
    ties = ""
    if apart < found:
        rests = f"{rests}, which may count as {apart}"
        ties = ": " + "; ".join(name_tie(tie, names) for tie in support.dependences)
    lacking = f" Not on the list of sources: {', '.join(support.missing)}." if support.missing else ""
    return f"It rests on {rests}; your rule asks for {support.needed}{ties}.{lacking}"


def _namer(names: Mapping[str, str]) -> Callable[[Support], str]:
    def name(support: Support) -> str:
        pages = f", {'pages' if len(labels_in(support.page)) > 1 else 'page'} {support.page}" if support.page else ""
        return names.get(support.source, support.source) + pages

    return name


def _rows(known: Analysis, point: Point | None) -> Sequence[Support]:
    """The sources of a point, and room for more; none where the sheet asks for no sources and the point has none."""
    support = point.support if point else ()
    if not support and not (known.names and known.asks_for_sources):
        return ()
    return (*support, *(Support("") for _ in range(MORE_SOURCES)))


def send(asked: Asked) -> Response:
    """The thesis kept, or a new point; where either cannot be, the page again with what was typed."""
    form = asked.form
    if form.has("thesis"):
        thesis = " ".join(form.text("thesis").split())
        try:
            keep_thesis(asked.paper.folder, thesis, form.text("was"))
        except DraftChangedOnDisk:
            fault = "Another program changed the thesis while you were writing; nothing was overwritten."
            return show(asked, fault=fault, status=409, thesis=thesis)
        except FairhandError as error:
            return show(asked, fault=str(error), status=page_of(error)[0], thesis=thesis)
        return asked.go(asked.to("points"))
    point = _written(asked, Point("", ""))
    try:
        return asked.go(asked.to("points", at=f"point-{keep_point(asked.paper.folder, point, '')}"))
    except FairhandError as error:
        return show(asked, fault=str(error), status=page_of(error)[0], point=point)


def show_point(
    asked: Asked, *, fault: str = "", status: int = 200, typed: Point | None = None, now: Point | None = None
) -> Response:
    """One point, to be changed or taken out."""
    known = asked.paper.opened.look()
    point = _find(known.paper.points, asked.name("id"))
    if point is None:
        raise HTTPException(404)
    return asked.page(
        "point_page.html",
        status=status,
        title="A point",
        step="Change it, or take it out; what it was stays among the earlier states.",
        fault=fault,
        point=typed or point,
        now=now,
        was=state_of(point),
        notes=notes_for(list_notes(asked.paper.folder)[0], point=point.id),
        name=name_note,
        texts=known.paper.texts,
        named=_namer(known.names),
        here=asked.to("points", point.id),
        sources=known.names,
        rows=_rows(known, typed or point),
    )


def change(asked: Asked) -> Response:
    """A point changed, moved or taken out; where another program changed it meanwhile, both are shown."""
    form, folder = asked.form, asked.paper.folder
    point, what, was = (
        _find(asked.paper.opened.look().paper.points, asked.name("id")),
        form.text("do"),
        form.text("was"),
    )
    if what in MOVES:
        return _move(asked, MOVES[what])
    if point is None:
        fault = "Another program took this point out while you were writing; add it again, or leave it."
        return show(asked, fault=fault, status=409, point=_written(asked, Point("", "")))
    typed = _written(asked, point)
    try:
        if what == "remove":
            remove_point(folder, point.id, was)
            return asked.go(asked.to("points"))
        keep_point(folder, typed, was)
    except DraftChangedOnDisk:
        fault = "Another program changed this point while you were writing; nothing was overwritten."
        return show_point(asked, fault=fault, status=409, typed=typed, now=point)
    except FairhandError as error:
        return show_point(asked, fault=str(error), status=page_of(error)[0], typed=typed)
    return asked.go(asked.to("points", at=f"point-{point.id}"))


def _move(asked: Asked, by: int) -> Response:
    try:
        reorder_point(asked.paper.folder, asked.name("id"), by, asked.form.text("was"))
    except FairhandError as error:
        fault = str(error)
        if isinstance(error, DraftChangedOnDisk):
            fault = "Another program changed the order of the points; it now stands as below, and nothing was moved."
        return show(asked, fault=fault, status=page_of(error)[0])
    return asked.go(asked.to("points", at=f"point-{asked.name('id')}"))


def _find(points: Points, point_id: str) -> Point | None:
    return next((point for point in points.points if point.id == point_id), None)


def _written(asked: Asked, point: Point) -> Point:
    form = asked.form
    support = point.support
    if form.has("source"):
        pairs = zip(form.texts("source"), form.texts("page"), strict=False)
        support = tuple(dict.fromkeys(Support(source, page) for source, page in pairs if source))
    return replace(
        point,
        text=" ".join(form.text("text").split()),
        weight="optional" if form.text("weight") == "optional" else "main",
        support=support,
    )


ONE = "/paper/{slug}/points/{id:path}"
ROUTES = (
    get("/paper/{slug}/points", show),
    post("/paper/{slug}/points", send),
    get(ONE, show_point),
    post(ONE, change),
)
