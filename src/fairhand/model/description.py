"""What a file says of the work that it holds, each thing with where it was found."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

Said = tuple[str, str | Sequence[str], str]
"""A CSL variable, what is said of it, and where: as a reader finds it."""


@dataclass(frozen=True, slots=True)
class Field:
    """One thing that is said of a work."""

    value: str | tuple[str, ...]
    """As it was found, on one line; names as a tuple, one each."""
    from_: str
    """Where it was found, in words: ``"the first page"``."""

    @property
    def words(self) -> str:
        """The value on one line.

        >>> Field(("Lind, Ada", "Marsh, Bo"), "the first page").words
        'Lind, Ada; Marsh, Bo'
        """
        return self.value if isinstance(self.value, str) else "; ".join(self.value)


@dataclass(frozen=True)
class Description:
    """Everything that a file says of its work."""

    fields: Mapping[str, Field] = field(default_factory=dict)
    """By CSL 1.0.2 variable, ``type`` among them: what is said in the place that is trusted most."""
    others: tuple[tuple[str, Field], ...] = ()
    """What other places of the same file say otherwise, by variable."""
