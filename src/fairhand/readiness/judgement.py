"""What became of one requirement."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from fairhand.model.requirement import Requirement

State = Literal["met", "unmet", "ask", "waived"]


@dataclass(frozen=True, slots=True)
class Judgement:
    """A requirement held against the real thing."""

    state: State
    """``ask``: only the writer, or the teacher, can say."""
    measured: str | int | float | None
    """What was measured, or None where there is nothing to measure."""
    why: str
    """The working, in a sentence or two."""


@dataclass(frozen=True, slots=True)
class Judged:
    """A requirement with its judgement."""

    requirement: Requirement
    judgement: Judgement


NO_DRAFT = "There is no draft yet to hold it against."
"""The working of whatever is asked of the draft, while there is none."""
CONFIRM = "Only you can say so."
"""Ends the working of whatever cannot be seen in the paper's folder."""
