"""A word that is wrong in its place, with the word that belongs there."""

from __future__ import annotations

from dataclasses import dataclass

from fairhand.copyedit.grammar.clauses import Clause
from fairhand.model.span import Span


@dataclass(frozen=True, slots=True)
class Slip:
    """A word, what belongs in its place, and of what kind the slip is."""

    span: Span
    """Where it stands in the draft."""
    word: str
    """As the draft has it."""
    instead: str
    """What belongs there, with the capital of its place; empty where only the writer knows."""
    kind: str
    """For the words in which it is told."""


def slip_at(clause: Clause, at: int, instead: str, kind: str) -> Slip:
    """A slip at one word of a sentence, what belongs there in the capitals of that word."""
    span, word = clause.place(at), clause.words[at].text
    if word == "I.":  # taken for an initial
        span, word = Span(span.start, span.end - 1), "I"
    if word[0].isupper() and at == 0:
        instead = instead[:1].upper() + instead[1:]
    return Slip(span, word, instead, kind)
