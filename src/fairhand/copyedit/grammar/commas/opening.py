"""An opening part of a sentence that runs into its main clause with no comma between.

**Source**: "Missing comma after an introductory element" in A. A. Lunsford and K. J. Lunsford 2008 and in handbooks of
usage. Told are clauses with a verb of their own, and the adverbs and phrases that join a sentence to the one before;
short phrases (*in 1871*) and the adverbs that flow on (*then*, *thus*, *today*) may go without, and are let be.
"""

from __future__ import annotations

from dataclasses import dataclass

from fairhand.copyedit.grammar.clauses import Clause, is_inverted
from fairhand.copyedit.grammar.commas.opening_verbs import STARTS, Kind, end_of_clause, end_of_verbal, root_of
from fairhand.model.span import Span

_ADVERBS = frozenset(
    "however moreover furthermore nevertheless nonetheless consequently additionally therefore similarly likewise"
    " conversely accordingly unfortunately fortunately interestingly surprisingly".split()
)
"""Adverbs that join a sentence to the one before, or judge the whole of it."""
_PHRASES = tuple(
    tuple(each.split())
    for each in (
        "for example|for instance|in addition|in contrast|by contrast|on the other hand|on the one hand|as a result"
        "|as a consequence|in fact|in conclusion|in other words|on the contrary|in short|in summary|first of all"
        "|in particular|of course|above all"
    ).split("|")
)
_FLOW_ON = frozenset(
    "therefore|consequently|similarly|likewise|accordingly|of course|as a result|as a consequence|in addition".split(
        "|"
    )
)
"""Openings that flow on without a pause as some handbooks have it."""


@dataclass(frozen=True, slots=True)
class Opening:
    """An opening without its comma."""

    span: Span
    """The opening and the first word after it, in the draft."""
    comma: Span
    """Where the comma belongs; empty."""
    kind: Kind
    opens: str
    """Its words where it is an adverb or a phrase; else the word that opens the clause."""

    @property
    def may_flow_on(self) -> bool:
        """Whether handbooks differ: some let it go without a comma where there is no pause."""
        return self.kind == "long" or self.opens.casefold() in _FLOW_ON


_IS = frozenset("is was would will means meant".split())
"""Verbs whose subject an infinitive may be."""


def find_opening(clause: Clause) -> Opening | None:
    """The opening of a sentence that runs on without its comma.

    >>> from fairhand.language.parsing import parse_sentences
    >>> text = "When the tide turned they left."
    >>> find_opening(Clause(text, 0, parse_sentences([text])[0])).comma
    Span(start=20, end=20)
    """
    words = clause.words
    if len(words) < 5 or words[-1].text not in (".", "!", "?") or not words[0].text[0].isupper():
        return None
    if len(words[0].text) > 1 and words[0].text.isupper() and words[1].text.isupper():
        return None  # a heading that ran into the text
    if is_inverted(clause) or (words[0].key == "to" and any(each.key in _IS for each in words)):
        return None  # to call the war a crusade was to silence its critics
    found = _after_link(clause) or end_of_clause(clause) or end_of_verbal(clause)
    if found is None:
        return None
    at, kind = found
    if clause.hides((at - 1, at)) or not words[at].text[0].isalnum():
        return None
    opens = clause.text[words[0].span.start : words[at - 1].span.end]
    end = clause.place(at - 1).end
    return Opening(clause.place(0, at), Span(end, end), kind, opens if kind in ("adverb", "phrase") else words[0].text)


def _after_link(clause: Clause) -> tuple[int, Kind] | None:
    """The end of an adverb or a phrase that joins sentences, where the subject of the sentence follows at once."""
    words = clause.words
    keys = tuple(each.key for each in words[:5])
    long = next((len(each) for each in _PHRASES if keys[: len(each)] == each), 0)
    at = long or (1 if keys[0] in _ADVERBS else 0)
    if not at or words[at].tag not in STARTS:
        return None
    root = root_of(clause)
    if root is None:
        return None
    subject = clause.subject_of(root)
    if subject is None or clause.below(subject)[0] != at or clause.finite_of(root) is None:
        return None
    if keys[0] == "however" and (words[0].head != root or _has_clause_after_comma(clause, root)):
        return None  # however the vote goes, the mill will close
    return at, "phrase" if long else "adverb"


def _has_clause_after_comma(clause: Clause, root: int) -> bool:
    """Whether a comma after a verb is followed by another verb."""
    words = clause.words
    comma = next((n for n in range(root, len(words)) if words[n].text == ","), len(words))
    return any(clause.is_finite(n) for n in range(comma, len(words)))
