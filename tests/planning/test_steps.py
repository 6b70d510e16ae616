"""The steps of a paper: what its sheet and its state ask for, and nothing else."""

from __future__ import annotations

import datetime as dt
from dataclasses import replace
from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from fairhand.planning.pace import Logged, Pace
from fairhand.planning.stages import MILESTONES, STAGES
from fairhand.planning.standing import Milestone, Standing, Unread, Wishes, read_wishes
from fairhand.planning.steps import NIGHT, list_hours, list_steps

USUAL = Pace(1.0)
DUE = dt.datetime(2027, 3, 5, 16, tzinfo=dt.UTC)
DAY = dt.timedelta(days=1)
NEW = Standing("tide-mills", "Tide Mills", sources_asked=4, words_asked=2000, due=DUE)
WRITTEN = replace(NEW, words_written=2100, sources_there=4, has_focus=True)

STANDINGS = st.builds(
    Standing,
    paper=st.just("p"),
    has_sheet=st.booleans(),
    questions=st.integers(0, 9),
    asks_for_sources=st.booleans(),
    sources_asked=st.integers(0, 9),
    sources_there=st.integers(0, 9),
    sources_for_points=st.integers(0, 9),
    unread=st.lists(st.builds(Unread, st.sampled_from("abc"), st.just("A"), st.integers(0, 10**6)), max_size=3).map(
        lambda those: tuple({one.id: one for one in those}.values())
    ),
    has_jottings=st.booleans(),
    has_focus=st.booleans(),
    words_asked=st.integers(0, 9000),
    words_written=st.integers(0, 9000),
    findings=st.dictionaries(st.sampled_from(["revision", "copy-edit"]), st.integers(0, 99)),
    due=st.none() | st.just(DUE),
    milestones=st.lists(
        st.builds(Milestone, st.sampled_from([*MILESTONES, "poster"]), st.integers(-9, 9).map(lambda n: DUE + n * DAY)),
        max_size=4,
        unique_by=lambda one: one.what,
    ).map(tuple),
    no_readers=st.booleans(),
    readers_until=st.lists(st.dates(dt.date(2027, 2, 1), dt.date(2027, 4, 1)), max_size=3).map(tuple),
    wishes=st.builds(Wishes, readers=st.integers(0, 3), readers_asked=st.booleans()),
    log=st.lists(
        st.builds(
            Logged,
            st.sampled_from([*STAGES, "read-a", "reader-1"]),
            left_minutes=st.sampled_from([0, 0, 40]),
            left_out=st.booleans(),
            when=st.sampled_from(["", "2027-02-08T18:00:00+01:00", "yesterday", "9999-12-31T23:00:00+00:00"]),
        ),
        max_size=4,
    ).map(tuple),
)


def names(standing: Standing, *, pressed: bool = False) -> list[str]:
    """The steps' own names."""
    return [step.id.partition("/")[2] for step in list_steps(standing, USUAL, pressed=pressed)]


def test_a_new_paper_has_every_stage_once() -> None:
    """From the jottings to the hand-in, each after the one before."""
    steps = list_steps(NEW, USUAL)
    assert names(NEW) == [
        *("jottings", "focus", "sources", "read-found", "draft", "revision", "reader-1", "copy-edit", "proof"),
        *("final-reading", "hand-in"),
    ]
    for earlier, later in pairwise(steps):
        assert later.after == ((earlier.id,) if later.name != "write the draft" else ("tide-mills/sources", earlier.id))


def test_where_no_sources_are_asked_nothing_is_read() -> None:
    """Not even what is listed."""
    standing = replace(NEW, asks_for_sources=False, sources_for_points=3, unread=(Unread("lind-2019", "Lind (2019)"),))
    assert not [name for name in names(standing) if name.startswith(("read-", "sources"))]


def test_what_is_written_is_not_planned_again() -> None:
    """A draft of its length is revised; of half its length, half is to be written."""
    assert names(WRITTEN)[:2] == ["revision", "reader-1"]
    half = next(step for step in list_steps(replace(WRITTEN, words_written=1000), USUAL) if step.id.endswith("/draft"))
    assert half.minutes == 175  # 1,000 words at 350 an hour, in fives
    assert half.why == "1,000 of 2,000 words are still to be written."


def test_minutes_are_those_of_the_usual_paces() -> None:
    """Silent reading of 7,140 words at 238 a minute, with notes: an hour; proof of 2,100 at 1,750 an hour."""
    standing = replace(WRITTEN, unread=(Unread("a", "Amdal (1999)", 7140), Unread("b", "Berg (2001)", 10**6)))
    minutes = {step.id.partition("/")[2]: step.minutes for step in list_steps(standing, USUAL)}
    assert (minutes["read-a"], minutes["read-b"]) == (60, 180)
    assert (minutes["revision"], minutes["copy-edit"], minutes["proof"]) == (170, 105, 75)
    assert minutes["final-reading"] == 15


