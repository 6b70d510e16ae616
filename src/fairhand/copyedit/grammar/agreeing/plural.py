"""A noun that wants its plural: *several study*, *one of the reason*.

**Source**: handbooks of usage on noun endings; R. Quirk and others 1985, 5.10–5.26 on what goes with which number.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from fairhand.copyedit.grammar.agreeing.phrase_end import ends_phrase
from fairhand.copyedit.grammar.clauses import Clause
from fairhand.copyedit.grammar.counted import (
    BEFORE_OF_THE,
    COUNTS,
    KINDS,
    LOOSE,
    MANY_OF,
    MEASURES,
    NAMED_IN_ING,
    PERSONS,
    SAME,
    SCORES,
    SHARES,
    UNCOUNTED,
    WITH_ONE,
)
from fairhand.copyedit.grammar.number import IRREGULAR, OPEN
from fairhand.language.lexicon import find_word
from fairhand.language.parsing import Parsed, Sentence
from fairhand.model.span import Span

_LEADS = frozenset("VB VBD VBP VBZ VBN DT PRP$ TO RB".split())
"""Parts of speech that a number in figures may follow where it counts."""


_BEFORE_ALONE = frozenset(
    "the of at by under over before after between first last other latter former next these those only and or but when"
    " if as while since until because that which who".split()
)
"""What a number that stands for a noun may follow."""


@dataclass(frozen=True, slots=True)
class Uncounted:
    """A word that asks for the plural before a noun that has none: *these evidence*."""

    span: Span
    """The word's place in the draft."""
    word: str
    noun: str
    instead: str
    """The word that goes with one; empty where none does."""


@dataclass(frozen=True, slots=True)
class Singular:
    """A noun in the singular where only the plural fits."""

    span: Span
    """Its place in the draft."""
    word: str
    after: str
    """The word that asks for the plural."""
    instead: str


def find_missing_plurals(clause: Clause) -> Iterator[Singular]:
    """The nouns of a sentence that want their plural."""
    for at, word in enumerate(clause.words):
        if (
            not _looks_single(word)
            or word.key in UNCOUNTED
            or _is_same(clause, at)
            or not word.text.islower()
            or not word.text.isalpha()
        ):
            continue
        plural = plural_of(word.key)
        if plural is None or not ends_phrase(clause, at):
            continue
        asks = _asked_by(clause, at)
        if asks is not None:
            yield Singular(clause.place(at), word.text, asks, plural)


def find_uncounted(clause: Clause) -> Iterator[Uncounted]:
    """The words that ask for the plural of a noun that has none."""
    words = clause.words
    for at, word in enumerate(words):
        if at == 0 or word.key not in UNCOUNTED or word.tag not in ("NN", "NNS") or not ends_phrase(clause, at):
            continue
        first = at - 1
        while first > 0 and words[first].tag in ("JJ", "JJR", "JJS") and words[first].key not in WITH_ONE:
            first -= 1
        asks = words[first]
        if asks.key in WITH_ONE and not clause.hides(range(first, at)) and word.role != "compound":
            yield Uncounted(clause.place(first), asks.text, word.text, WITH_ONE[asks.key])


def _looks_single(word: Parsed) -> bool:
    """Whether a noun has no plural's ending; the tagger may have taken the number before it at its word."""
    return word.tag == "NN" or (word.tag == "NNS" and word.key[-1:] != "s" and word.key not in IRREGULAR.values())


def _is_same(clause: Clause, at: int) -> bool:
    """Whether a noun is many without an ending; not the *kind* of *two kind of lamp*, which *these kind of* excuses."""
    word, near = clause.words[at], clause.words[at - 1 : at] + clause.words[at + 1 : at + 2]
    kinds = word.key in KINDS and len(near) == 2 and near[0].tag == "CD" and near[1].key == "of"
    return word.key in SAME and not kinds


def plural_of(noun: str) -> str | None:
    """The plural of a noun that is counted; None where there is none, or it is hardly ever used."""
    known = find_word(noun)
    if known is None or (noun.endswith("ing") and noun not in NAMED_IN_ING):
        return None
    if noun in IRREGULAR:
        return IRREGULAR[noun]
    if noun.endswith("y") and noun[-2:-1] not in "aeiou":
        plural = noun[:-1] + "ies"
    elif noun.endswith(("s", "x", "z", "ch", "sh")):
        plural = noun + "es"
    else:
        plural = noun + "s"
    many = find_word(plural)
    if many is None or not many.countries or many.weight + 22 < known.weight:
        return None
    return plural


def _is_mostly_many(noun: str) -> bool:
    """Whether the plural is written about as often as the singular: a noun that is counted."""
    one, many = find_word(noun), find_word(plural_of(noun) or "")
    return one is not None and many is not None and many.weight + 3 >= one.weight and noun not in OPEN


def _is_adjective(words: Sentence, at: int) -> bool:
    """Whether a form in *-ing* stands before its noun as an adjective does; not: *those using gas*."""
    return words[at].tag == "VBG" and words[at].role == "amod" and at > 0 and words[at - 1].key != "those"


def _is_counted_other(words: Sentence, at: int) -> bool:
    """Whether it is the *other* of *several other*, or the *such* of *many such*."""
    return at > 0 and words[at].key in ("other", "such", "different") and words[at - 1].key in COUNTS | {"of"}


