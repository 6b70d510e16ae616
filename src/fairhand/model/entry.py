"""Bibliographic data of one source, as CSL-JSON 1.0.2 has it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

READ_FOR = "read-for"
"""The key in a record's ``custom`` that says what it is read for, where that is less than the whole."""
REFERENCES = "references"


@dataclass(frozen=True, slots=True)
class Name:
    """One person or body."""

    family: str = ""
    """Surname without its particle."""
    given: str = ""
    """Given names or initials, as recorded."""
    literal: str = ""
    """The whole name of a body, or of a person whose parts are not known."""
    particle: str = ""
    """The particle, dropping or not: *van der*, *de*."""
    suffix: str = ""
    """*Jr.*, *III*."""

    @property
    def surname(self) -> str:
        """The name as it stands in a citation: particle and family name, or the literal name."""
        return self.literal or f"{self.particle} {self.family}".strip()


@dataclass(frozen=True, slots=True)
class Issued:
    """When the work appeared; every part may be missing."""

    year: int | None = None
    month: int | None = None
    day: int | None = None
    literal: str = ""
    """A date that could not be taken apart, as recorded (``"in press"``)."""


@dataclass(frozen=True)
class Entry:
    """One work's bibliographic data.

    The named fields are what the rooms judge by; ``csl`` holds the whole record, which alone is rendered and written
    back.
    """

    id: str
    type: str
    title: str = ""
    title_short: str = ""
    container_title: str = ""
    authors: tuple[Name, ...] = ()
    editors: tuple[Name, ...] = ()
    translators: tuple[Name, ...] = ()
    issued: Issued | None = None
    original_year: int | None = None
    page: str = ""
    """The page range, as recorded (``"56-57"``, ``"B2"``, ``"xiv-xvi"``)."""
    doi: str = ""
    url: str = ""
    publisher: str = ""
    year_suffix: str = ""
    """The letter that its record gives it among works of the same author and year."""
    csl: Mapping[str, object] = field(default_factory=dict, compare=False)
    """The whole CSL-JSON record."""

    @property
    def is_for_references(self) -> bool:
        """Whether the writer marked the source as read for its references only, not to be cited itself.

        >>> Entry("a", "book", csl={"custom": {"read-for": "references"}}).is_for_references
        True
        """
        custom = self.csl.get("custom")
        return isinstance(custom, Mapping) and custom.get(READ_FOR) == REFERENCES
