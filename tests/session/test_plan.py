"""The plan of a desk on disk, and what is said of its steps."""

from __future__ import annotations

import datetime as dt
from pathlib import Path

import pytest

from fairhand.errors import NoSuchStep
from fairhand.planning.pace import read_log
from fairhand.session.schedule.plan import (
    kept_desk_plan,
    list_plan_problems,
    plan_calendar,
    plan_desk,
    read_former,
    tell_plan,
)
from fairhand.session.schedule.standings import read_standing
from fairhand.session.schedule.steps_done import end_step, find_said, find_step, list_said, take_back

AT = dt.datetime(2027, 2, 8, 12, tzinfo=dt.UTC)
PAPER = "tram-libraries"


def make_paper(desk: Path, name: str, sheet: str, **files: str) -> Path:
    """A paper's folder made by hand."""
    folder = desk / name
    folder.mkdir(parents=True)
    (folder / "brief.txt").write_text(sheet, "utf-8")
    for file, text in files.items():
        (folder / file.replace("_", ".")).write_text(text, "utf-8")
    return folder


@pytest.fixture
def desk(tmp_path: Path) -> Path:
    """A desk with two papers, one of them about to be due."""
    hours = '[hours]\nmonday = "9-13, 14-18"\ntuesday = 8\nthursday = "9-17"\nfrom = "9:00"\n'
    (tmp_path / "desk.toml").write_text(f'name = "Ingrid Å"\ntime_zone = "Europe/Oslo"\n{hours}', "utf-8")
    sheet = (
        "Write an essay of 1,000 to 1,200 words. Do not use any sources. Due: Friday, February 19, 2027, by 4:00 p.m."
    )
    make_paper(tmp_path, "ferries", sheet, draft_md="# Ferries\n\n" + "The ferry came at nine. " * 60)
    sheet = "Write a paper of 8 pages in MLA style, double-spaced. Cite at least five sources. Due 26 February 2027."
    make_paper(tmp_path, "weirs", f"{sheet} The annotated bibliography is due 15 February 2027.")
    return tmp_path


def test_steps_come_from_the_sheet_and_the_state(desk: Path) -> None:
    """No sources are asked: nothing is read. Pages are words by the trade's rate; pieces have their hours."""
    made = plan_desk(desk, AT)
    ferries = [step.partition("/")[2] for step in made.steps if step.startswith("ferries/")]
    assert ferries == ["draft", "revision", "reader-1", "copy-edit", "proof", "final-reading", "hand-in"]
    assert made.steps["ferries/draft"].why == "699 of 1,000 words are still to be written."
    weirs = read_standing(desk / "weirs", made.now)
    assert weirs is not None
    assert (weirs.words_asked, weirs.sources_asked, weirs.sources_missing) == (2000, 5, 5)
    assert made.steps["weirs/annotated-bibliography"].due is not None
    assert made.hours.minutes_a_week == 24 * 60


def test_what_was_read_is_kept_until_a_file_changes(desk: Path) -> None:
    """A plan that is known is there at once; after a change it is made anew."""
    assert kept_desk_plan(desk, AT) is None
    first = plan_desk(desk, AT)
    kept = kept_desk_plan(desk, AT)
    assert kept is not None
    assert kept.plan == first.plan
    (desk / "ferries" / "draft.md").write_text("Nothing yet.", "utf-8")
    assert kept_desk_plan(desk, AT) is None


def test_a_step_is_asked_for_once_with_the_planned_time_filled_in(desk: Path) -> None:
    """It is kept in the paper's log; half of it written, the whole is still what it was planned with."""
    plan_desk(desk, AT)
    whole = find_step(desk, "ferries/draft", AT)
    (desk / "ferries" / "draft.md").write_text("The ferry came at nine. " * 190, "utf-8")
    asked = find_step(desk, "ferries/draft", AT)
    assert asked.step.minutes < whole.planned_minutes == asked.planned_minutes
    assert asked.usual_minutes == 120
    assert end_step(asked, 150, at=AT) == "Write the draft: done."
    assert "ferries/draft" not in plan_desk(desk, AT).steps
    log, _ = read_log((desk / "ferries" / "time.jsonl").read_text("utf-8"))
    assert (log[0].step, log[0].took_minutes, log[0].when) == ("draft", 150, "2027-02-08T13:00:00+01:00")


def test_what_was_said_is_taken_back(desk: Path) -> None:
    """The step is planned again."""
    end_step(find_step(desk, "ferries/draft", AT), None, at=AT)
    assert find_said(desk, "ferries/draft") == (desk / "ferries", "draft")
    assert take_back(desk / "ferries", "draft") == "draft: taken back."
    assert list_said(desk / "ferries") == ()
    assert "ferries/draft" in plan_desk(desk, AT).steps
    with pytest.raises(NoSuchStep):
        take_back(desk / "ferries", "draft")


def test_a_step_is_named_as_shortly_as_it_can_be(desk: Path) -> None:
    """In its paper's folder by its own name; where several fit, they are named."""
    assert find_step(desk / "ferries", "proof", AT).step.id == "ferries/proof"
    assert find_step(desk, "annot", AT).step.id == "weirs/annotated-bibliography"
    with pytest.raises(NoSuchStep, match="ferries/proof, weirs/proof"):
        find_step(desk, "proof", AT)
    with pytest.raises(NoSuchStep, match="no one step is called that"):
        find_step(desk, "sing", AT)


def test_the_pace_is_learnt_over_all_papers(desk: Path) -> None:
    """Five steps are enough."""
    for paper, steps in {"ferries": ["draft", "revision", "copy-edit"], "weirs": ["jottings", "focus"]}.items():
        for step in steps:
            asked = find_step(desk, f"{paper}/{step}", AT)
            end_step(asked, 2 * asked.usual_minutes, at=AT)
    pace = plan_desk(desk, AT).pace
    assert (pace.likely, pace.safe, pace.is_own) == (2.0, 2.0, True)


def test_a_broken_sheet_a_broken_log_and_a_broken_plan_stop_nothing(desk: Path) -> None:
    """Each is told, and the rest is planned."""
    plan_desk(desk, AT)
    for kept in (desk / ".fairhand" / "answers").iterdir():
        kept.write_bytes(b"broken")
    (desk / "weirs" / "brief.txt").unlink()
    (desk / "weirs" / "brief.pdf").write_bytes(b"%PDF-no")
    (desk / "ferries" / "time.jsonl").write_text("no log\n", "utf-8")
    (desk / "weirs" / "paper.toml").write_text("[plan]\nreaders = 99\n", "utf-8")
    assert read_former(desk) is None
    assert plan_desk(desk, AT).first is not None
    assert [problem.where for problem in list_plan_problems(desk)] == ["ferries/time.jsonl, line 1", "plan, readers"]


def test_the_plan_is_told_to_other_programs(desk: Path) -> None:
    """As plain values, and as a calendar."""
    made = plan_desk(desk, AT)
    told = tell_plan(made)
    assert told["sittings"][0]["paper"] in {"Ferries", "weirs"}
    assert told["pace"] == {"likely": 1.64, "safe": None, "steps": 0}
    assert plan_calendar(desk, made).count(b"BEGIN:VEVENT") == len(made.plan.sittings) + 2


def test_a_paper_that_stands_alone_is_planned_too(desk: Path) -> None:
    """Without a desk, by the hours that are assumed."""
    (desk / "desk.toml").unlink()
    made = plan_desk(desk / "ferries", AT)
    assert not made.hours.stated
    assert "ferries/draft" in made.steps
