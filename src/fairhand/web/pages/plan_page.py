"""The plan: what to do when, over all papers and for one; steps called done, left out, and taken back."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from starlette.responses import Response

from fairhand.errors import FairhandError
from fairhand.language.counts import say_minutes
from fairhand.model.plan import Sitting, Step
from fairhand.planning.desk_plan import DeskPlan, list_ways_out, short_of
from fairhand.planning.pace import Logged
from fairhand.planning.plan_words import (
    say_day,
    say_grounds,
    say_hour,
    say_late,
    say_now,
    say_passed,
    say_short,
    say_way,
    say_when,
)
from fairhand.session.schedule.plan import kept_desk_plan, list_plan_problems, plan_calendar, plan_desk
from fairhand.session.schedule.steps_done import Asked as Ending
from fairhand.session.schedule.steps_done import end_step, find_step, first_planned, list_said, take_back
from fairhand.web.asked import Asked, address, get, post
from fairhand.web.error_pages import page_of
from fairhand.web.safety import POLICY_OF_FILE, write_policy

WEEK = 7
LEAVES_OF_STEPS = {
    "sheet": "brief",
    "jottings": "jottings",
    "focus": "focus",
    "sources": "sources",
    "read": "sources",
    "draft": "draft",
    "revision": "revision",
    "copy-edit": "copy-edit",
    "proof": "fair-copy",
    "final-reading": "fair-copy",
    "hand-in": "verdict",
}
"""The page on which a step is worked at, by its name or its name's beginning; the paper's plan, where it has none."""


@dataclass(frozen=True)
class Open:
    """One step of a paper that is still to be done."""

    step: Step
    lasts: str
    when: str
    """Its first sitting, in words; or that there is no room for it."""
    planned_minutes: int
    where: str
    """The address of the page on which it is worked at."""


def show(asked: Asked) -> Response:
    """Every paper's sittings, by day; what does not fit only where something does not."""
    made = plan_desk(asked.papers.desk, asked.papers.at)
    every = asked.query("every") == "yes"
    days = [(day, these) for day, these in made.days().items() if every or (day - made.now.date()).days < WEEK]
    return asked.page(
        "plan_page.html",
        title="Plan",
        made=made,
        planned=first_planned(asked.papers.desk, made.steps[made.first.step]).planned_minutes if made.first else 0,
        days=days,
        more=len(days) < len(made.days()),
        every=every,
        problems=list_plan_problems(asked.papers.desk),
        passed=[(paper, say_passed(made.titles[paper], due)) for paper, due in made.passed],
        ready=dict(made.plan.ends),
        say_day=say_day,
        say_hour=say_hour,
        grounds=say_grounds(made),
        state=asked.papers.state(),
        changes="/changes",
        **about_now(made),
        **about_fitting(made, ways=True),
    )


def show_paper(asked: Asked, *, fault: str = "", status: int = 200) -> Response:
    """One paper's steps in order, each with its minutes, its hour and its reason, and what was said of others."""
    made = plan_desk(asked.papers.desk, asked.papers.at)
    folder, slug = asked.paper.folder, asked.name("slug")
    steps = [step for step in made.steps.values() if step.id.partition("/")[0] == slug]
    firsts: dict[str, Sitting] = {}
    for sitting in made.plan.sittings:
        firsts.setdefault(sitting.step, sitting)
    ready = dict(made.plan.ends).get(slug)
    return asked.page(
        "paper_plan_page.html",
        status=status,
        title="Plan",
        step=_sum_up(steps, say_hour(ready) if ready else ""),
        fault=fault,
        steps=[_open(folder, step, firsts.get(step.id), made) for step in steps],
        said=[(one, _tell_said(one)) for one in list_said(folder)],
        here=asked.to("plan"),
        late=[say_late(one) for one in made.late if one.paper.partition("/")[0] == slug],
        grounds=say_grounds(made),
    )


