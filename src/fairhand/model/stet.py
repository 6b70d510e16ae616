"""*Stet*, and the other words that a writer may set on what a check found: to be mended, to come back to."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from fairhand.model.finding import Finding

Word = Literal["stet", "mend", "later"]
"""What the writer says of a finding: it shall stand; it is to be mended; it is to be come back to."""


@dataclass(frozen=True, slots=True)
class Stet:
    """One finding let stand, for as long as its words do; or, by another word, marked and left for afterwards."""

    check: str
    """The check that found it."""
    exact: str = ""
    """The words that it is about; empty where it is about the whole paper."""
    before: str = ""
    """The 32 code points before them, or as many as there are."""
    after: str = ""
    """The 32 code points after them, or as many as there are."""
    concerns: tuple[str, ...] = ()
    """The sources or points that it is about."""
    reason: str = ""
    """Why it shall stand, in the writer's words."""
    when: str = ""
    """The moment, as ISO 8601 has it."""
    word: Word = "stet"


@dataclass(frozen=True, slots=True)
class Stetted:
    """What a check still finds, and the word that lets it stand."""

    finding: Finding
    stet: Stet
