from __future__ import annotations

import datetime as dt
import math
from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.model.plan import Free, PaperDue, Step
from fairhand.planning.shortfall import count_shortfall
from fairhand.planning.sittings import plan_sittings
from fairhand.planning.way_out import find_ways_out

MONDAY = dt.datetime(2031, 3, 3, tzinfo=dt.UTC)
HOUR, DAY = dt.timedelta(hours=1), dt.timedelta(days=1)

SEVEN = {
    "peat": ("Peat and Parliament", 2, 1.0, 0, 90, 60),
    "ferries": ("Ferries of the Upper Forth", 3, 1.0, 90, 120, 60),
    "kelp": ("Kelp, Glass and Soap", 4, 2.0, 120, 150, 90),
    "choirs": ("Works Choirs", 5, 1.0, 90, 150, 60),
    "canals": ("Canals in Drought", 7, 1.0, 150, 180, 60),
    "almanacs": ("Weather in the Almanacs", 8, 1.0, 120, 150, 60),
    "looms": ("Looms after 1900", 9, 3.0, 210, 240, 120),
}
"""Seven papers due over nine days, our own invention: title, day due at 17:00, worth, minutes to read, draft, mend."""


def by_the_day(due: dt.datetime) -> Callable[[dt.datetime], float]:
    """Five per cent of the mark for each day begun, nothing after five days."""

    def cost(hour: dt.datetime) -> float:
        days = math.ceil(max(dt.timedelta(), hour - due) / DAY)
        return 0.05 * days if days <= 5 else 1.0

    return cost


def seven_papers(hours_a_day: int) -> tuple[list[Step], list[PaperDue], list[Free]]:
    """The seven papers, and so many hours each afternoon."""
    steps, papers = [], []
    for paper, (title, day, worth, read, draft, mend) in SEVEN.items():
        due = MONDAY + (day - 1) * DAY + 17 * HOUR
        papers.append(PaperDue(paper, due, by_the_day(due), worth, title))
        parts = (
            ("read", "read the sources", read, 0, False),
            ("draft", "write the draft", draft, 0, False),
            ("reader", "give it to a first reader", 30, 12 * 60, True),
            ("mend", "copy-edit and read the proof", mend, 0, False),
        )
        before: tuple[str, ...] = ()
        for name, does, minutes, rest, optional in parts:
            if minutes:
                steps.append(
                    Step(
                        f"{paper}/{name}",
                        paper,
                        does,
                        minutes,
                        after=before,
                        rest_minutes=rest,
                        optional=optional,
                        loses="a reader" if optional else "",
                    )
                )
                before = (steps[-1].id,)
    start = 17 - hours_a_day
    free = [Free(MONDAY + day * DAY + start * HOUR, MONDAY + day * DAY + 17 * HOUR) for day in range(21)]
    return steps, papers, free


def test_seven_papers_over_nine_days_fit_into_six_hours_a_day() -> None:
    """Where all can be met nothing is lost, nothing is missing, and no way out is told."""
    steps, papers, free = seven_papers(6)
    plan = plan_sittings(steps, papers, free, MONDAY)
    dues = {paper.paper: paper.due for paper in papers}
    assert plan.lost == 0
    assert all(end <= (dues[paper] or end) for paper, end in plan.ends)
    assert len(plan.ends) == 7
    assert count_shortfall(steps, papers, free, MONDAY) == 0
    assert find_ways_out(steps, papers, free, MONDAY) == ()


def test_seven_papers_over_nine_days_with_an_hour_too_little() -> None:
    """At five hours a day an hour is missing: told with three ways out, each with its gain, its price and its hour."""
    steps, papers, free = seven_papers(5)
    plan = plan_sittings(steps, papers, free, MONDAY)
    assert plan.lost == pytest.approx(0.05)
    assert count_shortfall(steps, papers, free, MONDAY) == 60

    leaving, asking, late = find_ways_out(steps, papers, free, MONDAY)
    assert leaving.does == "Leave out, for “Looms after 1900”, give it to a first reader"
    assert leaving.price == "“Looms after 1900” goes without a reader"
    assert (leaving.gains_minutes, leaving.costs) == (60, 0)
    assert asking.does == "Ask for “Weather in the Almanacs” to be due 1 day later"
    assert asking.price == "no marks, if it is granted; without it 5 % of its mark"
    assert (asking.gains_minutes, asking.costs, asking.by) == (60, 0, MONDAY + 7 * DAY + 17 * HOUR)
    assert late.does == "Hand in “Weather in the Almanacs” 20 hours late"
    assert late.price == "it loses 5 % of its mark"
    assert late.gains_minutes == 60
    assert late.costs == pytest.approx(0.05)


