"""The steps of a paper, from what its sheet asks and how it stands.

Minutes are those of the usual paces, times the writer's own.
"""

from __future__ import annotations

import datetime as dt
import math
from collections.abc import Mapping
from dataclasses import replace
from functools import partial

from fairhand.model.plan import Step
from fairhand.planning.pace import Logged, Pace
from fairhand.planning.stages import STAGES, Sketch, pieces_after, sketch_milestone, sketch_milestones
from fairhand.planning.standing import Standing

NIGHT = 12 * 60
"""Minutes by the clock after which one comes back to a text with another eye."""
WHOLE_DAY = 24 * 60
LEAST_MINUTES = 10
"""No step is planned at less: one has to sit down to it. **Source**: common practice."""


def list_steps(standing: Standing, pace: Pace, *, zone: dt.tzinfo | None = None, pressed: bool = False) -> list[Step]:
    """What is still to be done on a paper, each step after those that it waits for.

    A step that the writer has called done, or goes without, is not among them; of one that is begun, what is left is.
    A piece that is due after the paper itself belongs to a paper of its own, which has the step's id for its name.

    Args:
        standing: How the paper stands.
        pace: By how much the usual minutes are multiplied.
        zone: The desk's time zone, in which days begin.
        pressed: Whether time is short: no night between two steps, and no first reader whom nobody asked for.

    >>> steps = list_steps(Standing("seals", words_asked=700, has_jottings=True, asks_for_sources=False), Pace(1.0))
    >>> [(step.name, step.minutes) for step in steps][:3]
    [('settle the focus and the points', 45), ('write the draft', 120), ('revise the argument', 60)]
    """
    told = {one.step: one for one in standing.log}
    steps: list[Step] = []
    before: tuple[str, ...] = ()
    opens: dt.datetime | None = None
    for stage, sketch in STAGES.items() if not _is_over(told.get("hand-in")) else ():
        here: list[str] = []
        for one in (*sketch(standing), *sketch_milestones(standing, stage)):
            if _is_over(told.get(one.name)) or (pressed and one.loses and not standing.wishes.readers_asked):
                continue
            after: tuple[str, ...] = (f"{standing.paper}/{one.follows}",)
            if after[0] not in here:
                after = tuple(here) if one.beside and here else before
            rest = 0 if pressed and not one.loses else _rest_after(standing, one.name)
            earliest = _latest(opens, _opens_by_wish(standing, one.name, zone))
            steps.append(_make_step(standing, one, pace, told.get(one.name), after, rest, earliest))
            if not one.beside:
                here.append(steps[-1].id)
        before = tuple(here) or before
        opens = opens if pressed else _latest(opens, _rested(standing, told, stage, zone))
    steps += [
        replace(
            _make_step(standing, one, pace, told.get(one.name), before, 0, None), paper=f"{standing.paper}/{one.name}"
        )
        for one in map(partial(sketch_milestone, standing), pieces_after(standing))
        if not _is_over(told.get(one.name))
    ]
    return steps


def list_hours(standing: Standing) -> list[tuple[str, str, dt.datetime | None]]:
    """What is handed in, with its title and its hour: the paper, and each piece that is due after it.

    >>> list_hours(Standing("seals", "Harbour Seals"))
    [('seals', 'Harbour Seals', None)]
    """
    title = standing.title or standing.paper
    later = [
        (f"{standing.paper}/{one.what}", f"{title}: {one.what.replace('-', ' ')}", one.hour)
        for one in pieces_after(standing)
    ]
    return [(standing.paper, title, standing.due), *later]


def _is_over(said: Logged | None) -> bool:
    return said is not None and (said.left_out or not said.left_minutes)


def _make_step(
    standing: Standing,
    one: Sketch,
    pace: Pace,
    said: Logged | None,
    after: tuple[str, ...],
    rest: int,
    earliest: dt.datetime | None,
) -> Step:
    """The step, its minutes in fives; of one that is begun the writer has said what is left."""
    usual = max(5, _fives(one.minutes))
    likely = max(LEAST_MINUTES, _fives(one.minutes * pace.likely))
    safe = _fives(one.minutes * (pace.safe or 0.0))
    if said is not None and said.left_minutes:
        likely, safe, usual = said.left_minutes, 0, said.usual_minutes or usual
    return Step(
        id=f"{standing.paper}/{one.name}",
        paper=standing.paper,
        name=one.does,
        minutes=likely,
        safe_minutes=safe,
        after=after,
        rest_minutes=rest,
        earliest=earliest,
        due=one.due,
        optional=bool(one.loses),
        why=one.why,
        usual_minutes=usual,
        loses=one.loses,
    )


def _rest_after(standing: Standing, name: str) -> int:
    """Minutes by the clock that pass after a step: a night after writing and after mending, a reader's days."""
    if name.startswith("reader-"):
        return standing.wishes.reader_days * WHOLE_DAY
    return NIGHT if name in {"draft", "copy-edit"} else 0


def _rested(standing: Standing, told: Mapping[str, Logged], stage: str, zone: dt.tzinfo | None) -> dt.datetime | None:
    """The hour from which what comes after a stage may begin, where its steps are done already.

    A reader who has the paper is waited for until the day on which it is due back.
    """
    days = standing.readers_until if stage == "readers" else ()
    hours = [dt.datetime.combine(day, dt.time(), tzinfo=zone or dt.UTC) for day in days]
    for name, said in told.items():
        of = "readers" if name.startswith("reader-") else name
        if of == stage and said.when and _is_over(said) and not said.left_out:
            try:
                hours.append(dt.datetime.fromisoformat(said.when) + dt.timedelta(minutes=_rest_after(standing, name)))
            except (ValueError, OverflowError):
                continue  # a moment that somebody wrote by hand in another form
    return max((hour for hour in hours if hour.tzinfo), default=None)


def _opens_by_wish(standing: Standing, name: str, zone: dt.tzinfo | None) -> dt.datetime | None:
    """The day before which the writer does not want a step to begin."""
    day = standing.wishes.not_before.get(name)
    return dt.datetime.combine(day, dt.time(), tzinfo=zone or dt.UTC) if day else None


def _latest(one: dt.datetime | None, other: dt.datetime | None) -> dt.datetime | None:
    return max(one, other) if one and other else one or other


def _fives(minutes: float) -> int:
    """Minutes rounded up to five."""
    return 5 * math.ceil(round(minutes, 6) / 5)
