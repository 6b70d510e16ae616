"""A reference as it stands in a list, and the fields that were found in it."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

FIELDS = (
    "author",
    "editor",
    "title",
    "container",
    "series",
    "volume",
    "issue",
    "pages",
    "date",
    "publisher",
    "place",
    "edition",
    "report",
    "doi",
    "url",
    "note",
)
"""What the words of a reference may tell. ``container`` is the journal or book that the work stands in, ``report`` the
kind and number of a report or thesis, ``note`` anything else that is no mere sign or word between fields."""


@dataclass(frozen=True, slots=True)
class Part:
    """One field of a reference, with its place."""

    field: str
    """One of `FIELDS`."""
    start: int
    """Where it begins in the reference's text."""
    end: int
    """Where it ends; half-open."""


@dataclass(frozen=True, slots=True)
class Reference:
    """One reference, taken apart."""

    raw: str
    """Its words as they stand in the list, on one line."""
    parts: tuple[Part, ...]
    """Its fields in their order."""
    page: str = ""
    """The label of the page that it begins on, or an empty string where the source has none."""

    def __post_init__(self) -> None:
        """Parts follow each other and do not overlap."""
        if any(one.end > other.start for one, other in pairwise(self.parts)):
            message = "the parts of a reference overlap"
            raise ValueError(message)

    def texts(self, field: str) -> tuple[str, ...]:
        """What stands in one field, each time that it comes.

        >>> Reference("Lind, A. (2001). Salt.", (Part("author", 0, 8), Part("title", 17, 21))).texts("title")
        ('Salt',)
        """
        return tuple(self.raw[part.start : part.end] for part in self.parts if part.field == field)

    def text(self, field: str) -> str:
        """What stands in one field the first time, or an empty string."""
        return next(iter(self.texts(field)), "")