def _asked_by(clause: Clause, at: int) -> str | None:
    """The word before that asks for the plural."""
    words = clause.words
    first = at - 1
    while (
        first >= 0
        and (words[first].tag in ("JJ", "JJR", "JJS", "VBN", "RB", "RBS") or _is_adjective(words, first))
        and (words[first].key not in COUNTS | LOOSE or words[first].tag == "RBS" or _is_counted_other(words, first))
    ):
        first -= 1
    if (
        first > 0
        and words[first].tag in ("NN", "NNP")
        and words[first].text.islower()
        and words[first].role == "compound"
        and words[first].head == at
    ):
        bare = first < 2 or (words[first - 2].text != "(" and words[first - 2].key != "the")
        counted = words[first - 1].tag == "CD" or words[first - 1].key in (
            "many",
            "several",
            "numerous",
            "various",
            "few",
        )
        if words[first].key in MEASURES or not counted or not bare:
            return None
        first -= 1  # seven stone bridges
    if first < 0 or at - first > 4:
        return None
    if any("-" in each.text and each.text != "-" for each in words[first:at]):
        return None
    asks = words[first]
    if clause.hides(range(first, at)) or (first + 1 < at and any(w.text in "-–/" for w in words[first + 1 : at])):
        return None
    if asks.head != at and words[at].head != first and asks.tag not in ("DT", "PRP$"):
        return None
    if asks.key == "one" and first > 1 and words[first - 1].text == "-" and words[first - 2].key in COUNTS:
        return f"{words[first - 2].text}-one" if not _may_be_verb(words, at) else None
    if asks.key in COUNTS or _is_figure(clause, first, at):
        return _counted(clause, first, at)
    if asks.key in LOOSE:
        return asks.text if _loosely(clause, first, at) else None
    if asks.key == "of" and first:
        head = words[first - 1]
        told = head.key in SCORES or (
            head.key in MANY_OF and (words[at].key in PERSONS or _is_mostly_many(words[at].key))
        )
        return f"{head.text} of" if told else None
    if asks.key == "the" and first and words[first - 1].key == "among" and words[at].key in PERSONS:
        return "among"
    if asks.tag in ("DT", "PRP$") and first >= 2 and words[first - 1].key == "of":
        head = words[first - 2]
        all_of = head.key == "all" and at + 1 < len(words) and words[at + 1].key in ("are", "were", "have")
        told = ((head.key in BEFORE_OF_THE or all_of) and words[at].key not in OPEN) or (
            head.key in SHARES and words[at].key in PERSONS
        )
        return f"{head.text} of" if told else None
    return None


def _is_figure(clause: Clause, at: int, noun: int) -> bool:
    """Whether it is a number in figures that counts a noun: no year, page, share, measure or formula."""
    words = clause.words
    text, key = words[at].text, words[noun].key
    year = len(text) == len("1900") and text[0] in "12"
    if at == 0 or not text.isdigit() or year or int(text) == 1 or key in MEASURES or len(key) < len("home"):
        return False
    plain = all(each.text.isalpha() for each in words[at + 1 : noun])
    after = words[noun + 1].tag if noun + 1 < len(words) else "."
    before = words[at - 1]
    led = before.tag in _LEADS or before.key in ("of", "by", "with")
    return plain and led and after[:2] not in ("VB", "JJ", "RB") and (key in PERSONS or _is_mostly_many(key))


def _loosely(clause: Clause, first: int, at: int) -> bool:
    """Whether *most*, *such* or *other* wants the plural: of a person, or before a verb in the plural."""
    words = clause.words
    if first and (
        words[first - 1].tag in ("DT", "PDT", "PRP$", "POS", "CD", "NN") or words[first - 1].key in ("no", "any")
    ):
        return False
    if words[first].key == "different":
        return (first == 0 or words[first - 1].tag != "RB") and _is_subject_of_many(clause, at)
    if words[first].key == "some" or (words[first].key == "such" and words[first + 1].tag == "DT"):
        return False
    return words[at].key in PERSONS or _is_subject_of_many(clause, at)


def _is_subject_of_many(clause: Clause, at: int) -> bool:
    """Whether the word is the subject of a verb that is in the plural beyond doubt."""
    if clause.words[at].role not in ("nsubj", "nsubjpass") or clause.of_role(at, "cc", "conj"):
        return False
    verb = clause.finite_of(clause.words[at].head)
    return verb is not None and clause.words[verb].key in ("are", "were", "have") and at < verb <= at + 2


def _counted(clause: Clause, first: int, at: int) -> str | None:
    """The number or *many*, where it belongs to this noun."""
    words = clause.words
    asks = words[first]
    before = words[first - 1].key if first else ""
    if before == "-" and first > 1 and words[first - 2].key in COUNTS:
        return f"{words[first - 2].text}-{asks.text}"
    if asks.key in COUNTS and first + 1 == at and _may_stand_alone(words, first) and _may_be_verb(words, at):
        return None  # the two share a theme; of the four, two place it in 1066
    if asks.tag == "CD" and before in ("a", "an", "one", "page", "p.", "chapter", "section", "figure", "table", "-"):
        return None
    if asks.key == "both" and any(each.key == "and" for each in words[first : at + 7]):
        return None
    if asks.key in ("both", "few", "many") and first + 1 < at and words[first + 1].tag == "DT":
        return None
    return asks.text


def _may_stand_alone(words: Sentence, number: int) -> bool:
    """Whether a number may be the subject itself, or an age: it opens a clause, or follows *the*, *under*, *age of*."""
    if number == 0:
        return True
    before = words[number - 1]
    return before.key in _BEFORE_ALONE or not before.text[0].isalnum()


def _may_be_verb(words: Sentence, at: int) -> bool:
    """Whether a noun may be the verb, since no other follows at once."""
    known = find_word(words[at].key)
    if known is None or "v" not in known.kinds:
        return False
    return at + 1 >= len(words) or not (words[at + 1].tag in ("MD", "VBZ", "VBP", "VBD") and words[at].tag == "NN")
