"""Sentences that begin in one construction and go on in another.

**Source**: "faulty sentence structure" in A. A. Lunsford and K. J. Lunsford 2008; handbooks of usage. Each turn is told
by its own words and by the parse together.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

from fairhand.copyedit.grammar.clauses import Clause
from fairhand.copyedit.grammar.constructions.construction import Mixed
from fairhand.copyedit.grammar.constructions.predication import (
    OPENING,
    REASONS,
    find_is_when,
    find_no_subject,
    find_reason,
    find_work_shows,
)
from fairhand.copyedit.grammar.constructions.said_twice import (
    ASKED,
    JOINING,
    PRONOUNS,
    find_joined_twice,
    find_preposition_twice,
    find_question_order,
    find_subject_twice,
)

_FEWEST = 5
"""Words and marks of the shortest sentence that is looked at."""
_ANYWHERE: tuple[tuple[frozenset[str], Callable[[Clause], Iterator[Mixed]]], ...] = (
    (REASONS, find_reason),
    (frozenset({"when", "where"}), find_is_when),
    (PRONOUNS, find_subject_twice),
    (ASKED, find_question_order),
    (frozenset({"which", "whom"}), find_preposition_twice),
)
"""The words without which a rule has nothing to look at."""
_OPENINGS: tuple[tuple[frozenset[str], Callable[[Clause], Iterator[Mixed]]], ...] = (
    (OPENING, find_no_subject),
    (frozenset({"in"}), find_work_shows),
    (frozenset({*JOINING, "even"}), find_joined_twice),
)
"""Those of the first word."""


def find_mixed(clause: Clause) -> Iterator[Mixed]:
    """Each place in a sentence where its construction breaks.

    Args:
        clause: The sentence.

    >>> from fairhand.language.parsing import parse_sentences
    >>> said = "The reason is because it rained."
    >>> [one.instead for one in find_mixed(Clause(said, 0, parse_sentences([said])[0]))]
    ['that']
    """
    if len(clause.words) < _FEWEST:
        return
    keys = {word.key for word in clause.words}
    for wanted, rule in _ANYWHERE:
        if keys & wanted:
            yield from rule(clause)
    for wanted, rule in _OPENINGS:
        if clause.words[0].key in wanted:
            yield from rule(clause)
