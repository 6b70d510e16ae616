"""Set phrases that lost a small word: *according the report*, *as result of*, *one the most*.

The phrases stand in ``missing_words.txt``; each is such that English has no other reading for what is left.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from importlib.resources import files

from fairhand.copyedit.grammar.clauses import WH, Clause, word_at
from fairhand.language.lexicon import find_word
from fairhand.language.parsing import Sentence
from fairhand.model.span import Span

BASE = frozenset(
    "be become have do go know see make take give get understand learn explain create avoid achieve maintain provide"
    " prove improve allow include keep find tell bring choose decide describe ensure follow write speak think believe"
    " remember forget happen prevent protect reduce increase destroy develop discover discuss eat enjoy examine"
    " identify solve remain seem obtain consider determine send sell teach accept become grow lose define".split()
)
"""Bare verbs that are no nouns, or hardly ever."""
_KINDS: Mapping[str, frozenset[str]] = {
    "RBS": frozenset({"RBS"}),
    "JJS": frozenset({"JJS"}),
    "NN": frozenset({"NN"}),
    "JJ": frozenset({"JJ"}),
    "CC": frozenset({"CC"}),
    "VBN": frozenset({"VBN"}),
    "NNS": frozenset({"NNS"}),
    "NNP": frozenset({"NNP"}),
    "VBG": frozenset({"VBG"}),
    "CD": frozenset({"CD"}),
    "IN": frozenset({"IN", "TO"}),
}
_DETERMINERS = frozenset("the a an this these those some its their his her our my your".split())
_NOMINATIVE = frozenset("i he she they we".split())


@dataclass(frozen=True, slots=True)
class MissingWord:
    """A place where a word of the grammar is missing."""

    span: Span
    """The words beside it, in the draft."""
    at: int
    """Where it belongs, in the draft: before a blank."""
    word: str
    """What belongs there."""
    other: str = ""
    """What else may be meant."""


@dataclass(frozen=True, slots=True)
class _Phrase:
    before: tuple[str, ...]
    word: str
    after: tuple[str, ...]


@lru_cache(maxsize=1)
def _phrases() -> tuple[_Phrase, ...]:
    text = (files("fairhand") / "copyedit" / "grammar" / "missing" / "missing_words.txt").read_text("utf-8")
    rows = [line.split(" > ") for line in text.splitlines() if line and not line.startswith("#")]
    return tuple(_Phrase(tuple(before.split()), word, tuple(after.split())) for before, word, after in rows)


@lru_cache(maxsize=1)
def _by_last_word() -> Mapping[str, tuple[_Phrase, ...]]:
    """The phrases by the word before the gap, so that each word of a sentence asks for a few only."""
    out: dict[str, tuple[_Phrase, ...]] = {}
    for phrase in _phrases():
        for word in phrase.before[-1].split("|"):
            out[word] = (*out.get(word, ()), phrase)
    return out


def find_broken_phrases(clause: Clause) -> Iterator[MissingWord]:
    """The set phrases of a sentence that lost a word."""
    words = clause.words
    known = _by_last_word()
    for at in range(len(words) - 1):
        for phrase in known.get(words[at].text.lower(), ()):
            if _fits(clause, at, phrase):
                yield missing(clause, at, phrase.word)
                break


def missing(clause: Clause, at: int, word: str, other: str = "") -> MissingWord:
    """A word that is missing after the one at an index."""
    place = clause.place(at, at + 1)
    return MissingWord(place, clause.place(at).end, word, other)


def _fits(clause: Clause, at: int, phrase: _Phrase) -> bool:
    words = clause.words
    first = at - len(phrase.before) + 1
    last = at + len(phrase.after)
    if not (_match(words, at + 1, phrase.after) and _match(words, first, phrase.before)):
        return False
    if clause.hides(range(max(0, first), min(len(words), last + 1))):
        return False
    return phrase.before != ("^", "there") or not _has_verb(clause)


def _has_verb(clause: Clause) -> bool:
    """Whether a sentence has a finite verb outside its relative clauses."""
    words = clause.words
    first = next((number for number in range(len(words)) if clause.is_finite(number)), None)
    return first is not None and not any(each.tag in WH or each.key in ("that", "to") for each in words[:first])


def _match(words: Sentence, first: int, parts: Sequence[str]) -> bool:
    return all(_is(words, first + number, part) for number, part in enumerate(parts))


def _is(words: Sentence, at: int, part: str) -> bool:
    """Whether the word at an index is one of those that a part names."""
    negated = part.startswith("!")
    return any(_is_one(words, at, each) for each in part.removeprefix("!").split("|")) != negated


def is_past(word: str) -> bool:
    """Whether it is a past form, and no bare verb.

    >>> is_past("compromised"), is_past("cut")
    (True, False)
    """
    known = find_word(word)
    return known is not None and "d" in known.kinds and "v" not in known.kinds


def is_bare(word: str) -> bool:
    """Whether it may be a bare verb."""
    known = find_word(word)
    return known is not None and "v" in known.kinds


def _ends_phrase(words: Sentence, at: int) -> bool:
    after = word_at(words, at + 1)
    return after is None or after.tag not in ("DT", "PRP$", "PRP", "NNS", "JJ", "IN", "NN", "WRB", "RP", "TO")


def _is_one(words: Sentence, at: int, named: str) -> bool:
    word = word_at(words, at)
    if named == "^":
        return at < 0
    if word is None:
        return named == "." and at >= len(words)
    if named == ".":
        return not word.text[0].isalnum()
    if named == "BASE":
        return (word.key in BASE and word.tag != "VBN") or (
            word.tag == "VB" and is_bare(word.key) and not _ends_phrase(words, at)
        )
    if named == "DET":
        return word.key in _DETERMINERS
    if named == "VERB":
        after = word_at(words, at + 1)
        verbal = word.tag in ("VB", "VBP") or (word.tag == "NN" and after is not None and after.tag in ("DT", "PRP$"))
        return verbal and is_bare(word.key) and not _ends_phrase(words, at)
    if named == "BARE":
        return word.tag in ("VB", "VBP", "NN") and is_bare(word.key)
    if named == "PAST":
        return word.tag in ("VBN", "VBD") and is_past(word.key)
    if named == "NOM":
        return word.key in _NOMINATIVE
    if named in _KINDS:
        return word.tag in _KINDS[named] and word.text.isalpha()
    return word.key == named