def send(asked: Asked) -> Response:
    """A step called done, begun, left out, or what was said of it taken back; the page again."""
    form, folder = asked.form, asked.paper.folder
    name = form.text("step")
    try:
        if form.text("do") == "back":
            take_back(folder, name)
        else:
            _end(asked, find_step(folder, f"{folder.name}/{name}", asked.papers.at))
    except FairhandError as error:
        return show_paper(asked, fault=str(error), status=page_of(error)[0])
    return asked.go("/plan" if form.has("desk") else asked.to("plan"))


def hand_out(asked: Asked) -> Response:
    """Sittings and due hours as a file for calendars."""
    made = plan_desk(asked.papers.desk, asked.papers.at)
    headers = {
        "content-disposition": "attachment; filename=plan.ics",
        "content-security-policy": write_policy(POLICY_OF_FILE),
    }
    return Response(plan_calendar(asked.papers.desk, made), media_type="text/calendar; charset=utf-8", headers=headers)


def about_now(made: DeskPlan | None) -> dict[str, Any]:
    """What the sentence is made of that says what to do now."""
    if made is None:
        return {"now": None}
    now = say_now(made)
    begun = made.first is not None and made.first.start <= made.now
    return {"now": now, "begun": begun, "where": _where(now.step) if now.step else ""}


def about_fitting(made: DeskPlan | None, *, ways: bool = False) -> dict[str, Any]:
    """What does not fit, in sentences; nothing where everything does."""
    late = [say_late(one) for one in made.late] if made else []
    if made is None or not late or not ways:
        return {"late": late}
    return {"late": late, "short": say_short(short_of(made)), "ways": [say_way(way) for way in list_ways_out(made)]}


def known_plan(asked: Asked) -> DeskPlan | None:
    """The plan, where it is known and nothing need be read for it."""
    return kept_desk_plan(asked.papers.desk, asked.papers.at)


def _end(asked: Asked, ending: Ending) -> None:
    form, what = asked.form, asked.form.text("do")
    left = _minutes(form.text("left")) if what == "left" else 0
    if what == "left" and not left:
        message = "Say how many minutes of it are left, as a whole number; or call it done."
        raise FairhandError(message)
    took = _minutes(form.text("minutes"))
    if what == "left" and took == ending.planned_minutes:
        took = None  # the field was filled in for the end of the step, and nobody changed it
    end_step(ending, took, left_minutes=left or 0, leave_out=what == "out", at=asked.papers.at)


def _minutes(written: str) -> int | None:
    """Minutes as they were written; None where nothing was.

    Raises:
        FairhandError: It is no number of minutes.
    """
    if not written:
        return None
    if not written.isascii() or not written.isdigit() or len(written) > 5:
        message = f"“{written}” is no number of minutes; write it as 90, or leave it empty"
        raise FairhandError(message)
    return int(written)


def _open(folder: Path, step: Step, first: Sitting | None, made: DeskPlan) -> Open:
    when = say_when(first, made.now) if first else "for which there is no room in your hours"
    planned = first_planned(folder, step).planned_minutes
    return Open(step, say_minutes(step.minutes), when, planned, _where(step.id))


def _where(step: str) -> str:
    """The address of the page where a step is worked at."""
    paper, _, name = step.partition("/")
    leaf = LEAVES_OF_STEPS.get(name) or LEAVES_OF_STEPS.get(name.partition("-")[0], "plan")
    return address("paper", paper, leaf)


def _sum_up(steps: Sequence[Step], ready: str) -> str:
    """How much there is to do, and when it will be done."""
    if not steps:
        return "Nothing of this paper is left to do."
    whole = say_minutes(sum(step.minutes for step in steps))
    return f"There are {whole} of work left{f'; as the plan stands, it will be ready {ready}' if ready else ''}."


def _tell_said(one: Logged) -> str:
    """What was said of a step."""
    if one.left_out:
        return "left out"
    took = f", in {say_minutes(one.took_minutes)}" if one.took_minutes else ""
    return f"begun, {say_minutes(one.left_minutes)} left" if one.left_minutes else f"done{took}"


ROUTES = (
    get("/plan", show),
    get("/plan/plan.ics", hand_out),
    get("/paper/{slug}/plan", show_paper),
    post("/paper/{slug}/plan", send),
)
