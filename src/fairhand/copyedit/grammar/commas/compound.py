"""Two long sentences joined by *and*, *but*, *yet* or *so* with no comma before it.

**Source**: "Missing comma in a compound sentence" in A. A. Lunsford and K. J. Lunsford 2008 and in handbooks of usage,
which let short ones be. What is short is our own reckoning: fewer than six words on either side.
"""

from __future__ import annotations

from dataclasses import dataclass

from fairhand.copyedit.grammar.clauses import WH, Clause
from fairhand.model.span import Span

_JOINS = frozenset("and but yet".split())
_PARTS = frozenset(
    "if when although though because since while whereas unless until after before once as whether what how why not"
    " neither either both that".split()
)
"""Openings after which the two may be parts of something larger."""
_BREAKS = frozenset({",", ";", ":", "—", "–", "--", "---", "?", "…", "(", ")"})
_SHORTEST = 6
"""Words on either side of the shortest that is asked about."""


@dataclass(frozen=True, slots=True)
class Compound:
    """Two long sentences joined without a comma."""

    span: Span
    """From the last word of the one to the joining word, in the draft."""
    comma: Span
    """Where the comma belongs; empty."""
    joins: str
    """The word that joins them."""


def find_compound(clause: Clause) -> Compound | None:
    """Where two long sentences are joined by a word without a comma before it.

    >>> from fairhand.language.parsing import parse_sentences
    >>> text = "The council promised new houses for the dockers but the money was spent on a road to the castle."
    >>> find_compound(Clause(text, 0, parse_sentences([text])[0])).joins
    'but'
    """
    words = clause.words
    roots = [n for n, each in enumerate(words) if each.head == n]
    if len(roots) != 1 or words[-1].text != "." or words[0].key in _PARTS or words[0].tag in WH:
        return None
    if any(each.text in _BREAKS for each in words):
        return None
    root = roots[0]
    if not _is_whole(clause, root):
        return None
    for second in clause.of_role(root, "conj", "advcl"):
        at, subject = _joins(clause, root, second), clause.subject_of(second)
        if at is None or subject is None or clause.below(subject)[0] != at + 1 or clause.hides((at - 1, at + 1)):
            continue
        if min(at, len(words) - 2 - at) >= _SHORTEST:
            end = clause.place(at - 1).end
            return Compound(clause.place(at - 1, at), Span(end, end), words[at].text)
    return None


def _joins(clause: Clause, root: int, second: int) -> int | None:
    """The word that joins two sentences; *so* where it tells a result, not an aim."""
    words = clause.words
    if words[second].role == "conj":
        joins = [n for n in clause.of_role(root, "cc") if root < n < second]
        return joins[0] if len(joins) == 1 and words[joins[0]].key in _JOINS and _is_whole(clause, second) else None
    marks, verb = clause.of_role(second, "mark", "advmod"), clause.finite_of(second)
    marks = tuple(n for n in marks if n < second)
    if len(marks) != 1 or words[marks[0]].key != "so" or second < root or verb is None or words[verb].tag == "MD":
        return None
    return marks[0]


def _is_whole(clause: Clause, chief: int) -> bool:
    """Whether a clause has a subject and a finite verb of its own, and no word that makes it a part."""
    words = clause.words
    verb = clause.finite_of(chief)
    if verb is None or clause.subject_of(chief) is None or not clause.is_finite(verb):
        return False
    return not any(words[n].role == "mark" or words[n].tag in WH for n in clause.children[chief])
