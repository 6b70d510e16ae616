"""*Stet*: the writer's word that what a check found shall stand."""

from __future__ import annotations

from dataclasses import dataclass

from fairhand.model.finding import Finding


@dataclass(frozen=True, slots=True)
class Stet:
    """One finding let stand, for as long as its words do."""

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


@dataclass(frozen=True, slots=True)
class Stetted:
    """What a check still finds, and the word that lets it stand."""

    finding: Finding
    stet: Stet
