"""A form of *be* whose loss the parse shows: *it can seen*, *they able to*, *it not clear*.

**Source**: "missing word" and "missing verb" in handbooks of usage; each rule asks for more signs than the parse alone.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping

from fairhand.copyedit.grammar.clauses import FINITE, NOUNS, Clause, word_at
from fairhand.copyedit.grammar.missing.missing_phrase import MissingWord, is_past, missing

_MODALS = frozenset("can could should would must will may might cannot".split())
_PARTICIPLES = frozenset(
    "seen done given taken known shown written chosen driven grown eaten broken spoken stolen forgotten hidden drawn"
    " thrown woken worn torn sworn born blamed used considered called changed added based described explained expected"
    " affected allowed avoided caused created decided defined found made needed divided achieved applied replaced"
    " reduced increased improved solved treated understood viewed regarded compared required believed said told".split()
)
"""Participles that are no bare verbs; *found* is one too, and is left out after *may* and *might*."""
_STATES = frozenset(
    "able unable possible impossible necessary important difficult aware unaware responsible useful interesting"
    " dangerous available different similar interested afraid happy willing ready capable".split()
)
"""Adjectives that stand after a form of *be*."""
_BETWEEN = frozenset("not also often never always easily only still now then clearly".split())
_WH = frozenset("who what whatever whoever as if".split())
_LOCATED = frozenset("located situated known composed supposed concerned".split())


def _after_modal(clause: Clause, at: int) -> Iterator[MissingWord]:
    """*It can seen*, *they will able*: a form of *be* is missing."""
    words = clause.words
    if words[at].tag != "MD":
        return
    verb = at + 1
    if words[verb].key in _BETWEEN or words[verb].tag == "RB":
        verb += 1
    if (
        verb >= len(words)
        or clause.hides((verb,))
        or at == 0
        or words[at - 1].tag not in (*NOUNS, "PRP", "WDT", "EX", "DT", "CC")
    ):
        return
    if any(each.key in _WH for each in words[max(0, at - 6) : at]) or words[at - 1].key in ("those", "the", "a"):
        return
    after = word_at(words, verb + 1)
    if words[verb].key in _STATES:
        if after is None or after.tag not in NOUNS:
            yield missing(clause, verb - 1, "be")
        return
    past = is_past(words[verb].key) or (words[verb].tag in ("VBN", "VBD") and words[verb].key in _PARTICIPLES)
    if not past or (words[verb].key == "found" and words[at].key in ("may", "might", "would")):
        return
    if (words[verb].key == "used" and after is not None and after.key == "to") or words[max(0, at - 2)].key == "all":
        return
    if after is None or after.tag in ("IN", "TO", ".", ",", "CC", "RB"):
        yield missing(clause, verb - 1, "be")


def _nominative(clause: Clause, at: int) -> Iterator[MissingWord]:
    """*They able to*: the verb is missing before an adjective."""
    words = clause.words
    before, after = (words[at - 1] if at else None), word_at(words, at + 2)
    if words[at + 1].key not in _STATES or after is None or after.tag not in ("TO", "IN", ".", ","):
        return
    if before is None or before.text in (",", ";", ":") or before.key in ("that", "because", "but", "although"):
        pronoun = words[at].key
        yield missing(clause, at, "am" if pronoun == "i" else "are" if pronoun in ("they", "we") else "is")


def _being(pronoun: str) -> tuple[str, str]:
    """The forms of *be* after a pronoun: of now, and of the past."""
    if pronoun == "i":
        return "am", "was"
    return ("are", "were") if pronoun in ("they", "we") else ("is", "was")


def _before_not(clause: Clause, at: int) -> Iterator[MissingWord]:
    """*It not clear*: the verb is missing before *not*."""
    words = clause.words
    if at == 0 or words[at - 1].key not in ("it", "he", "she", "they", "we", "i"):
        return
    before = words[at - 2] if at > 1 else None
    if before is not None and not (
        before.text in (",", ";", ":") or before.key in ("that", "because", "but", "although")
    ):
        return
    after = words[at + 1]
    if after.tag not in ("JJ", "DT") or after.key in ("only", "even", "all", "being", "every", "any"):
        return
    second = word_at(words, at + 2)
    if after.tag == "JJ" and (second is None or second.tag in FINITE):
        return
    pronoun = words[at - 1].key
    yield missing(clause, at - 1, *_being(pronoun))


def _without_verb(clause: Clause, at: int) -> Iterator[MissingWord]:
    """*The children not allowed to work.*: the sentence has no verb at all."""
    words = clause.words
    if at == 0 or at + 2 >= len(words) or words[at - 1].tag not in ("NN", "NNS") or words[-1].text != ".":
        return
    if words[0].tag not in ("DT", "PRP$") or any(each.text in (",", ";", ":", "(", "–", "—") for each in words):
        return
    if words[at + 1].tag not in ("VBN", "JJ") or any(map(clause.is_finite, range(len(words)))):
        return
    if any(each.tag == "NNS" for each in words[at + 2 :]):
        return  # any attribute not present defaults to one
    plural = words[at - 1].tag == "NNS"
    yield missing(clause, at - 1, "are" if plural else "is", "were" if plural else "was")


def _located(clause: Clause, at: int) -> Iterator[MissingWord]:
    """*The houses which located there*."""
    words = clause.words
    after = word_at(words, at + 2)
    if not at or words[at - 1].tag not in NOUNS or words[at + 1].key not in _LOCATED or words[at + 1].tag != "VBN":
        return
    if after is not None and after.tag in ("IN", "TO"):
        yield missing(clause, at, "are" if words[at - 1].tag == "NNS" else "is")


def _negated(clause: Clause, at: int) -> Iterator[MissingWord]:
    """Both rules that look before *not*."""
    yield from _before_not(clause, at)
    yield from _without_verb(clause, at)


BE_RULES: Mapping[str, Callable[[Clause, int], Iterator[MissingWord]]] = {
    **dict.fromkeys(_MODALS, _after_modal),
    **dict.fromkeys(("he", "she", "they", "we", "i"), _nominative),
    **dict.fromkeys(("which", "that"), _located),
    "not": _negated,
}
"""By the word that gives the gap away: each a rule for the places of a sentence where it stands."""
