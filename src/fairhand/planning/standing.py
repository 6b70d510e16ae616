"""How a paper stands: what its sheet asks, as far as it takes time, and what of it is there."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass, field

from fairhand.model.late_rule import LateRule
from fairhand.model.problem import Problem
from fairhand.planning.pace import Logged

PUBLISHED_WORDS = 1500
"""Words of a paper whose sheet names no length: an assumption, told in the plan."""


@dataclass(frozen=True, slots=True)
class Unread:
    """A source that is listed and not read yet."""

    id: str
    name: str
    """As the writer is told of it."""
    words: int = 0
    """How many its text has; 0 where no text is at hand."""
    pages: int = 0
    """How many pages its record names; 0 where it names none."""


@dataclass(frozen=True, slots=True)
class Milestone:
    """A piece with a due hour of its own."""

    what: str
    """As the requirement has it: ``annotated-bibliography``."""
    hour: dt.datetime
    words: int = 0
    """How long it is to be; 0 where the sheet does not say."""


@dataclass(frozen=True, slots=True)
class Wishes:
    """What the writer has set for the plan of a paper, in the table ``[plan]`` of ``paper.toml`` or ``desk.toml``."""

    readers: int = 1
    """How many first readers there are to be, one after another."""
    readers_asked: bool = False
    """Whether the writer has said so."""
    reader_days: int = 2
    """How many days each reader has."""
    worth: float = 1.0
    """What the paper's mark weighs beside the others."""
    not_before: Mapping[str, dt.date] = field(default_factory=dict)
    """Days before which steps cannot begin, by the steps' names: a book is still to be fetched."""


@dataclass(frozen=True)
class Standing:
    """How one paper stands."""

    paper: str
    """Its folder."""
    title: str = ""
    has_sheet: bool = True
    questions: int = 0
    """What of the sheet is still the writer's to answer."""
    asks_for_sources: bool = True
    sources_asked: int = 0
    """How many the sheet asks for at least; 0 where it names no number."""
    sources_there: int = 0
    points: int = 0
    thin_points: int = 0
    """Points that have fewer sources than the writer's rule wants."""
    sources_for_points: int = 0
    """How many sources they lack together."""
    unread: tuple[Unread, ...] = ()
    has_jottings: bool = False
    has_focus: bool = False
    words_asked: int = 0
    """How many words the sheet asks for at least; 0 where it names no length."""
    words_written: int = 0
    findings: Mapping[str, int] = field(default_factory=dict)
    """What the checks found and is open, by pass."""
    due: dt.datetime | None = None
    """The hour of the hand-in; None where none is known."""
    late: LateRule | None = None
    """What the sheet takes off for lateness; None where it does not say."""
    milestones: tuple[Milestone, ...] = ()
    """Those that are still to come."""
    hand_in: str = ""
    """How it is handed in, in the sheet's word: upload, email, print."""
    no_readers: bool = False
    """Whether the sheet forbids help."""
    readers_until: tuple[dt.date, ...] = ()
    """For each reader who was given it, the day until which it is waited for, or on which it came back."""
    wishes: Wishes = Wishes()
    log: tuple[Logged, ...] = ()
    """What the writer said of its steps."""

    @property
    def words_whole(self) -> int:
        """How many words the paper will have."""
        return max(self.words_asked or PUBLISHED_WORDS, self.words_written)

    @property
    def words_unwritten(self) -> int:
        """How many of them are still to be written."""
        return max(0, (self.words_asked or (0 if self.words_written else PUBLISHED_WORDS)) - self.words_written)

    @property
    def sources_missing(self) -> int:
        """How many sources are still to be found; none where the sheet asks for none."""
        if not self.asks_for_sources:
            return 0
        return max(self.sources_asked - self.sources_there, self.sources_for_points, 0)


def read_wishes(paper: object, desk: object = None) -> tuple[Wishes, tuple[Problem, ...]]:
    """What the tables ``[plan]`` of a paper and of its desk state; the paper's word comes first.

    >>> read_wishes({"readers": 2, "not_before": {"reading": dt.date(2027, 2, 12)}}, {"reader_days": 3})[0].reader_days
    3
    """
    problems: list[Problem] = []
    table = {**(desk if isinstance(desk, Mapping) else {}), **(paper if isinstance(paper, Mapping) else {})}
    usual = Wishes()
    days: dict[str, dt.date] = {}
    named = table.get("not_before", {})
    for step, day in named.items() if isinstance(named, Mapping) else ():
        if isinstance(day, dt.datetime):
            days[str(step)] = day.date()
        elif isinstance(day, dt.date):
            days[str(step)] = day
        else:
            told = f"{str(day)!r} is no day"
            problems.append(Problem(f"paper.toml, plan, not_before, {step}", told, "write it as 2027-02-14"))
    return (
        Wishes(
            readers=round(_number(table, "readers", usual.readers, 20, problems)),
            readers_asked="readers" in table,
            reader_days=round(_number(table, "reader_days", usual.reader_days, 60, problems)),
            worth=_number(table, "worth", usual.worth, 1000, problems),
            not_before=days,
        ),
        tuple(problems),
    )


def _number(table: Mapping[str, object], key: str, default: float, most: float, problems: list[Problem]) -> float:
    value = table.get(key, default)
    if isinstance(value, int | float) and not isinstance(value, bool) and 0 <= value <= most:
        return value
    problems.append(Problem(f"plan, {key}", f"{value!r} is no number up to {most:g}", f"{default:g} is taken"))
    return default
