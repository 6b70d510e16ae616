"""What is looked for: words, phrases in quotation marks, beginnings of words with an asterisk."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from fairhand.language.content_words import JOINING, list_words
from fairhand.language.stems import stem

MOST_TERMS = 24
"""Terms that are read of a query; who pastes a paragraph asks a question instead."""
_TERM = re.compile(r"[\"“”„«»]([^\"“”„«»]{1,300})[\"“”„«»]|([^\s\"“”„«»]+)")


@dataclass(frozen=True, slots=True)
class Term:
    """One thing that a page must have."""

    words: tuple[str, ...]
    """Its words as they are compared; several stand one after another."""
    exact: bool = False
    """Whether the words themselves are meant, as in quotation marks, and no other form of them."""
    begins: bool = False
    """Whether the word goes on as it will."""

    @property
    def stems(self) -> tuple[str, ...]:
        """The stems of its words."""
        return tuple(map(stem, self.words))

    def __str__(self) -> str:
        """The term as one would write it."""
        said = " ".join(self.words)
        return f"“{said}”" if self.exact else f"{said}*" if self.begins else said


def read_query(text: str) -> tuple[Term, ...]:
    """The terms of a query; words that merely join others count only where there are no others.

    >>> [str(term) for term in read_query('the “harbour seals” of a moor* coast')]
    ['“harbour seals”', 'moor*', 'coast']
    """
    terms: dict[Term, bool] = {}
    for found in _TERM.finditer(text):
        words = tuple(list_words(found[1] or found[2]))
        if not words:
            continue
        if found[1] is not None:
            terms[Term(words, exact=True)] = True
            continue
        begins = found[2].endswith("*") and len(words[-1]) > 1
        if len(words) > 1 and not begins:
            terms[Term(words)] = True  # half-days: one after another
            continue
        for word in words[:-1]:
            terms[Term((word,))] = word not in JOINING
        terms[Term(words[-1:], begins=begins)] = begins or words[-1] not in JOINING
    telling = [term for term, tells in terms.items() if tells]
    return tuple(telling or terms)[:MOST_TERMS]


def match_all(terms: Sequence[Term], begun: Sequence[Sequence[str]]) -> str:
    """The expression of a full-text index for pieces that have all of the terms.

    Args:
        terms: What is looked for.
        begun: For each term that is the beginning of a word the stems of the words that begin so; nothing for others.

    **Source**: the query syntax of SQLite's FTS5.
    """
    return " AND ".join(match_term(term, stems) for term, stems in zip(terms, begun, strict=True))


def match_term(term: Term, begun: Sequence[str] = ()) -> str:
    """The expression for pieces that have one term, or words of its stems.

    >>> match_term(Term(("harbour", "seals")))
    '"harbour seal"'
    """
    if term.begins:
        return f"({match_any(begun or term.words)})"
    return f'"{" ".join(term.stems)}"'


def match_any(stems: Sequence[str]) -> str:
    """The expression for pieces that have any of some stems."""
    return " OR ".join(f'"{one}"' for one in stems)
