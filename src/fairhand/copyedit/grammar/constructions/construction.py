"""A place where a sentence leaves the construction in which it began."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from fairhand.copyedit.grammar.clauses import Clause
from fairhand.model.span import Span

Kind = Literal[
    "reason because",
    "reason due",
    "is when",
    "no subject",
    "subject twice",
    "it says",
    "joined twice",
    "question order",
    "preposition twice",
]


@dataclass(frozen=True, slots=True)
class Mixed:
    """Where a sentence breaks."""

    span: Span
    kind: Kind
    word: str
    """The word on which it turns."""
    at: Span
    """The place of that word."""
    instead: str = ""
    """What would belong in the place of that word, where one word mends it."""


def mixed_at(clause: Clause, first: int, last: int, kind: Kind, instead: str = "") -> Mixed:
    """A break from one word of a sentence to another, on which it turns."""
    return Mixed(clause.place(first, last), kind, clause.words[last].text, clause.place(last), instead)
