"""What is to be done, by when, and when it will be: the plan over all papers."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Step:
    """One piece of work on one paper."""

    id: str
    """Its paper's folder and its own name, as in ``harbour-seals/draft``; no two steps share one."""
    paper: str
    """The paper's folder."""
    name: str
    """What is done, in a few words: it stands in the plan."""
    minutes: int
    """How long it will likely take, in minutes at the desk; 0 for what only waits."""
    safe_minutes: int = 0
    """What it takes four times in five, in minutes; 0 where that is not known."""
    after: tuple[str, ...] = ()
    """Ids of the steps that come before it."""
    rest_minutes: int = 0
    """Minutes by the clock that must pass between its end and whatever comes after it: a night, a reader's days."""
    earliest: dt.datetime | None = None
    """It cannot begin before: a book is still to be fetched."""
    due: dt.datetime | None = None
    """The hour of a milestone of its own."""
    optional: bool = False
    """Whether the paper can be handed in without it."""
    why: str = ""
    """Why it is there, in words: the requirement or the state that asks for it."""
    usual_minutes: int = 0
    """What it takes at the usual pace, before the writer's own is reckoned in."""
    loses: str = ""
    """What the paper goes without where an optional step is left out, in words: ``a reader``."""


@dataclass(frozen=True, slots=True)
class PaperDue:
    """When a paper is due, and what lateness costs."""

    paper: str
    due: dt.datetime | None
    """The hour of the hand-in; None where none is known: such papers come last."""
    cost: Callable[[dt.datetime], float]
    """The share of the mark, 0 to 1, that a hand-in at an hour loses; it never falls as the hours pass."""
    worth: float = 1.0
    """What the paper's mark weighs beside those of the others."""
    title: str = ""


@dataclass(frozen=True, slots=True)
class Free:
    """A stretch of time at the desk, half-open."""

    start: dt.datetime
    end: dt.datetime


@dataclass(frozen=True, slots=True)
class Sitting:
    """One step's work in one stretch of time, half-open."""

    step: str
    start: dt.datetime
    end: dt.datetime


@dataclass(frozen=True, slots=True)
class Plan:
    """When each step will be done."""

    sittings: tuple[Sitting, ...]
    """In the order of time; no two overlap."""
    ends: tuple[tuple[str, dt.datetime], ...]
    """The hour at which each paper is ready, by its folder; papers that the free hours do not hold are not in it."""
    unplaced: tuple[str, ...] = ()
    """Ids of the steps for which the free hours do not suffice."""
    lost: float = 0.0
    """What lateness costs over all papers: shares of marks, each times its paper's worth."""


@dataclass(frozen=True, slots=True)
class WayOut:
    """One change that would help when not everything can be met."""

    does: str
    """What to do, in words."""
    paper: str
    gains_minutes: int
    """How much of the shortfall it makes good."""
    costs: float
    """What is still lost when it is taken, as ``Plan.lost``."""
    price: str
    """Its price in words: marks lost, a reader fewer, a section left out."""
    by: dt.datetime | None = None
    """The hour by which it must be done or asked for."""
