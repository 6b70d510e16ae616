"""Where an opening with a verb in it ends and the main clause begins: *when the tide turned*, *having lost the vote*.

**Source**: as ``opening``, which asks here. The parser, which misses the comma too, hangs the main clause on the
opening as often as the other way about, or gives its subject to the verb before.
"""

from __future__ import annotations

import re
from typing import Literal

from fairhand.copyedit.grammar.clauses import NOUNS, WH, Clause
from fairhand.copyedit.grammar.left_out import may_take_clause

Kind = Literal["adverb", "phrase", "clause", "verbal", "long"]
"""What opens a sentence."""
_OPENS = frozenset(
    "although though because since while whereas if unless until when whenever after before once as".split()
)
"""Words that open a clause that is part of another."""
_BEFORE = frozenset("even just only".split())
_STATES = frozenset("is was remains depends matters mean means meant".split())
"""*When the ship left the harbour is not known*: the clause is the subject."""
STARTS = frozenset({"DT", "PRP", "PRP$", "EX", "NNS", "NNP", "NNPS", "NN", "JJ", "CD"})
"""What a subject may begin with."""
_NO_ENDS = frozenset("so that and or but than of as".split())
_COPULAS = frozenset("is are was were be".split())
_PREPOSITIONS = (("according", "to"), ("contrary", "to"), ("unlike",))
"""Those whose phrase has its comma however short it is."""
_BREAK = re.compile(r"[,;:()\[\]—–]|--*")
"""Marks with which an opening has its end, or is more than an opening."""
_SHORTEST = 3
"""Words of the shortest opening clause that is told."""
_LONG = 8
"""Words of a phrase without a verb that is asked about; our own reckoning of what handbooks call long."""


def end_of_clause(clause: Clause) -> tuple[int, Kind] | None:
    """The end of an opening clause, where the main clause follows at once.

    >>> from fairhand.language.parsing import parse_sentences
    >>> text = "When the train stopped the passengers looked up."
    >>> end_of_clause(Clause(text, 0, parse_sentences([text])[0]))
    (4, 'clause')
    """
    words = clause.words
    first = 1 if words[0].key in _BEFORE else 0
    if words[first].key not in _OPENS or words[first].tag not in ("IN", "WRB", "RB"):
        return None
    root = root_of(clause)
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
    if (
        at - 1 in (head, *clause.of_role(head, "acomp"))
        and words[at].tag == "PRP"
        and may_take_clause(clause, head, at)
    ):
        return None  # although it is unlikely you will see it
    if words[at - 1].key in _COPULAS:
        if words[at].tag != "JJ" or at == first + 1:
            return None
        at += 1  # the price is low people will buy it
    at -= words[at - 1].key == "then"
    if at - first < _SHORTEST or any(_BREAK.fullmatch(each.text) for each in words[:at]):
        return None
    if words[at - 1].key in _NO_ENDS or words[at].tag not in STARTS | {"RB"}:
        return None
    return at, "clause"


def end_of_verbal(clause: Clause) -> tuple[int, Kind] | None:
    """The end of an opening with a verb in it, *having lost*, *to save money*, *as soon as*; or of a long phrase.

    >>> from fairhand.language.parsing import parse_sentences
    >>> text = "By closing the mine the company lost its best workers."
    >>> end_of_verbal(Clause(text, 0, parse_sentences([text])[0]))
    (4, 'verbal')
    """
    words = clause.words
    root = root_of(clause)
    if root is None or words[0].tag not in ("IN", "TO", "VBG", "VBN", "RB"):
        return None
    kind: Kind | None = "verbal"
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
        if len(tops) != 1 or clause.below(tops[0]) != tuple(range(at)):
            return None
        if any(words[n].text == "," for n in range(at, verb)):
            return None
        long = words[tops[0]].role == "prep" and at >= _LONG
        if not _has_verb(clause, tops[0]):
            kind = "long" if long and words[at - 1].tag != "IN" else None
    if at is None or kind is None or at < _SHORTEST or any(_BREAK.fullmatch(each.text) for each in words[:at]):
        return None
    before, after = words[at - 1], words[at]
    if after.tag not in STARTS or after.text == "A" or before.key in _NO_ENDS or before.key in _COPULAS:
        return None
    return at, kind


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


def root_of(clause: Clause) -> int | None:
    """The chief word of a sentence; None where the parser sees several.

    >>> from fairhand.language.parsing import parse_sentences
    >>> root_of(Clause("", 0, parse_sentences(["She reads."])[0]))
    1
    """
    roots = [n for n, each in enumerate(clause.words) if each.head == n]
    return roots[0] if len(roots) == 1 else None
