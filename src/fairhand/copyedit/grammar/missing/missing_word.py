"""Small words whose loss the parse shows: *because the rain, the roads were closed*, *it is good example of this*.

**Source**: "missing word" in handbooks of usage; each rule asks for more signs than the parse alone.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping

from fairhand.copyedit.grammar.clauses import Clause, word_at
from fairhand.copyedit.grammar.missing.missing_be import BE_RULES
from fairhand.copyedit.grammar.missing.missing_phrase import MissingWord, missing
from fairhand.language.lexicon import find_word

_OPENINGS = {"because": "of", "instead": "of", "due": "to", "compared": "with"}
"""Words that open a sentence and want a preposition before a bare noun."""
_COUNTED = frozenset(
    "example reason way aspect factor feature element step problem issue question topic theme goal idea city country"
    " student author novel book poem person man woman place event symbol character story tool".split()
)
"""Nouns that want an article in the singular."""
_NO_ARTICLE = frozenset(
    "first last next second third lead chief senior junior no one such same another many more less much enough only"
    " own most least other very part prime key little few sufficient ample due full".split()
)
_PLACING = frozenset("in from near by has had needs wrote built bought wants met".split())
_PLACED = frozenset(
    "town city village house country book novel poem film person man woman child student teacher author road bridge"
    " farm boy girl room hospital shop letter river island mountain way".split()
)
"""Nouns that want an article in the singular, also after a preposition."""


def find_missing_words(clause: Clause) -> Iterator[MissingWord]:
    """The places of a sentence where a small word is missing beyond doubt."""
    words = clause.words
    yield from _after_opening(clause)
    for at, word in enumerate(words[:-1]):
        rule = _RULES.get(word.text.lower())
        if rule is not None and not clause.hides((at, at + 1)):
            yield from rule(clause, at)


def _after_opening(clause: Clause) -> Iterator[MissingWord]:
    """*Because the rain, the roads were closed*; also where the comma is missing too."""
    words = clause.words
    opening = words[0].key
    if opening not in _OPENINGS or len(words) < 5 or clause.hides((0, 1)):
        return
    if words[1].tag not in ("DT", "PRP$") and not (opening == "instead" and words[1].tag == "VBG"):
        return
    finite = [number for number in range(len(words)) if clause.is_finite(number)]
    if not finite:
        return
    first = words[1 : finite[0]]
    commas = [number for number, each in enumerate(words) if each.text == "," and number < finite[0]]
    if any(each.key in ("and", "or", "which", "who", "that", "nor", "whose", "where") for each in first):
        return
    if opening == "because" and not commas and len(finite) == 1:
        tags = [each.tag for each in first]
        if tags in (["DT", "NN", "DT", "NN"], ["DT", "NN", "DT", "NNS"]) and words[1].key == "the":
            yield missing(clause, 0, "of")
        return
    if len(commas) != 1:
        return
    phrase, rest = words[1 : commas[0]], words[commas[0] + 1 : finite[0]]
    whole = phrase and phrase[-1].tag in ("NN", "NNS") and all(not each.tag.startswith("V") for each in phrase[1:])
    subject = rest and (
        rest[0].key in ("he", "she", "it", "they", "we", "i", "there")
        or (rest[0].tag in ("DT", "PRP$") and rest[-1].tag in ("NN", "NNS") and len(rest) <= 4)
    )
    one = len(finite) == 1 or not any(each.text == "," for each in words[finite[0] : finite[1]])
    if whole and subject and one and words[commas[0] + 1].role != "appos":
        yield missing(clause, 0, _OPENINGS[opening])


def _because_alone(clause: Clause, at: int) -> Iterator[MissingWord]:
    """*It closed because the flood.*: a noun phrase to the end, and no verb."""
    words = clause.words
    rest = words[at + 1 :]
    if not at or not rest or rest[0].tag not in ("DT", "PRP$") or rest[-1].text != ".":
        return
    body = rest[1:-1]
    if not 0 < len(body) <= 8 or clause.hides(range(at + 1, len(words))):
        return
    plain = all(each.tag in ("NN", "JJ", "IN", "DT", "PRP$", "CC", "NNS", ",") for each in body)
    nouns = [each for number, each in enumerate(body) if each.tag in ("NN", "NNS")]
    verbal = any("v" in known.kinds or "d" in known.kinds for each in nouns[1:] if (known := find_word(each.key)))
    if plain and nouns and body[-1] in nouns and not verbal and not any(each.tag == "NNS" for each in nouns[1:]):
        yield missing(clause, at, "of")


def _before_counted(clause: Clause, at: int) -> Iterator[MissingWord]:
    """*It is good example of*, *in small town*: the article is missing."""
    words = clause.words
    if at + 2 >= len(words):
        return
    quality, noun = words[at + 1], words[at + 2]
    after = word_at(words, at + 3)
    counted = _PLACED if words[at].key in _PLACING else _COUNTED
    if quality.tag != "JJ" or noun.tag != "NN" or noun.key not in counted or quality.key in _NO_ARTICLE:
        return
    if not (quality.text.isalpha() and quality.text.islower()) or quality.key.endswith(("er", "est")):
        return
    if clause.hides((at + 1, at + 2)) or after is None or after.tag not in ("IN", "TO", ".", ",", "WDT", "WP"):
        return
    if words[at].key == "as" and at and words[at - 1].key in ("so", "just", "twice", "as", "such"):
        return
    yield missing(clause, at, "an" if quality.key[0] in "aeiou" else "a")


_RULES: Mapping[str, Callable[[Clause, int], Iterator[MissingWord]]] = {
    **BE_RULES,
    **dict.fromkeys((*_PLACING, "is", "was", "becomes", "became", "remains", "as"), _before_counted),
    "because": _because_alone,
}
"""By the word that gives the gap away."""
