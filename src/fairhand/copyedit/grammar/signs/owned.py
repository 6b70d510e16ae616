"""Whether the noun after a plural is owned by it, since there is no room for two phrases of nouns."""

from __future__ import annotations

from fairhand.copyedit.grammar.clauses import NOUNS, Clause
from fairhand.copyedit.grammar.counted import PERSONS
from fairhand.copyedit.grammar.number import singulars_of
from fairhand.copyedit.grammar.signs.possessors import (
    BODIES,
    GIVING,
    IN_WHOSE,
    INSTITUTIONS,
    OF_INSTITUTIONS,
    OF_WORKS,
    SAYING,
    WORKS,
)
from fairhand.language.lexicon import find_word

_BEING = frozenset("is was are were has had".split())
_FINITE = _BEING | frozenset("have will would can could may might must should does did".split())
_ADJECTIVES = frozenset("main only first last early late new old best worst biggest greatest largest oldest".split())
_IRREGULAR = frozenset(
    "said thought knew known found meant saw seen felt shown understood forgot forgotten implied studied".split()
)
_AS_NOUNS = frozenset({"NN", "NNS", "NNP", "VB", "VBP", "VBZ"})
"""What a noun may be taken for after a plural."""
_RELATIVE = frozenset("that which who whom what all as than whatever where how".split())


def find_owned(clause: Clause, first: int, at: int, owner: str, *, single: bool) -> bool:
    """Whether a plural can only be the possessive of what follows.

    Args:
        clause: The sentence.
        first: Where the plural's phrase opens.
        at: The plural.
        owner: Its singular.
        single: Whether the phrase opens with a word that no plural follows.
    """
    words = clause.words
    head = _head(clause, at)
    if head is None or any(each.key in BODIES for each in words[at + 1 : head + 1]):
        return False
    if (owner in WORKS and words[head].key not in OF_WORKS) or (
        owner in INSTITUTIONS and words[head].key not in OF_INSTITUTIONS
    ):
        return False
    if words[at + 1].key == "own":
        return words[first - 1].key not in _RELATIVE if first else True
    before = words[first - 1] if first else None
    after = words[head + 1] if head + 1 < len(words) else None
    if after is not None and after.text in ("-", "–", "/"):
        return False
    if single:
        finite = after is not None and after.key in _FINITE
        return (words[head].tag in NOUNS or finite) and (after is None or after.tag not in ("NN", "NNS"))
    if before is not None and (before.tag in NOUNS | {"PRP", "WDT", "WP"} or before.key in _RELATIVE):
        return False  # the results the authors report
    if first == at:
        return owner in PERSONS and at == 0 and _is_subject(clause, at, head)
    finite = after is not None and (after.key in _FINITE or after.tag in ("VBD", "VBZ", "MD"))
    if after is not None and finite and words[head].role in ("nsubj", "nsubjpass"):
        return words[at].head == head or (first == 0 and after.key in _BEING and not _is_past(words[head].key))
    if words[at].role == "nsubj" and words[head].role == "appos" and words[head].head == at and head > at + 1:
        return after is not None and after.key in _FINITE
    if before is not None and before.tag == "IN" and words[head].key in IN_WHOSE:
        return True
    is_verb = _may_be_verb(clause, head)
    compound = words[at].role in ("compound", "nmod", "poss", "amod") and words[at].head == head
    if words[head].tag in NOUNS and compound and _is_placed(clause, first, head, is_verb=is_verb):
        return True
    return (
        before is not None
        and before.tag.startswith("VB")
        and before.key not in GIVING
        and not (is_verb and (_may_take_clause(before.key) or words[at].role == "nsubj"))
        and not (is_verb and any(each.key in _RELATIVE for each in words[max(0, first - 7) : first]))
        and words[head].tag in _AS_NOUNS
        and (after is None or after.tag in (".", ",", "IN", "CC"))
    )


def _may_take_clause(verb: str) -> bool:
    """Whether a verb, in whatever form, is one that a clause may follow with no *that*."""
    stems = (verb, verb.removesuffix("s"), verb.removesuffix("ed"), verb.removesuffix("d"), verb.removesuffix("ing"))
    return any(stem in SAYING or f"{stem}e" in SAYING for stem in stems) or verb in _IRREGULAR


def _head(clause: Clause, at: int) -> int | None:
    """The noun that is owned: the next word, or the one after an adjective that stands so only in such a phrase."""
    words = clause.words
    head = at + 1
    if words[head].key == "own":
        return head
    if words[head].key in _ADJECTIVES:
        head += 1
        if head == len(words) or words[head].tag != "NN":
            return None
    while head + 1 < len(words) and words[head].tag == "NN" and words[head + 1].tag in ("NN", "NNS"):
        head += 1
    word = words[head]
    plain = word.text.isalpha() and word.text.islower() and find_word(word.key) is not None
    return head if plain and word.tag in _AS_NOUNS else None


def _is_subject(clause: Clause, at: int, head: int) -> bool:
    """Whether a plural without an article opens the subject of a verb: *Students essays were read*."""
    words = clause.words
    after = words[head + 1] if head + 1 < len(words) else None
    return (
        after is not None
        and after.key in _FINITE
        and words[head].role in ("nsubj", "nsubjpass")
        and words[at].head == head
        and words[at].role == "compound"
    )


def _is_placed(clause: Clause, first: int, head: int, *, is_verb: bool) -> bool:
    """Whether the parse has the two nouns as one phrase in a place where only one fits."""
    words = clause.words
    before = words[first - 1] if first else None
    after = words[head + 1] if head + 1 < len(words) else None
    if before is None or before.tag in (",", "CC"):
        return not is_verb and words[head].role in ("nsubj", "nsubjpass")
    if before.tag in ("IN", "TO"):
        return words[head].role == "pobj" and (
            not is_verb or after is None or after.tag in (",", ".", "IN", "CC", "-LRB-") or after.key in _BEING
        )
    if before.tag.startswith("VB"):
        return before.key not in GIVING and words[head].role in ("dobj", "attr") and not is_verb
    return False


def _may_be_verb(clause: Clause, head: int) -> bool:
    word = clause.words[head].key
    forms = [word, *singulars_of(word)]
    return any(known is not None and "v" in known.kinds for known in map(find_word, forms))


def _is_past(word: str) -> bool:
    known = find_word(word)
    return known is not None and "d" in known.kinds
