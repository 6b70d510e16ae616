"""One thing that the sheet asks."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

from fairhand.model.finding import Weight
from fairhand.model.span import Span

Force = Literal["must", "should", "may"]
"""How strongly the sheet asks."""

Kind = Literal[
    "length",
    "due",
    "sources",
    "sources_banned",
    "style",
    "format",
    "section",
    "element",
    "task",
    "rubric",
    "late",
    "policy",
    "submit",
]
"""What it is about; the table of kinds and their values is in ``docs/requirements.md``."""

Value = str | int | float | bool | None | tuple[str, ...]
"""A requirement's value: text, number, true, nothing said, or a sorted list of words."""


@dataclass(frozen=True)
class Requirement:
    """One thing that an assignment sheet asks, kept with the words that ask it."""

    kind: Kind
    values: Mapping[str, Value]
    """The kind's own values, by name."""
    evidence: str
    """The words that ask it: a contiguous piece of the sheet's text."""
    span: Span
    """Where ``evidence`` stands in the sheet's text."""
    force: Force = "must"
    sheet: str = ""
    """The sheet's file name."""
    id: str = ""
    """``length.paper``, ``due.final``; a second of the same name ends in ``-2``."""

    @property
    def weight(self) -> Weight:
        """How loud a finding about it is: *may* is a query."""
        return "query" if self.force == "may" else self.force

    @property
    def as_rule(self) -> str:
        """The sheet's own words, as the source of a rule."""
        return f"the sheet: “{' '.join(self.evidence.split())}”"


@dataclass(frozen=True)
class Brief:
    """Everything that was read off a paper's sheets."""

    requirements: tuple[Requirement, ...] = ()
    unread: tuple[str, ...] = ()
    """Sentences that look like a demand and were not understood."""
    assignments: tuple[str, ...] = ()
    """Titles of the several papers that one sheet asks for; empty where it asks for one."""
    texts: Mapping[str, str] = field(default_factory=dict)
    """The text of each sheet by file name."""
    conflicts: tuple[str, ...] = ()
    """What a later sheet contradicts in an earlier one, both wordings shown; the later word is kept."""
    questions: tuple[str, ...] = ()
    """What a sheet leaves open and the writer should ask: a date that can be read two ways, "midnight"."""
