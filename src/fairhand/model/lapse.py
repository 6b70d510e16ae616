"""A lapse: an error that this writer tends to make."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Lapse:
    """One lapse, with the test by which it is looked for."""

    name: str
    """What the writer calls it."""
    wrong: str = ""
    """Words that are looked for, whole, leaving case; empty where a check looks."""
    right: str = ""
    """What belongs there instead, where that is one thing."""
    check: str = ""
    """The check whose findings are this lapse; empty where words are looked for."""
    count: int = 1
    """How often it was mended, marked by a reader, or written down."""
    last: str = ""
    """The day that it was last seen, as ISO 8601 has it."""
    example: str = ""
    """Where it was seen: the writer's own words."""
