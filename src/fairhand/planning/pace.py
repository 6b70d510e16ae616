"""The writer's own pace: what steps took, held against what they would take at the usual one."""

from __future__ import annotations

import json
import math
import statistics
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from fairhand.language.json_text import write_json
from fairhand.language.line_files import add_line
from fairhand.model.problem import Problem

WHERE = "time.jsonl"
PUBLISHED = 1.64
"""How many times longer a paper takes than its writer foresees. **Source**: Buehler, Griffin & Ross 1994, Journal of
Personality and Social Psychology 67: 55.5 days where 33.9 were foreseen."""
ENOUGH = 5
"""From so many steps on the writer's own log says more than the published figure. **Source**: common practice."""
SLOWEST, QUICKEST = 10.0, 0.1
"""Ratios beyond these are taken for slips of the pen, and brought back to them."""


@dataclass(frozen=True, slots=True)
class Logged:
    """What the writer said of one step, once."""

    step: str
    """The step's own name, without its paper."""
    took_minutes: int | None = None
    """How long it took; None where that was not said."""
    planned_minutes: int = 0
    """What the plan had for it."""
    usual_minutes: int = 0
    """What it takes at the usual pace, before any correction."""
    left_minutes: int = 0
    """What of it is still left; 0 where it is done."""
    left_out: bool = False
    """Whether the paper goes without it."""
    when: str = ""
    """The moment, as ISO 8601 has it."""


@dataclass(frozen=True, slots=True)
class Pace:
    """By how much the usual minutes are to be multiplied."""

    likely: float = PUBLISHED
    safe: float | None = None
    """What is not passed four times in five; None where too little is known."""
    steps: int = 0
    """How many logged steps it rests on."""

    @property
    def is_own(self) -> bool:
        """Whether it is the writer's, and not the published figure."""
        return self.steps >= ENOUGH

    def __str__(self) -> str:
        """What it rests on, in a sentence."""
        if self.is_own:
            return (
                f"The {self.steps} logged steps took {self.likely:.2g} times the usual minutes (the median), and"
                f" four in five took no more than {self.safe or self.likely:.2g} times: the plan reckons with that."
            )
        told = (
            "No step is logged yet"
            if not self.steps
            else f"Only {self.steps} of {ENOUGH} steps {'is' if self.steps == 1 else 'are'} logged"
        )
        return f"{told}, so the plan takes {PUBLISHED} times the usual minutes, as a published study found."


def learn_pace(ratios: Sequence[float]) -> Pace:
    """The median of what steps took over the usual, and what four in five did not pass; the published, below five.

    >>> learn_pace([1.1, 1.3, 1.4, 1.6, 1.9, 2.4])
    Pace(likely=1.5, safe=1.9, steps=6)
    >>> learn_pace([1.1, 1.3]).likely
    1.64

    **Source**: the median and the 80th percentile, its places counted as in Hyndman & Fan 1996, type 7.
    """
    kept = [min(SLOWEST, max(QUICKEST, ratio)) for ratio in ratios if math.isfinite(ratio) and ratio > 0]
    if len(kept) < ENOUGH:
        return Pace(steps=len(kept))
    safe = statistics.quantiles(kept, n=5, method="inclusive")[3]
    return Pace(round(statistics.median(kept), 4), round(safe, 4), len(kept))


def list_ratios(log: Iterable[Logged]) -> tuple[float, ...]:
    """What each step that is done took, over its usual minutes; what was done of it by parts counts together.

    A step of which some part's time was not said tells nothing.

    >>> list_ratios([Logged("draft", 60, usual_minutes=100, left_minutes=50), Logged("draft", 90, usual_minutes=100)])
    (1.5,)
    """
    so_far: dict[str, float] = {}
    ratios = []
    for one in log:
        took = so_far.pop(one.step, 0) + (math.nan if one.took_minutes is None else one.took_minutes)
        whole = one.usual_minutes or one.planned_minutes
        if one.left_minutes:
            so_far[one.step] = took
        elif whole and not one.left_out and not math.isnan(took):
            ratios.append(took / whole)
    return tuple(ratios)


def read_log(text: str, name: str = WHERE) -> tuple[tuple[Logged, ...], tuple[Problem, ...]]:
    """What the log holds, in its order, with a problem for each line that is none of it."""
    log, problems = [], []
    for number, line in enumerate(text.split("\n"), 1):
        if line.strip():
            try:
                log.append(_read_line(line))
            except (ValueError, RecursionError) as error:
                told = f"it says of no step how long it took: {error}"
                problems.append(Problem(f"{name}, line {number}", told, "mend it; it is left out now"))
    return tuple(log), tuple(problems)


def add_to_log(text: str, one: Logged) -> str:
    r"""The log with one more line.

    >>> add_to_log("", Logged("draft", 150, 164, 100, when="2027-02-08T20:10:00+01:00"))
    '{"step": "draft", "took": 150, "planned": 164, "usual": 100, "when": "2027-02-08T20:10:00+01:00"}\n'
    """
    told: dict[str, Any] = {"step": one.step, "took": one.took_minutes, "planned": one.planned_minutes}
    told |= {"usual": one.usual_minutes, "left": one.left_minutes, "left_out": one.left_out, "when": one.when}
    kept = {name: value for name, value in told.items() if value or (name == "took" and value == 0)}
    return add_line(text, write_json(kept))


def _read_line(line: str) -> Logged:
    record = json.loads(line)
    if not isinstance(record, Mapping) or not isinstance(record.get("step"), str) or not record["step"].strip():
        message = "it names no step"
        raise ValueError(message)
    took = record.get("took")
    return Logged(
        step=record["step"].strip(),
        took_minutes=None if took is None else _minutes(took),
        planned_minutes=_minutes(record.get("planned", 0)),
        usual_minutes=_minutes(record.get("usual", 0)),
        left_minutes=_minutes(record.get("left", 0)),
        left_out=record.get("left_out") is True,
        when=str(record.get("when") or ""),
    )


def _minutes(value: object) -> int:
    if isinstance(value, bool) or not isinstance(value, int | float) or not 0 <= value < 10**6:
        message = f"{value!r} is no number of minutes"
        raise ValueError(message)
    return round(value)
