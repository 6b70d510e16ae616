"""What a sheet takes off a late paper."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass
from typing import Literal

LossUnit = Literal["percent of the mark", "percent of the total", "points", "grade steps"]
"""In what a loss is measured; a grade step is a third of a letter."""
LateUnit = Literal["hour", "day", "working day", "week", "once"]
"""By what lateness is counted: each that has begun counts whole."""


@dataclass(frozen=True, slots=True)
class Tier:
    """What is lost by lateness up to some unit of it."""

    amount: float
    """In the rule's unit of loss."""
    to: int | None = None
    """The last hour, day or week for which this holds, counted from 1; None for all that follow."""
    in_all: bool = False
    """Whether this is all that is lost by then; else it is lost for each unit."""


@dataclass(frozen=True, slots=True)
class LateRule:
    """What a sheet takes off a late paper, and until when it takes one at all."""

    tiers: tuple[Tier, ...] = ()
    """In the order of lateness; none where all that is said is when late work is refused."""
    unit: LossUnit = "percent of the mark"
    per: LateUnit = "day"
    compound: bool = False
    """Whether each unit takes its share of what the one before has left (× 0.9 a day), not of the whole mark."""
    day_starts: dt.time | None = None
    """The hour at which a further day of lateness begins; None where it begins 24 hours after the last."""
    grace_minutes: int = 0
    """How long after the hour a paper still counts as handed in on time."""
    refused_after: float | None = None
    """The most lateness that is accepted; 0 where late work is not taken at all, None where it always is."""
    refused_in: LateUnit = "day"
    """By what ``refused_after`` is counted."""
    floor: float = 0.0
    """The mark below which lateness alone takes nothing more, in points."""
    cap: float | None = None
    """The most that a late paper can get, in points; None where that is not limited."""
