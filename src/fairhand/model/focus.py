"""What the paper is about, and what is to be read for."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal


@dataclass(frozen=True, slots=True)
class Question:
    """A guiding question."""

    id: str
    text: str
    state: Literal["open", "answered"] = "open"
    notes: tuple[str, ...] = ()
    """The ids of the notes that answer it."""
    points: tuple[str, ...] = ()
    """The ids of the points that follow from it."""


@dataclass(frozen=True, slots=True)
class Focus:
    """The contents of ``focus.toml``."""

    focus: str = ""
    """One sentence."""
    is_thesis: bool = False
    """Whether the writer calls it the thesis."""
    audience: str = ""
    questions: tuple[Question, ...] = ()


@dataclass(frozen=True, slots=True)
class Query:
    """Something to ask oneself about a sentence; never a verdict on it."""

    asks: str
    source: str
    """The handbook that asks it."""
