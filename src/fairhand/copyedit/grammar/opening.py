"""An opening part of a sentence that runs into its main clause with no comma between.

**Source**: "Missing comma after an introductory element" in A. A. Lunsford and K. J. Lunsford 2008 and in handbooks of
usage. Told are clauses with a verb of their own, and the adverbs and phrases that join a sentence to the one before;
short phrases (*in 1871*) and the adverbs that flow on (*then*, *thus*, *today*) may go without, and are let be.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Literal

from fairhand.copyedit.grammar.clauses import NOUNS, WH, Clause
from fairhand.model.span import Span

Kind = Literal["adverb", "phrase", "clause", "verbal"]
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
_OPENS = frozenset(
    "although though because since while whereas if unless until when whenever after before once as".split()
)
"""Words that open a clause that is part of another."""
_BEFORE = frozenset("even just only".split())
_STATES = frozenset("is was remains depends matters mean means meant".split())
"""*When the ship left the harbour is not known*: the clause is the subject."""
_STARTS = frozenset({"DT", "PRP", "PRP$", "EX", "NNS", "NNP", "NNPS", "NN", "JJ", "CD"})
"""What a subject may begin with."""
_NO_ENDS = frozenset("so that and or but than of as".split())
_COPULAS = frozenset("is are was were be".split())
_PREPOSITIONS = (("according", "to"), ("contrary", "to"), ("unlike",))
"""Those whose phrase has its comma however short it is."""
_BREAK = re.compile(r"[,;:()\[\]—–]|--*")
"""Marks with which an opening has its end, or is more than an opening."""
_SHORTEST = 3
"""Words of the shortest opening clause that is told."""


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
        return self.opens.casefold() in _FLOW_ON


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
    found = _after_link(clause) or _after_clause(clause) or _after_verbal(clause)
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
    if not at or words[at].tag not in _STARTS:
        return None
    root = _root(clause)
    if root is None:
        return None
    subject = clause.subject_of(root)
    if subject is None or clause.below(subject)[0] != at or clause.finite_of(root) is None:
        return None
    if keys[0] == "however" and (words[0].head != root or _has_clause_after_comma(clause, root)):
        return None  # however the vote goes, the mill will close
    return at, "phrase" if long else "adverb"


def _after_clause(clause: Clause) -> tuple[int, Kind] | None:
    """The end of an opening clause, where the main clause follows at once."""
    words = clause.words
    first = 1 if words[0].key in _BEFORE else 0
    if words[first].key not in _OPENS or words[first].tag not in ("IN", "WRB", "RB"):
        return None
    root = _root(clause)
    if root is None:
        return None
    head = words[first].head
    if head == root:
        at = _main_hung_below(clause, root)
    elif words[head].head in (root, clause.subject_of(root)) and words[head].role == "advcl":
        at = _before_main(clause, head, root) if clause.subject_of(head) is not None else None
    else:
        return None
    if at is None:
        return None
    if words[at - 1].key in _COPULAS:
        if words[at].tag != "JJ" or at == first + 1:
            return None
        at += 1  # the price is low people will buy it
    at -= words[at - 1].key == "then"
    if at - first < _SHORTEST or any(_BREAK.fullmatch(each.text) for each in words[:at]):
        return None
    if words[at - 1].key in _NO_ENDS or words[at].tag not in _STARTS | {"RB"}:
        return None
    return at, "clause"


def _after_verbal(clause: Clause) -> tuple[int, Kind] | None:
    """The end of an opening with a verb in it: *having lost*, *to save money*, *by closing the mine*, *as soon as*."""
    words = clause.words
    root = _root(clause)
    if root is None or words[0].tag not in ("IN", "TO", "VBG", "VBN", "RB"):
        return None
    by_the_time = [each.key for each in words[:3]] == ["by", "the", "time"]
    without = words[0].tag == "IN" and root == 0 and clause.of_role(0, "pcomp")
    verbal = words[0].tag in ("TO", "VBG", "VBN") and root < 2 and clause.finite_of(root) is None
    if by_the_time or without or verbal:
        at = _main_hung_below(clause, root)
    else:
        subject, verb = clause.subject_of(root), clause.finite_of(root)
        if verb is None:
            return None
        if subject is None and words[0].tag == "TO" and words[0].role == "aux" and words[words[0].head].role == "advcl":
            at = _before_taken(clause, words[0].head, verb)
            return None if at is None or any(each.text == "," for each in words[:at]) else (at, "verbal")
        if subject is None or subject > verb:
            return None
        at = clause.below(subject)[0]
        tops = [n for n in clause.children[root] if n < at and words[n].role != "punct"]
        if len(tops) != 1 or clause.below(tops[0]) != tuple(range(at)) or not _has_verb(clause, tops[0]):
            return None
        if any(words[n].text == "," for n in range(at, verb)):
            return None
    if at is None or at < _SHORTEST or any(_BREAK.fullmatch(each.text) for each in words[:at]):
        return None
    before, after = words[at - 1], words[at]
    if after.tag not in _STARTS or after.text == "A" or before.key in _NO_ENDS or before.key in _COPULAS:
        return None
    return at, "verbal"


def _has_verb(clause: Clause, top: int) -> bool:
    """Whether an opening is made of a verb with what belongs to it."""
    words = clause.words
    if words[top].role in ("advcl", "csubj") and words[top].tag in ("VBG", "VBN", "VB"):
        named = words[clause.below(top)[-1] + 1].tag in ("DT", "PRP", "PRP$", "EX")
        return clause.subject_of(top) is None and (words[top].role == "advcl" or named)
    below = clause.below(top)
    if words[top].role == "prep":
        if any(tuple(each.key for each in words[: len(one)]) == one for one in _PREPOSITIONS):
            return True
        return any(words[n].role == "pcomp" and words[n].tag in ("VBG", "VBD", "VBN", "VBZ") for n in below) or (
            [each.key for each in words[:3]] == ["in", "order", "to"]
        )
    return words[0].key in ("as", "now") and any(
        clause.finite_of(n) is not None and clause.subject_of(n) is not None for n in below
    )


def _before_main(clause: Clause, head: int, root: int) -> int | None:
    """Where the main clause begins after an opening clause that hangs on it."""
    words = clause.words
    subject, verb = clause.subject_of(root), clause.finite_of(root)
    if head > root or clause.finite_of(head) is None or verb is None:
        return None
    last = clause.below(head)[-1]
    if subject is None:
        return None if words[root].key in _STATES else _before_taken(clause, head, verb)
    begins = min(set(clause.below(subject)) - set(clause.below(head)))
    if any(each.text == "," for each in words[last:verb]):
        return None
    if begins != last + 1:
        between = range(last + 1, begins)
        if not between or any(words[n].head != root or words[n].tag != "RB" for n in between):
            return None
    return last + 1


def _before_taken(clause: Clause, head: int, verb: int) -> int | None:
    """Where a subject begins that the parser gave to the opening: *when the train stopped the passengers looked up*."""
    words = clause.words
    noun = verb - 1
    if words[noun].tag not in NOUNS | {"PRP"} or noun not in clause.below(head):
        return None
    begins = clause.below(noun)[0]
    if words[noun].key == "others":
        return noun
    if begins == head or words[begins].tag not in ("DT", "PRP", "PRP$", "JJ", "NNS", "NNP", "CD"):
        return None
    if words[begins - 1].tag in ("IN", "TO", "CC", "DT", "JJ") or any(each.text == "," for each in words[begins:verb]):
        return None
    return begins


def _main_hung_below(clause: Clause, root: int) -> int | None:
    """Where the main clause begins that the parser hung on the opening one."""
    words = clause.words
    whole = clause.subject_of(root) is not None and clause.finite_of(root) is not None
    if words[root].tag in WH or not (whole or (root < 2 and words[0].tag in ("IN", "TO", "VBG", "VBN"))):
        return None
    mains = []
    for n in range(root + 1, len(words)):
        if words[n].role not in ("ccomp", "relcl", "advcl", "conj") or clause.finite_of(n) is None:
            continue
        subject = clause.subject_of(n)
        if subject is None or subject < root:
            continue
        marked = any(words[each].role in ("mark", "cc") or words[each].tag in WH for each in clause.children[n])
        if marked or any(words[each].tag in WH for each in clause.below(subject)):
            continue
        mains.append(n)
    if not mains and whole:
        # the company owned the only shop the miners paid: no name beside another goes without a comma
        return next(
            (
                clause.below(n)[0]
                for n in range(root + 2, len(words))
                if words[n].role == "appos"
                and words[clause.below(n)[0]].tag == "DT"
                and any(words[m].tag in ("VBD", "VBN") and m == n + 1 for m in clause.of_role(n, "acl"))
            ),
            None,
        )
    if len(mains) != 1:
        return None
    at = clause.below(mains[0])[0]
    if at <= root or any(each.text in ",;:" for each in words[at:-1]):
        return None
    return at


def _root(clause: Clause) -> int | None:
    roots = [n for n, each in enumerate(clause.words) if each.head == n]
    return roots[0] if len(roots) == 1 else None


def _has_clause_after_comma(clause: Clause, root: int) -> bool:
    """Whether a comma after a verb is followed by another verb."""
    words = clause.words
    comma = next((n for n in range(root, len(words)) if words[n].text == ","), len(words))
    return any(clause.is_finite(n) for n in range(comma, len(words)))