def test_where_one_step_is_not_enough_more_are_left_out() -> None:
    """At four hours a day readers are left out together, and the price of what is still late is told."""
    steps, papers, free = seven_papers(4)
    plan = plan_sittings(steps, papers, free, MONDAY)
    ways = find_ways_out(steps, papers, free, MONDAY)
    leaving = next(way for way in ways if way.does.startswith("Leave out"))
    assert leaving.does.count("reader") >= 2
    assert 0 < leaving.costs < plan.lost
    assert [way.costs for way in ways] == sorted(way.costs for way in ways)
    assert max(way.costs for way in ways) == pytest.approx(plan.lost)


def test_what_hangs_on_a_step_goes_with_it() -> None:
    """An excursus that is not written is not trimmed either."""
    nine = MONDAY + 9 * HOUR
    steps = [
        Step("a/draft", "a", "write the draft", 60),
        Step("a/excursus", "a", "write the excursus", 60, after=("a/draft",), optional=True),
        Step("a/trim", "a", "trim the excursus", 20, after=("a/excursus",), optional=True),
        Step("a/proof", "a", "read the proof", 30, after=("a/draft", "a/trim")),
    ]
    noon = nine + 2 * HOUR
    papers = [PaperDue("a", noon, by_the_day(noon))]
    ways = find_ways_out(steps, papers, [Free(nine, nine + 8 * HOUR)], nine)
    assert ways[0].does == "Leave out, for “a”, write the excursus, trim the excursus"
    assert ways[0].costs == 0


def test_a_milestone_that_cannot_be_kept_is_asked_for() -> None:
    """A step's own hour can be put off like a paper's."""
    nine = MONDAY + 9 * HOUR
    steps = [Step("a/list", "a", "the list of sources", 120, due=nine + HOUR)]
    far = nine + 9 * DAY
    ways = find_ways_out(
        steps, [PaperDue("a", far, by_the_day(far), title="Peat")], [Free(nine, nine + 8 * HOUR)], nine
    )
    assert [way.does for way in ways] == [
        "Ask for “Peat: the list of sources” to be due 1 day later",
        "Hand in “Peat: the list of sources” 1 hour late",
    ]


def test_a_paper_that_never_fits_is_given_up_only_as_the_last_way() -> None:
    """With no hours left at all nothing can be put off; it is said as it is."""
    due = MONDAY + DAY
    ways = find_ways_out([Step("a/draft", "a", "write", 60)], [PaperDue("a", due, by_the_day(due))], [], MONDAY)
    assert [(way.does, way.costs) for way in ways] == [("Give up “a”", 1)]


@given(
    st.lists(st.tuples(st.integers(0, 2), st.integers(0, 200), st.booleans()), max_size=7),
    st.lists(st.integers(-30, 60), min_size=3, max_size=3),
)
def test_no_way_out_makes_it_worse(sizes: list[tuple[int, int, bool]], hours: list[int]) -> None:
    """Whatever is in hand, each way loses no more than the plan, gains no more than is missing, and is named."""
    steps = [
        Step(f"s{number}", f"p{paper}", "does", minutes, optional=optional)
        for number, (paper, minutes, optional) in enumerate(sizes)
    ]
    papers = [
        PaperDue(f"p{number}", MONDAY + hour * HOUR, by_the_day(MONDAY + hour * HOUR))
        for number, hour in enumerate(hours)
    ]
    free = [Free(MONDAY + day * DAY, MONDAY + day * DAY + 2 * HOUR) for day in range(4)]
    lost = plan_sittings(steps, papers, free, MONDAY, effort=400).lost
    missing = count_shortfall(steps, papers, free, MONDAY)
    for way in find_ways_out(steps, papers, free, MONDAY, effort=400):
        assert way.costs <= lost + 1e-9
        assert 0 <= way.gains_minutes <= missing
        assert way.does
        assert way.price
