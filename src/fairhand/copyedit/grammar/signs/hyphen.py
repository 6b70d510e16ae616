"""A hyphen that is missing between words that are one before a noun, or that stands after an adverb in *-ly*.

**Source**: MLA 9, 2.35–2.41; APA 7, 6.11–6.12; Chicago 17, 7.81–7.89 (from memory); only where all three agree.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

from fairhand.copyedit.grammar.clauses import FINITE, Clause, word_at
from fairhand.copyedit.grammar.signs.compounds import (
    AFTER_POST,
    ENDED,
    EX,
    KIN,
    LANGUAGES,
    LATIN,
    MORE_BEFORE_NOUN,
    NUMBERS,
    ORDINALS,
    PARTICIPLES,
    PREFIXES,
    SELF,
    TENS,
    TWO_BEFORE_NOUN,
    UNITS,
    UNITS_BEFORE_NOUN,
    WELL,
    WELL_WHAT,
    YEARS,
)
from fairhand.language.lexicon import find_word
from fairhand.model.span import Span

Why = Literal["before noun", "number", "prefix", "after -ly"]
_CLAUSAL = frozenset("that because if as while since although though whether until unless before after than so".split())
_NOUN = frozenset({"NN", "NNS"})
_PLACING = frozenset("in of during from since until by into over for at on to before after through".split())
_AGE = frozenset("year month week day".split())
_BEFORE_MEASURE = frozenset("a an the this that his her their its our each every".split())
_MID = re.compile(r"(?:\d\d)?\d0s\Z|(?:nine|eigh|twen|seven|six|fif|four|thir)[a-z]*th\Z|(?:1\d|20)th\Z")
_CENTURY = re.compile(r"(?:1\d|20|21)(?:th|st)\Z")
_OPENING = (
    (frozenset({"self", "ex", "mid", "post"}) | TENS | PREFIXES | WELL | LANGUAGES | KIN | YEARS | NUMBERS)
    .union(one for one, _ in TWO_BEFORE_NOUN)
    .union(phrase[0] for phrase in MORE_BEFORE_NOUN)
)
_SECOND = ENDED | PARTICIPLES | {"century"}
"""Words that a compound opens with, and second ones: at any other place there is none."""


@dataclass(frozen=True, slots=True)
class WrongHyphen:
    """Words that want hyphens between them, or have one too many."""

    span: Span
    """Their place in the draft."""
    instead: str
    """How they are written."""
    why: Why


def find_wrong_hyphens(clause: Clause) -> Iterator[WrongHyphen]:
    """The hyphens of a sentence that are missing or too many."""
    words = clause.words
    keys = [word.text.lower() for word in words]
    past = 0
    for at, (one, two) in enumerate(pairwise(keys)):
        if at < past or not (one in _OPENING or two in _SECOND or one[0].isdigit()):
            if two == "-" and one.endswith("ly"):
                yield from _after_adverb(clause, at)
            continue
        found = _length_at(clause, at)
        if found is not None and not clause.hides(range(at, at + found[0])) and _is_apart(clause, at, found[0]):
            yield _joined(clause, at, *found)
            past = at + found[0]


def _length_at(clause: Clause, at: int) -> tuple[int, Why] | None:
    """How many words from here on are one, and why; None where they are not."""
    words = clause.words
    one, two = words[at].key, words[at + 1].key
    if one in TENS and two in UNITS:
        return None if at and words[at - 1].key in ("the", "these", "those") else (2, "number")
    if (one == "self" and two in SELF) or (one == "ex" and two in EX) or (one == "mid" and _MID.match(two)):
        return (2, "prefix")
    if (one in PREFIXES and _takes_prefix(clause, at)) or (one == "post" and two in AFTER_POST):
        return (2, "prefix")
    if (one, two) in TWO_BEFORE_NOUN:
        return (2, "before noun") if _is_modifier(clause, at, 2) else None
    if one in WELL and two in WELL_WHAT:
        asked = (
            at > 0 and words[at - 1].tag in ("DT", "PRP$", "JJ", "IN", "CD") and words[at - 1].key not in ("as", "that")
        )
        return (2, "before noun") if asked and _is_modifier(clause, at, 2) else None
    if two in PARTICIPLES and _is_participial(clause, at):
        return (2, "before noun") if _is_modifier(clause, at, 2) else None
    if two == "century" and (one in ORDINALS or _CENTURY.match(one)):
        return (2, "before noun") if _is_modifier(clause, at, 2) else None
    for length in (3, 4):
        if tuple(each.key for each in words[at : at + length]) in MORE_BEFORE_NOUN:
            asked = at > 0 and words[at - 1].tag in ("DT", "PRP$", "JJ", "IN")
            return (length, "before noun") if asked and _is_modifier(clause, at, length) else None
    third = word_at(words, at + 2)
    if one in KIN and two == "in" and third is not None and third.key == "law":
        return (3, "prefix") if _no_noun(clause, at + 3) else None
    if two in ENDED and words[at].tag in ("JJ", "NN", "CD", "RB") and not one.endswith("ly"):
        return (2, "before noun") if _is_modifier(clause, at, 2) else None
    if one in LANGUAGES and two == "speaking":
        return (2, "before noun") if _is_modifier(clause, at, 2) else None
    if one in YEARS and two == "year" and third is not None and third.key in ("student", "students"):
        return (2, "before noun")
    if words[at].tag == "CD" and one != "one" and third is not None and (at == 0 or words[at - 1].tag != "CD"):
        if two in _AGE and third.key == "old":
            return (3, "before noun")
        asked = at > 0 and words[at - 1].key in _BEFORE_MEASURE
        if two in UNITS_BEFORE_NOUN and asked and third.tag in _NOUN and _is_modifier(clause, at, 2):
            return (2, "before noun")
    return None


def _no_noun(clause: Clause, at: int) -> bool:
    """Whether no noun stands at an index: *in law schools* is another thing."""
    word = word_at(clause.words, at)
    return word is None or word.tag not in _NOUN


def _is_participial(clause: Clause, at: int) -> bool:
    """Whether a noun qualifies the participle after it: *a community based programme*, not *it based its view*."""
    words = clause.words
    before = word_at(words, at - 1)
    return (
        words[at].tag == "NN"
        and words[at].text.isalpha()
        and words[at + 1].tag in ("VBN", "VBD", "JJ")
        and words[at + 1].head > at + 1
        and before is not None
        and (before.key in ("a", "an") or (before.tag == "IN" and before.key not in _CLAUSAL))
    )


def _takes_prefix(clause: Clause, at: int) -> bool:
    words = clause.words
    after = words[at + 1]
    known = find_word(after.key)
    plain = known is not None and bool(known.countries) and after.text.isalpha() and after.text.islower()
    named = after.tag in ("JJ", "NNP", "NNPS") and after.text.istitle() and words[at].key in ("anti", "non", "pre")
    return (
        (plain or named)
        and len(after.text) > 2
        and after.key not in LATIN
        and (words[at].text.islower() or (at == 0 and words[at].text.istitle()))
    )


def _is_modifier(clause: Clause, at: int, length: int) -> bool:
    """Whether a noun follows that the words before it qualify."""
    words = clause.words
    head = at + length
    while head < len(words) and words[head].tag == "JJ" and words[head].text.isalpha() and head < at + length + 2:
        head += 1
    noun = word_at(words, head)
    if noun is None or noun.tag not in _NOUN or not noun.text.isalpha() or clause.hides((head,)):
        return False
    first = at - 1 if at and words[at - 1].key in ("early", "late", "mid", "same", "whole", "very") else at
    before, prior = word_at(words, first - 1), word_at(words, first - 2)
    after = word_at(words, head + 1)
    if before is not None and before.key == "the" and prior is not None and prior.key in _PLACING:
        # in the nineteenth century novels were cheap
        return head == at + length and noun.tag == "NN" and (after is None or after.tag not in FINITE | _NOUN)
    return True


def _is_apart(clause: Clause, at: int, length: int) -> bool:
    """Whether blanks stand between the words, none is hyphened to what is beside them, and none has a capital."""
    words = clause.words
    beside = [word_at(words, at - 1), word_at(words, at + length)]
    if any(each is not None and each.text in ("-", "–", "/") for each in beside):
        return False
    inner = words[at : at + length]
    blanks = all(two.span.start == one.span.end + 1 for one, two in pairwise(inner))
    return blanks and (words[at].key in PREFIXES or not any(each.text[0].isupper() for each in inner[1:]))


def _joined(clause: Clause, at: int, length: int, why: Why) -> WrongHyphen:
    inner = clause.words[at : at + length]
    return WrongHyphen(clause.place(at, at + length - 1), "-".join(each.text for each in inner), why)


def _after_adverb(clause: Clause, at: int) -> Iterator[WrongHyphen]:
    """*A highly-regarded journal*."""
    words = clause.words
    if at + 3 >= len(words) or words[at + 1].text != "-" or not words[at].key.endswith("ly"):
        return
    adverb = find_word(words[at].key)
    if adverb is None or adverb.kinds != "y" or words[at + 2].tag not in ("VBN", "JJ", "VBG", "VBD"):
        return
    before, after = word_at(words, at - 1), words[at + 3]
    if (before is not None and before.text == "-") or after.text == "-" or clause.hides((at, at + 2)):
        return
    if words[at].span.end != words[at + 1].span.start or words[at + 1].span.end != words[at + 2].span.start:
        return
    told = f"{words[at].text} {words[at + 2].text}"
    yield WrongHyphen(clause.place(at, at + 2), told, "after -ly")
