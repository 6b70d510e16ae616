"""The final reading: one sitting from start to end, and the one question after it."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class FinalReading:
    """One final reading, with its answer."""

    id: str
    fit: bool
    """Whether the writer holds the paper fit to hand in."""
    why: str = ""
    """Why not, or whatever was said beside it."""
    begun: str = ""
    """When it was begun; empty where that is not known."""
    ended: str = ""
    """When the question was answered."""
    draft: str = ""
    """The hash of the draft's bytes that were read: after a change the answer is about another text."""
