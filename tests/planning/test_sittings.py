from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Sequence
from dataclasses import replace
from itertools import pairwise
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.model.plan import Free, PaperDue, Plan, Step
from fairhand.planning.sittings import plan_sittings

MONDAY = dt.datetime(2031, 3, 3, tzinfo=dt.UTC)
MINUTE, HOUR, DAY = dt.timedelta(minutes=1), dt.timedelta(hours=1), dt.timedelta(days=1)


def evenings(days: int, hours: int = 2) -> list[Free]:
    """Free hours from six in the evening."""
    return [Free(MONDAY + day * DAY + 18 * HOUR, MONDAY + day * DAY + (18 + hours) * HOUR) for day in range(days)]


def by_the_day(due: dt.datetime, share: float = 0.1) -> Callable[[dt.datetime], float]:
    """The cost of a hand-in: a share for each day begun."""
    return lambda hour: max(0.0, min(1.0, share * -(-(hour - due) // DAY)))


def due_on(paper: str, day: float, worth: float = 1.0) -> PaperDue:
    """A paper due so many days from Monday's beginning."""
    hour = MONDAY + day * DAY
    return PaperDue(paper, hour, by_the_day(hour), worth)


def told(plan: Plan) -> list[tuple[str, str]]:
    """Each sitting's step and beginning, in short."""
    return [(sitting.step, f"{sitting.start:%a %H:%M}") for sitting in plan.sittings]


def test_what_is_due_first_is_done_first() -> None:
    """Of two papers the one that is due earlier comes first, though it was named second."""
    steps = [Step("moss/draft", "moss", "write", 120), Step("tides/draft", "tides", "write", 120)]
    plan = plan_sittings(steps, [due_on("moss", 4), due_on("tides", 2)], evenings(5), MONDAY)
    assert told(plan) == [("tides/draft", "Mon 18:00"), ("moss/draft", "Tue 18:00")]
    assert plan.lost == 0
    assert dict(plan.ends)["moss"] == MONDAY + DAY + 20 * HOUR


def test_a_night_lies_between_draft_and_revision() -> None:
    """The hours of a rest are filled with another paper's work."""
    steps = [
        Step("a/draft", "a", "write", 60, rest_minutes=10 * 60),
        Step("a/revise", "a", "revise", 60, after=("a/draft",)),
        Step("b/draft", "b", "write", 60),
    ]
    plan = plan_sittings(steps, [due_on("a", 3), due_on("b", 9)], evenings(5), MONDAY)
    assert told(plan) == [("a/draft", "Mon 18:00"), ("b/draft", "Mon 19:00"), ("a/revise", "Tue 18:00")]


def test_a_reader_has_days_without_taking_the_writers_hours() -> None:
    """A step that only waits has no sitting; what comes after it waits its days."""
    steps = [
        Step("a/draft", "a", "write", 120),
        Step("a/reader", "a", "a reader reads", 0, after=("a/draft",), rest_minutes=2 * 24 * 60),
        Step("a/proof", "a", "read the proof", 60, after=("a/reader",)),
    ]
    plan = plan_sittings(steps, [due_on("a", 9)], evenings(7), MONDAY)
    assert told(plan) == [("a/draft", "Mon 18:00"), ("a/proof", "Thu 18:00")]
    assert plan.unplaced == ()


def test_the_long_way_round_begins_early() -> None:
    """A paper with a reader's days before it is begun before one that is due earlier but has no waiting in it."""
    steps = [
        Step("long/draft", "long", "write", 120, rest_minutes=3 * 24 * 60),
        Step("long/proof", "long", "read the proof", 120, after=("long/draft",)),
        Step("short/draft", "short", "write", 120),
    ]
    plan = plan_sittings(steps, [due_on("short", 4), due_on("long", 5)], evenings(6), MONDAY)
    assert plan.lost == 0
    assert told(plan)[0] == ("long/draft", "Mon 18:00")


def test_a_book_to_be_fetched_is_waited_for_and_then_breaks_in() -> None:
    """A step that opens in mid-sitting, and is due first, breaks off the one that was begun."""
    steps = [
        Step("a/read", "a", "read the book", 60, earliest=MONDAY + 19 * HOUR),
        Step("b/draft", "b", "write", 120),
    ]
    plan = plan_sittings(steps, [due_on("a", 1), due_on("b", 4)], evenings(5), MONDAY)
    assert told(plan) == [("b/draft", "Mon 18:00"), ("a/read", "Mon 19:00"), ("b/draft", "Tue 18:00")]


def test_a_milestone_is_kept_though_the_paper_is_due_late() -> None:
    """A step with an hour of its own comes before a paper due in between."""
    steps = [
        Step("a/list", "a", "the list of sources", 120, due=MONDAY + DAY),
        Step("a/draft", "a", "write", 120, after=("a/list",)),
        Step("b/draft", "b", "write", 120),
    ]
    plan = plan_sittings(steps, [due_on("a", 9), due_on("b", 2)], evenings(5), MONDAY)
    assert told(plan)[0] == ("a/list", "Mon 18:00")
    assert plan.lost == 0


def test_of_two_papers_the_one_that_costs_less_is_late() -> None:
    """Where one must be late, it is the one whose mark weighs less, and it is late by no day more than it costs."""
    steps = [Step("a/draft", "a", "write", 120), Step("b/draft", "b", "write", 120)]
    plan = plan_sittings(steps, [due_on("a", 1, worth=1), due_on("b", 1.01, worth=3)], evenings(5), MONDAY)
    assert told(plan) == [("b/draft", "Mon 18:00"), ("a/draft", "Tue 18:00")]
    assert plan.lost == pytest.approx(0.1)


def test_what_is_lost_anyway_makes_room() -> None:
    """A paper that nobody will accept any more comes after those that can still be on time."""
    gone = PaperDue("gone", MONDAY - 9 * DAY, lambda _hour: 1.0)
    steps = [Step("gone/draft", "gone", "write", 120), Step("b/draft", "b", "write", 120)]
    plan = plan_sittings(steps, [gone, due_on("b", 1)], evenings(5), MONDAY)
    assert told(plan)[0] == ("b/draft", "Mon 18:00")
    assert plan.lost == 1


def test_papers_without_an_hour_come_last() -> None:
    """A paper of which no due hour is known, or that is not among the papers, waits for the others."""
    steps = [Step(f"{paper}/draft", paper, "write", 120) for paper in ("unknown", "open", "due")]
    papers = [PaperDue("open", None, lambda _hour: 0.0), due_on("due", 4)]
    plan = plan_sittings(steps, papers, evenings(5), MONDAY)
    assert told(plan)[0] == ("due/draft", "Mon 18:00")
    assert {step for step, _ in told(plan)} == {"unknown/draft", "open/draft", "due/draft"}


def test_no_sitting_is_longer_than_is_wanted() -> None:
    """A long stretch is parted, with a pause, however long the step is."""
    day = [Free(MONDAY + 9 * HOUR, MONDAY + 17 * HOUR)]
    plan = plan_sittings(
        [Step("a/draft", "a", "write", 240)], [due_on("a", 4)], day, MONDAY, longest_minutes=90, pause_minutes=15
    )
    assert told(plan) == [("a/draft", "Mon 09:00"), ("a/draft", "Mon 10:45"), ("a/draft", "Mon 12:30")]


def test_what_the_hours_do_not_hold_is_said() -> None:
    """A step begun but not ended is reported, and its paper has no hour."""
    plan = plan_sittings([Step("a/draft", "a", "write", 500)], [due_on("a", 2)], evenings(2), MONDAY)
    assert plan.unplaced == ("a/draft",)
    assert plan.ends == ()
    assert plan.lost == 1
    assert len(plan.sittings) == 2


def test_steps_in_a_ring_are_not_placed_and_hold_up_nothing_else() -> None:
    """Two steps that wait for each other are reported; the rest is planned."""
    steps = [
        Step("a/x", "a", "x", 10, after=("a/y",)),
        Step("a/y", "a", "y", 10, after=("a/x",)),
        Step("b/draft", "b", "write", 10, after=("done",)),
    ]
    plan = plan_sittings(steps, [due_on("a", 2), due_on("b", 2)], evenings(2), MONDAY)
    assert plan.unplaced == ("a/x", "a/y")
    assert told(plan) == [("b/draft", "Mon 18:00")]


def test_hours_are_told_in_the_writers_zone_across_a_change_of_clocks() -> None:
    """In the night when clocks go forward a rest is as many hours by the clock as it should be."""
    berlin = ZoneInfo("Europe/Berlin")
    saturday = dt.datetime(2031, 3, 29, 20, tzinfo=berlin)
    sunday = dt.datetime(2031, 3, 30, tzinfo=berlin)
    free = [Free(saturday, saturday.replace(hour=22)), Free(sunday.replace(hour=6), sunday.replace(hour=12))]
    steps = [Step("a/draft", "a", "write", 120, rest_minutes=9 * 60), Step("a/proof", "a", "p", 60, after=("a/draft",))]
    plan = plan_sittings(steps, [due_on("a", 90)], free, saturday)
    assert plan.sittings[1].start == sunday.replace(hour=8)
    assert plan.sittings[1].start.tzinfo is berlin


def in_hand(count: int, shift: int = 0) -> tuple[list[Step], list[PaperDue]]:
    """Papers of four steps each, one due each day or so."""
    steps = []
    for number in range(count):
        name = f"p{number}"
        sizes = (60 + 30 * (number * 7 % 4), 120, 60, 30)
        before: tuple[str, ...] = ()
        for part, minutes in zip(("read", "draft", "revise", "proof"), sizes, strict=True):
            rest = 480 if part == "draft" else 0
            steps.append(Step(f"{name}/{part}", name, part, minutes, after=before, rest_minutes=rest))
            before = (f"{name}/{part}",)
    return steps, [due_on(f"p{number}", 3 + shift + 2 * number) for number in range(count)]


def test_a_plan_that_is_kept_stays_as_it_is() -> None:
    """Planned again at the end of a sitting, when all was done as planned, what is left stands where it stood."""
    steps, papers = in_hand(6)
    plan = plan_sittings(steps, papers, evenings(40, 4), MONDAY)
    over = plan.sittings[9].end
    left = {step.id: step.minutes for step in steps}
    for sitting in plan.sittings[:10]:
        left[sitting.step] -= (sitting.end - sitting.start) // MINUTE
    rest = [replace(step, minutes=left[step.id]) for step in steps if left[step.id]]
    again = plan_sittings(rest, papers, evenings(40, 4), over, plan)
    assert again.sittings == plan.sittings[10:]


def test_one_step_more_moves_nothing_that_need_not_move() -> None:
    """A new step goes in where it is wanted; what comes before it stays, and the papers are ready in the same order."""
    steps, papers = in_hand(6)
    plan = plan_sittings(steps, papers, evenings(40, 4), MONDAY)
    more = [*steps, Step("p3/extra", "p3", "find one source more", 30)]
    again = plan_sittings(more, papers, evenings(40, 4), MONDAY, plan)
    assert again.unplaced == ()
    assert again.lost == plan.lost
    begun = [sitting.step for sitting in again.sittings].index("p3/extra")
    assert begun > 0
    assert again.sittings[:begun] == plan.sittings[:begun]
    assert sorted(dict(again.ends), key=dict(again.ends).__getitem__) == sorted(
        dict(plan.ends), key=dict(plan.ends).__getitem__
    )


def test_an_order_that_is_as_good_is_kept() -> None:
    """Two papers due at one hour stay in the order they had, whichever it was."""
    steps = [Step("a/draft", "a", "write", 120), Step("b/draft", "b", "write", 120)]
    papers = [due_on("a", 4), due_on("b", 4)]
    first = plan_sittings(steps, papers, evenings(5), MONDAY)
    other = replace(
        first,
        sittings=tuple(replace(one, step=two.step) for one, two in pairwise((*first.sittings, first.sittings[0]))),
    )
    assert told(plan_sittings(steps, papers, evenings(5), MONDAY, other)) == told(other) != told(first)


def test_a_former_order_gives_way_where_it_would_lose() -> None:
    """An hour that is brought forward takes its paper out of the former order."""
    steps, papers = in_hand(6)
    plan = plan_sittings(steps, papers, evenings(60, 4), MONDAY)
    sooner = [*papers[:4], due_on("p4", 4), papers[5]]
    again = plan_sittings(steps, sooner, evenings(60, 4), MONDAY, plan)
    assert again.lost == plan_sittings(steps, sooner, evenings(60, 4), MONDAY).lost == 0


@st.composite
def hands(draw: st.DrawFn) -> tuple[list[Step], list[PaperDue], list[Free]]:
    """Any papers, with any steps, in any hours."""
    count = draw(st.integers(1, 4))
    steps: list[Step] = []
    for number in range(draw(st.integers(0, 9))):
        after = draw(st.lists(st.sampled_from([step.id for step in steps]), max_size=2)) if steps else []
        steps.append(
            Step(
                f"s{number}",
                f"p{draw(st.integers(0, count))}",
                "does",
                draw(st.integers(0, 300)),
                after=tuple(after),
                rest_minutes=draw(st.sampled_from([0, 0, 480, 2880])),
                earliest=draw(st.none() | st.integers(-5, 200).map(lambda hours: MONDAY + hours * HOUR)),
                due=draw(st.none() | st.integers(-5, 200).map(lambda hours: MONDAY + hours * HOUR)),
                optional=draw(st.booleans()),
            )
        )
    papers = []
    for number in range(count):
        hour = draw(st.none() | st.integers(-50, 300).map(lambda hours: MONDAY + hours * HOUR))
        cost = by_the_day(hour, 0.2) if hour else (lambda _hour: 0.0)
        papers.append(PaperDue(f"p{number}", hour, cost, draw(st.sampled_from([0.0, 1.0, 2.5]))))
    free = [
        Free(MONDAY + start * MINUTE, MONDAY + (start + length) * MINUTE)
        for start, length in draw(st.lists(st.tuples(st.integers(-600, 9000), st.integers(-10, 400)), max_size=9))
    ]
    return steps, papers, free


def check_plan(plan: Plan, steps: Sequence[Step], free: Sequence[Free], longest: int) -> None:
    """No law of the plan is broken."""
    stretches: list[list[dt.datetime]] = []
    for one in sorted((max(one.start, MONDAY), one.end) for one in free if one.end > max(one.start, MONDAY)):
        if stretches and one[0] <= stretches[-1][1]:
            stretches[-1][1] = max(stretches[-1][1], one[1])
        else:
            stretches.append(list(one))
    for sitting in plan.sittings:
        assert sitting.start < sitting.end
        assert any(start <= sitting.start and sitting.end <= end for start, end in stretches)
        assert not longest or sitting.end - sitting.start <= longest * MINUTE
    for first, second in pairwise(plan.sittings):
        assert first.end <= second.start

    placed = dict.fromkeys((step.id for step in steps), 0)
    starts: dict[str, dt.datetime] = {}
    ends: dict[str, dt.datetime] = {}
    for sitting in plan.sittings:
        placed[sitting.step] += (sitting.end - sitting.start) // MINUTE
        starts.setdefault(sitting.step, sitting.start)
        ends[sitting.step] = sitting.end
    named = {step.id: step for step in steps}
    done = set(named) - set(plan.unplaced)
    for step in steps:
        assert placed[step.id] == step.minutes if step.id in done else placed[step.id] <= step.minutes
        if step.id in starts and step.earliest:
            assert starts[step.id] >= step.earliest
        for before in step.after:
            assert step.id not in done or before in done
            if step.id in starts and before in ends:
                assert starts[step.id] >= ends[before] + named[before].rest_minutes * MINUTE


@given(hands(), st.sampled_from([0, 45, 90]), st.integers(0, 30))
def test_no_law_of_the_plan_is_ever_broken(
    hand: tuple[list[Step], list[PaperDue], list[Free]], longest: int, pause: int
) -> None:
    """Sittings lie in free hours and apart; order, rests and openings hold; every minute is placed or reported."""
    steps, papers, free = hand
    plan = plan_sittings(steps, papers, free, MONDAY, longest_minutes=longest, pause_minutes=pause, effort=400)
    check_plan(plan, steps, free, longest)
    again = plan_sittings(steps, papers, free, MONDAY, plan, longest_minutes=longest, pause_minutes=pause, effort=400)
    check_plan(again, steps, free, longest)
    assert again.lost <= plan.lost + 1e-9


@given(hands())
def test_a_plan_is_the_same_each_time(hand: tuple[list[Step], list[PaperDue], list[Free]]) -> None:
    """Nothing in a plan is left to chance, nor to the order in which the papers are named."""
    steps, papers, free = hand
    plan = plan_sittings(steps, papers, free, MONDAY, effort=400)
    assert plan_sittings(steps, papers, free, MONDAY, effort=400) == plan


@given(hands())
def test_a_former_plan_is_kept_when_nothing_has_changed(hand: tuple[list[Step], list[PaperDue], list[Free]]) -> None:
    """Planned twice from the same hour, the plan is the same."""
    steps, papers, free = hand
    plan = plan_sittings(steps, papers, free, MONDAY, effort=400)
    if not plan.unplaced:
        assert plan_sittings(steps, papers, free, MONDAY, plan, effort=400).sittings == plan.sittings


def test_nothing_is_begun_for_a_few_minutes_at_the_end_of_a_session() -> None:
    """It waits for the next session where that costs nothing; where each minute counts, each is used."""
    steps = [Step("a/first", "a", "read", 50), Step("a/second", "a", "write", 55, after=("a/first",))]
    plan = plan_sittings(steps, [due_on("a", 3)], evenings(2, 1), MONDAY)
    assert told(plan) == [("a/first", "Mon 18:00"), ("a/second", "Tue 18:00")]
    plan = plan_sittings(steps, [due_on("a", 1.78125)], evenings(2, 1), MONDAY)  # Tuesday, a quarter to seven
    assert [one.step for one in plan.sittings] == ["a/first", "a/second", "a/second"]
    assert plan.lost == 0.0