def test_the_writers_pace_multiplies_the_usual_minutes() -> None:
    """Both are kept: the log is held against the usual ones."""
    step = next(step for step in list_steps(WRITTEN, Pace(1.5, 2.0, 9)) if step.id.endswith("/proof"))
    assert (step.usual_minutes, step.minutes, step.safe_minutes) == (75, 110, 145)


def test_a_night_lies_between_writing_and_revising_unless_time_is_short() -> None:
    """And before the proof."""
    rests = {step.id.partition("/")[2]: step.rest_minutes for step in list_steps(NEW, USUAL)}
    assert {name: rest for name, rest in rests.items() if rest} == {
        "draft": NIGHT,
        "reader-1": 2 * 24 * 60,
        "copy-edit": NIGHT,
    }
    assert not any(step.rest_minutes for step in list_steps(NEW, USUAL, pressed=True))
    assert "reader-1" not in names(NEW, pressed=True)
    asked = replace(NEW, wishes=Wishes(readers=2, readers_asked=True))
    assert [name for name in names(asked, pressed=True) if "reader" in name] == ["reader-1", "reader-2"]


def test_the_night_holds_where_the_step_before_is_done_already() -> None:
    """What was copy-edited at eight in the evening is not read as a proof before eight the next morning."""
    log = (Logged("revision"), Logged("reader-1", left_out=True), Logged("copy-edit", when="2027-02-08T20:00:00+00:00"))
    standing = replace(WRITTEN, log=log)
    proof = list_steps(standing, USUAL)[0]
    assert proof.earliest == dt.datetime(2027, 2, 9, 8, tzinfo=dt.UTC)
    assert list_steps(standing, USUAL, pressed=True)[0].earliest is None


def test_of_a_step_that_is_begun_what_is_left_is_planned() -> None:
    """As the writer said it, without any correction."""
    standing = replace(WRITTEN, log=(Logged("revision", 60, 280, 170, left_minutes=100),))
    first = list_steps(standing, Pace(1.64))[0]
    assert (first.minutes, first.usual_minutes) == (100, 170)


def test_a_paper_that_was_handed_in_has_no_steps() -> None:
    """But for what is due after it."""
    talk = Milestone("presentation", DUE + 3 * DAY)
    standing = replace(WRITTEN, milestones=(talk,), log=(Logged("hand-in"),))
    assert names(standing) == ["presentation"]


def test_a_piece_due_after_the_paper_does_not_make_the_paper_late() -> None:
    """It is handed in by itself; one due before stands among the paper's own steps, with its hour."""
    talk, plan = Milestone("presentation", DUE + 3 * DAY), Milestone("outline", DUE - 9 * DAY)
    standing = replace(NEW, milestones=(talk, plan))
    steps = {step.id: step for step in list_steps(standing, USUAL)}
    assert steps["tide-mills/presentation"].paper == "tide-mills/presentation"
    assert steps["tide-mills/outline"].due == DUE - 9 * DAY
    assert steps["tide-mills/draft"].after == ("tide-mills/sources", "tide-mills/read-found")
    assert list_hours(standing)[1] == ("tide-mills/presentation", "Tide Mills: presentation", DUE + 3 * DAY)


def test_a_book_that_is_still_to_be_fetched_is_not_read_before() -> None:
    """``[plan]`` of the paper names the day."""
    wishes, problems = read_wishes(
        {"not_before": {"read-lind-2019": dt.date(2027, 2, 20), "draft": "soon"}, "worth": 2}
    )
    standing = replace(NEW, unread=(Unread("lind-2019", "Lind (2019)"),), wishes=wishes)
    step = next(step for step in list_steps(standing, USUAL) if step.id.endswith("lind-2019"))
    assert step.earliest == dt.datetime(2027, 2, 20, tzinfo=dt.UTC)
    assert [problem.where for problem in problems] == ["paper.toml, plan, not_before, draft"]


@given(STANDINGS, st.booleans())
def test_no_two_steps_share_an_id_and_none_waits_for_a_later_one(standing: Standing, pressed: bool) -> None:
    """Each says why it is there, and how long it takes."""
    seen: set[str] = set()
    for step in list_steps(standing, Pace(1.64), pressed=pressed):
        assert step.id not in seen
        assert set(step.after) <= seen
        assert step.name
        assert step.why
        assert step.minutes > 0
        assert step.usual_minutes > 0
        seen.add(step.id)


def test_a_reader_who_has_it_is_no_step_and_is_waited_for() -> None:
    """Until the day on which it is due back; one who is still to be asked comes after."""
    out = replace(WRITTEN, readers_until=(dt.date(2027, 2, 20),))
    assert "reader-1" not in names(out)
    after = next(step for step in list_steps(out, Pace(1.0), zone=dt.UTC) if step.id.endswith("/copy-edit"))
    assert after.earliest == dt.datetime(2027, 2, 20, tzinfo=dt.UTC)
    two = replace(out, wishes=Wishes(readers=2))
    assert "reader-2" in names(two)
