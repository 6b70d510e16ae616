"""A possessive without its apostrophe: *the authors argument*, *the citys council*, *childrens books*.

**Source**: MLA 9, 2.72–2.82; APA 7, 6.11 with its dictionary; Chicago 17, 7.16–7.29 (from memory). Attributive plurals
(*sports club*, *teachers college*) are let be, and so are nouns that two verbs may share: *it cost the farmers money*.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator
from dataclasses import dataclass

from fairhand.copyedit.grammar.clauses import FINITE, NOUNS, Clause
from fairhand.copyedit.grammar.number import singulars_of
from fairhand.copyedit.grammar.signs.owned import find_owned
from fairhand.copyedit.grammar.signs.possessors import (
    GREATEST_OF,
    INSTITUTIONS,
    OF_PEOPLE,
    OF_TIMES,
    OWNERS,
    TIMES,
    WORKS,
)
from fairhand.language.lexicon import find_word
from fairhand.language.parsing import Parsed
from fairhand.model.span import Span

_ONE = frozenset("a an this each every another one".split())
_MANY = frozenset("these those many several both few two three four five six seven eight nine ten all".split())
_DETERMINERS = frozenset({"DT", "PRP$", "CD", "PDT", "WP$"})
_GIVEN = {
          "childrens": "children's", "womens": "women's", "mens": "men's", "todays": "today's",
          "yesterdays": "yesterday's", "tomorrows": "tomorrow's", "everyones": "everyone's",
          "someones": "someone's", "anyones": "anyone's", "everybodys": "everybody's", "nobodys": "nobody's",
}  # fmt: skip
"""Words that are none without their apostrophe."""
_PEOPLES = frozenset("other many some most young old poor rich few ordinary these those different black white".split())
_IN_Y = re.compile(r"[A-Z]?[a-z]+[^aeiou]ys")
_SHORTEST_NAME = 4
_NAMES_BEFORE = frozenset("the both two all many three several these those".split())


@dataclass(frozen=True, slots=True)
class WrongApostrophe:
    """A word with an apostrophe missing, or one too many."""

    span: Span
    """Its place in the draft."""
    instead: str
    """The word as it should be, with a straight apostrophe."""
    owned: str = ""
    """What it owns; empty where the word should have no apostrophe."""
    other: str = ""
    """The other possessive that may be meant: of several, or of one."""


def find_missing_apostrophes(clause: Clause, names: Collection[str] = ()) -> Iterator[WrongApostrophe]:
    """The words of a sentence that own what follows, and do not show it.

    Args:
        clause: The sentence.
        names: Names that the draft has elsewhere.
    """
    words = clause.words
    for at, word in enumerate(words[:-1]):
        if word.text[-1] != "s" or not word.text.isalpha() or clause.hides((at, at + 1)):
            continue
        instead, other = _instead(clause, at, names) or ("", "")
        if instead:
            owned = "" if instead == "Let's" else words[at + 1].text
            yield WrongApostrophe(clause.place(at), instead, owned, other)


def _instead(clause: Clause, at: int, names: Collection[str]) -> tuple[str, str] | None:
    """The possessive that is meant, and the other one that may be."""
    words = clause.words
    word, owned, before = words[at], words[at + 1], words[at - 1] if at else None
    key = word.key
    if key in _GIVEN:
        told = owned.tag in NOUNS | {"JJ", "JJS", "VBG"} and (key != "mens" or owned.key not in ("rea", "sana"))
        form = _GIVEN[key]
        return (form.capitalize() if word.text[0].isupper() else form, "") if told else None
    if key == "lets":
        told = before is None and owned.tag == "VB" and word.text == "Lets"
        return ("Let's", "") if told else None
    if key == "ones":
        return ("one's", "") if _is_of_one(clause, at) else None
    if key == "peoples":
        told = (
            before is not None
            and owned.tag in ("NN", "NNS")
            and owned.role != "ROOT"
            and (before.key in _PEOPLES or (before.tag[:2] in ("IN", "VB") and owned.key in OF_PEOPLE))
        )
        return ("people's", "") if told else None
    if key in TIMES:
        one = before is not None and before.key in ("a", "an", "one")
        return (f"{word.text[:-1]}'s" if one else f"{word.text}'", "") if _is_measured(clause, at) else None
    if _IN_Y.fullmatch(word.text) and find_word(key) is None and find_word(key[:-1]) is not None:
        single = at + 2 < len(words) and owned.tag == "JJ" and words[at + 2].tag == "NN"
        return (f"{word.text[:-1]}'s", "") if single or owned.tag in NOUNS | {"JJS"} or owned.key == "own" else None
    if word.text[0].isupper() and _is_name(word.text, names):
        return (f"{word.text[:-1]}'s", "") if _is_of_name(clause, at) else None
    return _of_owner(clause, at)


def _is_of_one(clause: Clause, at: int) -> bool:
    """Whether *ones* is one's: *ones own*, *on ones mind*."""
    words = clause.words
    if words[at + 1].key == "own":
        return True
    return bool(at) and words[at - 1].tag == "IN" and words[at + 1].tag == "NN" and words[at].role == "compound"


