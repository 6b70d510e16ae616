"""The writer's own word on whether two sources are independent."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Ruling:
    """What the writer decided of two sources."""

    first: str
    """Id of one of them."""
    second: str
    independent: bool
    """Whether they count as two."""
    why: str = ""
    """The writer's reason."""

    @property
    def pair(self) -> frozenset[str]:
        """The two of them, in no order."""
        return frozenset((self.first, self.second))
