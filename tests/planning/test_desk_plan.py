"""The plan over all papers of a desk."""

from __future__ import annotations

import datetime as dt
from dataclasses import replace
from itertools import pairwise

from hypothesis import given, settings
from hypothesis import strategies as st

from fairhand.model.late_rule import LateRule, Tier
from fairhand.planning.desk_plan import DeskPlan, make_desk_plan
from fairhand.planning.hours import ASSUMED, Hours
from fairhand.planning.pace import Logged, Pace
from fairhand.planning.plan_words import NO_HOURS, NOTHING_LEFT, say_late, say_now, say_passed
from fairhand.planning.standing import Milestone, Standing, Wishes

MONDAY = dt.datetime(2027, 2, 8, 12, tzinfo=dt.UTC)
DAY = dt.timedelta(days=1)
HOUR = dt.timedelta(hours=1)
FIVE_A_DAY = LateRule((Tier(5),), "points")


def written(name: str, due: dt.datetime | None, words: int = 1200) -> Standing:
    """A paper whose draft is there and whose sources are read."""
    return Standing(
        name, name.title(), words_asked=words, words_written=words, due=due, late=FIVE_A_DAY, has_focus=True
    )


def make(
    *standings: Standing, now: dt.datetime = MONDAY, hours: Hours = ASSUMED, before: DeskPlan | None = None
) -> DeskPlan:
    """The plan at the usual pace."""
    return make_desk_plan(standings, hours, Pace(1.0), now, before.plan if before else None, 2000)


def test_the_paper_due_first_goes_first_and_one_without_a_date_comes_last() -> None:
    """Though it was begun first."""
    made = make(written("locks", None), written("mills", MONDAY + 9 * DAY), written("seals", MONDAY + 6 * DAY))
    assert made.first is not None
    assert made.title_of(made.first.step) == "Seals"
    ends = dict(made.plan.ends)
    assert ends["seals"] <= MONDAY + 6 * DAY
    assert ends["mills"] <= MONDAY + 9 * DAY
    assert ends["locks"] >= ends["mills"]
    assert (made.late, made.pressed, made.passed) == ((), frozenset(), ())


def test_where_time_is_short_nights_and_unasked_readers_go_before_the_paper_is_late() -> None:
    """A reader whom the writer asked for stays, and the paper is late by the reader's days."""
    soon = written("seals", MONDAY + 1.5 * DAY, 500)
    made = make(soon)
    assert made.pressed == {"seals"}
    assert made.late == ()
    assert "seals/reader-1" not in made.steps
    asked = make(replace(soon, wishes=Wishes(readers=1, readers_asked=True)))
    assert "seals/reader-1" in asked.steps
    assert [one.paper for one in asked.late] == ["seals"]


def test_what_does_not_fit_is_told_with_its_cost_and_working() -> None:
    """By the sheet's rule; where it has none, the assumption is said."""
    made = make(written("seals", MONDAY + 7 * HOUR))
    assert say_late(made.late[0]) == (
        "“Seals” is due Monday 8 February, 19:00, and will be ready Wednesday 10 February, 18:05. 2 days late, 5 points"
        " each: 70 becomes 60."
    )
    bare = make(replace(written("seals", MONDAY + 7 * HOUR), late=None))
    assert "the sheet states no rule" in say_late(bare.late[0])


def test_a_milestone_that_cannot_be_met_is_told_by_its_name() -> None:
    """It costs nothing that is known, and is not kept silent."""
    outline = Milestone("outline", MONDAY + 1 * HOUR)
    made = make(Standing("mills", "Mills", words_asked=900, due=MONDAY + 30 * DAY, milestones=(outline,)))
    assert [one.title for one in made.late] == ["Mills: outline"]


def test_a_sitting_under_way_is_not_put_off() -> None:
    """At half past six the plan still has what began at six; when the step is called done, the next one begins."""
    paper = written("seals", MONDAY + 9 * DAY)
    before = make(paper)
    assert before.first is not None
    later = before.first.start + HOUR / 2
    made = make(paper, now=later, before=before)
    assert made.first == before.first
    assert say_now(made).lasts == "1 hour"
    assert say_now(made).when == "until 19:30"
    done = replace(paper, log=(Logged("revision", 30, 100, 100, when=later.isoformat()),))
    after = make(done, now=later, before=before)
    assert after.first is not None
    assert (after.first.step, after.first.start) == ("seals/reader-1", later)


def test_a_missed_sitting_is_not_counted() -> None:
    """The plan begins from now, in the same order."""
    papers = [written("seals", MONDAY + 12 * DAY), written("mills", MONDAY + 14 * DAY)]
    before = make(*papers)
    made = make(*papers, now=MONDAY + DAY, before=before)
    assert list(dict.fromkeys(one.step for one in made.plan.sittings)) == list(
        dict.fromkeys(one.step for one in before.plan.sittings)
    )
    assert made.late == ()


def test_a_paper_long_past_is_over_and_one_just_past_is_asked_about() -> None:
    """Whether it was handed in only the writer can say; until then it is planned first."""
    made = make(
        written("old", MONDAY - 15 * DAY), written("seals", MONDAY - 2 * DAY), written("mills", MONDAY + 9 * DAY)
    )
    assert made.passed == (("seals", MONDAY - 2 * DAY),)
    assert not [step for step in made.steps if step.startswith("old/")]
    assert say_passed("Seals", MONDAY) == "“Seals” was due Monday 8 February, 12:00. Was it handed in?"
    handed_in = replace(written("seals", MONDAY - 2 * DAY), log=(Logged("hand-in"),))
    assert make(handed_in).passed == ()
    assert say_now(make(handed_in)).does == NOTHING_LEFT


def test_without_hours_nothing_is_placed_and_it_is_said() -> None:
    """One sentence."""
    assert str(say_now(make(written("seals", MONDAY + 9 * DAY), hours=Hours()))) == NO_HOURS


@settings(max_examples=40)
@given(
    st.lists(
        st.builds(
            lambda name, due, words, wrote, log: Standing(
                name,
                name,
                words_asked=words,
                words_written=wrote,
                sources_asked=2,
                due=None if due is None else MONDAY + due * HOUR,
                late=FIVE_A_DAY,
                log=tuple(log),
            ),
            st.sampled_from(["a", "b", "c", "d"]),
            st.none() | st.integers(-500, 800),
            st.integers(0, 3000),
            st.integers(0, 3000),
            st.lists(
                st.sampled_from([Logged("revision"), Logged("draft"), Logged("proof", left_minutes=20)]), max_size=2
            ),
        ),
        max_size=4,
        unique_by=lambda one: one.paper,
    ),
    st.integers(0, 60 * 48),
)
def test_every_step_is_placed_or_said_not_to_be(standings: list[Standing], minutes: int) -> None:
    """In order, none upon another, none before now, all within the hours."""
    now = MONDAY + dt.timedelta(minutes=minutes)
    made = make(*standings, now=now)
    placed = {one.step for one in made.plan.sittings}
    assert placed | set(made.plan.unplaced) == set(made.steps)
    assert all(one.end <= other.start for one, other in pairwise(made.plan.sittings))
    assert all(one.start >= now for one in made.plan.sittings)
    assert str(say_now(made))
    again = make(*standings, now=now, before=made)
    assert again.plan.sittings == made.plan.sittings