def _is_measured(clause: Clause, at: int) -> bool:
    """Whether a time is the measure of what follows: *two weeks notice*."""
    words = clause.words
    after = words[at + 2] if at + 2 < len(words) else None
    return (
        at > 0
        and words[at + 1].key in OF_TIMES
        and words[at + 1].tag == "NN"
        and (words[at - 1].tag == "CD" or words[at - 1].key in ("a", "an", "several", "many", "few"))
        and (after is None or (after.tag not in NOUNS | {"VBD", "VBZ", "VBP", "MD", "RB"} and after.text != "-"))
    )


def _is_name(written: str, names: Collection[str]) -> bool:
    """Whether a word is a known name with an *s* that makes no name."""
    name = written[:-1]
    if len(name) < _SHORTEST_NAME or not name[1:].islower() or find_word(written) or find_word(written.lower()):
        return False
    known, common = find_word(name), find_word(name.lower())
    return name in names or (known is not None and bool(known.countries) and not (common and common.countries))


def _is_of_name(clause: Clause, at: int) -> bool:
    """Whether a name in *-s* owns the noun after it, which may be no verb there."""
    words = clause.words
    owned, before = words[at + 1], words[at - 1] if at else None
    after = words[at + 2] if at + 2 < len(words) else None
    if before is not None and (before.key in _NAMES_BEFORE or before.tag.startswith(("JJ", "VBG"))):
        return False
    if owned.tag == "JJ" and after is not None and after.tag in ("NN", "NNS") and owned.head == at + 2:
        return words[at].head == at + 2
    if (
        after is not None
        and after.key in ("is", "was", "are", "were")
        and owned.tag in ("NN", "NNS", "VBP", "VB", "VBZ")
    ):
        return words[at].head == at + 1
    if owned.tag not in ("NN", "NNS") or not owned.text.islower() or words[at].head != at + 1:
        return False
    subject = owned.role in ("nsubj", "nsubjpass") and after is not None and after.tag in FINITE
    return subject or (owned.role in ("pobj", "dobj") and (after is None or after.tag in (".", ",", "IN", "CC", "TO")))


def _of_owner(clause: Clause, at: int) -> tuple[str, str] | None:
    """A noun in *-s* that owns the next one beyond doubt."""
    words = clause.words
    word = words[at]
    one = next((one for one in singulars_of(word.key) if one in OWNERS | WORKS | INSTITUTIONS), None)
    if one is None or (word.text[0].isupper() and at):
        return None
    first = _opening(words, at)
    if first == at and word.text[0].islower():
        return None
    asked = words[first].tag in _DETERMINERS or words[first].key in _MANY
    if clause.hides(range(first, at)) or (first < at and not asked):
        return None
    greatest = one in GREATEST_OF and words[first].key == "the" and words[at + 1].key.endswith("est")
    single = words[first].key in _ONE
    if not greatest and not find_owned(clause, first, at, one, single=single):
        return None
    of_one = f"{word.text[:-3]}y's" if word.key.endswith("ies") else f"{word.text[: len(one)]}'s"
    of_many = f"{word.text}'"
    if greatest or single:
        return of_one, ""
    if any(each.key in _MANY or each.tag == "CD" for each in words[first:at]):
        return of_many, ""
    counted, alone = find_word(word.key), find_word(one)
    several = first == at or (
        one in OWNERS and counted is not None and alone is not None and counted.weight > alone.weight
    )
    return (of_many, "" if first == at else of_one) if several else (of_one, of_many)


def _opening(words: tuple[Parsed, ...], at: int) -> int:
    """Where the phrase of a noun opens: with its article, number or pronoun; the noun itself where it has none."""
    first = at
    while first and words[first - 1].tag in ("JJ", "CD", "JJS", "JJR", "VBN") and at - first < 3:
        first -= 1
        if words[first].tag == "CD":
            break
    return first - 1 if first and words[first - 1].tag in _DETERMINERS else first
