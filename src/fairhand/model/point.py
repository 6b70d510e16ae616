"""What the paper must, or may, support."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal


@dataclass(frozen=True, slots=True)
class Support:
    """A source that carries a point, with the page."""

    source: str
    """The entry's id."""
    page: str = ""
    """Page label, or empty."""


@dataclass(frozen=True, slots=True)
class Point:
    """A fact or claim of the paper."""

    id: str
    text: str
    weight: Literal["main", "optional"] = "main"
    """Whether the paper must or may support it."""
    support: tuple[Support, ...] = ()


@dataclass(frozen=True, slots=True)
class Points:
    """The contents of ``points.json``."""

    thesis: str = ""
    points: tuple[Point, ...] = ()
