"""``fairhand plan``: what to do when, over all papers."""

from __future__ import annotations

import datetime as dt
import json
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import click

from fairhand.cli.exit_codes import NOT_READY, READY
from fairhand.cli.places import NOON, typed
from fairhand.cli.screen import say, say_rows, title

if TYPE_CHECKING:
    from fairhand.model.problem import Problem
    from fairhand.planning.desk_plan import DeskPlan

WEEK = 7


@click.command("plan")
@click.argument("desk", type=click.Path(path_type=Path, exists=True, file_okay=False), default=".")
@click.option("--now", "only_now", is_flag=True, help="Print one line: what to do now, for how long, and why.")
@click.option("--all", "show_all", is_flag=True, help="Show every day, not only the coming week.")
@click.option("--json", "as_json", is_flag=True, help="Print the plan for other programs.")
@click.option(
    "--ics", type=click.Path(path_type=Path, dir_okay=False), help="Write sittings and due hours as iCalendar."
)
@click.option("--on", "at", type=NOON, help="Plan as from that day's noon, not from this hour.")
def command(desk: Path, only_now: bool, show_all: bool, as_json: bool, ics: Path | None, at: dt.datetime | None) -> int:
    """Show what to do when, over all papers on the desk at DESK (here, if none is named).

    The hours are those of desk.toml. Ends with 1 where something will not be ready in time.
    """
    from fairhand.planning.plan_words import say_now
    from fairhand.session.schedule.plan import list_plan_problems, plan_desk, tell_plan, write_plan_calendar

    made = plan_desk(desk, at, keep=at is None)
    if ics is not None:
        write_plan_calendar(desk, made, ics)
        say(f"Written to {ics}.")
    elif as_json:
        click.echo(json.dumps(tell_plan(made, list_plan_problems(desk)), ensure_ascii=False, indent=1))
    elif only_now:
        click.echo(str(say_now(made)))
    else:
        _show(desk, made, list_plan_problems(desk), show_all=show_all)
    return NOT_READY if made.late else READY


def _show(desk: Path, made: DeskPlan, problems: Sequence[Problem], *, show_all: bool) -> None:
    from fairhand.planning.plan_words import say_day, say_grounds, say_hour, say_now

    title("The plan", say_hour(made.now))
    say()
    say(f"Now. {say_now(made)}")
    _show_what_does_not_fit(desk, made)
    for day, sittings in made.days().items():
        if show_all or (day - made.now.date()).days < WEEK:
            say()
            say(say_day(day))
            say_rows(
                (f"{one.start:%H:%M}–{one.end:%H:%M}", f"{made.title_of(one.step)}: {made.steps[one.step].name}")
                for one in sittings
            )
    ready = dict(made.plan.ends)
    if not made.titles:
        say("Begin one: fairhand new TITLE --brief FILE")
    if made.papers:
        say()
        say("Due")
        say_rows(
            (
                say_hour(paper.due) if paper.due else "no date yet",
                f"{paper.title}{f', ready {say_hour(ready[paper.paper])}' if paper.paper in ready else ''}",
            )
            for paper in made.papers
        )
    for problem in problems:
        say()
        say(f"Note. {problem}.")
    say()
    if made.first:
        say(f"When it is done: {done_with(desk, made.first.step)}")
    say(say_grounds(made))
    if not made.hours.stated:
        say('Set them in the page (fairhand open, Hours), or in desk.toml: [hours], then monday = "17:00-20:00".')


def done_with(place: Path, step: str) -> str:
    """How it is said, from where one stands, that a step is done."""
    from fairhand.desk.places import desk_of

    paper, _, name = step.partition("/")
    return f"fairhand done{typed(desk_of(place) / paper)} {name}"


def _show_what_does_not_fit(desk: Path, made: DeskPlan) -> None:
    from fairhand.planning.desk_plan import list_ways_out, short_of
    from fairhand.planning.plan_words import say_late, say_passed, say_short, say_way

    for paper, due in made.passed:
        say()
        say(f"{say_passed(made.titles[paper], due)} If it was: {done_with(desk, f'{paper}/hand-in')}")
    if made.late:
        say()
        say("What does not fit")
        for one in made.late:
            say(say_late(one), 2, 4)
        say(say_short(short_of(made)), 2, 4)
        say("Ways out, the cheapest first")
        for way in list_ways_out(made):
            say(say_way(way), 2, 4)
