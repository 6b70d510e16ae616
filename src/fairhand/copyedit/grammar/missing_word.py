"""Small words whose loss the parse shows: *because the rain, the roads*, *can seen*, *it not clear*.

**Source**: "missing word" in handbooks of usage; each rule asks for more signs than the parse alone.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping

from fairhand.copyedit.grammar.clauses import FINITE, NOUNS, Clause, word_at
from fairhand.copyedit.grammar.missing_phrase import MissingWord, is_past, missing
from fairhand.language.lexicon import find_word

_OPENINGS = {"because": "of", "instead": "of", "due": "to", "compared": "with"}
"""Words that open a sentence and want a preposition before a bare noun."""
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
_WH = frozenset("who what whatever whoever all as if those".split())
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
_LOCATED = frozenset("located situated known composed supposed concerned".split())


def find_missing_words(clause: Clause) -> Iterator[MissingWord]:
    """The places of a sentence where a small word is missing beyond doubt."""
    words = clause.words
    yield from _after_opening(clause)
    for at, word in enumerate(words[:-1]):
        key = word.key
        rule = _RULES.get(key)
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


def _after_modal(clause: Clause, at: int) -> Iterator[MissingWord]:
    """*It can seen*, *they will able*: a form of *be* is missing."""
    words = clause.words
    if words[at].tag != "MD":
        return
    verb = at + 1
    if words[verb].key in _BETWEEN or words[verb].tag == "RB":
        verb += 1
    if verb >= len(words) or clause.hides((verb,)) or at == 0 or words[at - 1].tag not in (*NOUNS, "PRP", "WDT", "EX"):
        return
    if any(each.key in _WH for each in words[max(0, at - 6) : at]) or words[at - 1].key == "those":
        return
    after = word_at(words, verb + 1)
    if words[verb].key in _STATES:
        if after is None or after.tag not in NOUNS:
            yield missing(clause, verb - 1, "be")
        return
    past = words[verb].tag in ("VBN", "VBD") and (is_past(words[verb].key) or words[verb].key in _PARTICIPLES)
    if not past or (words[verb].key == "found" and words[at].key in ("may", "might", "would")):
        return
    if words[verb].key == "used" and after is not None and after.key == "to":
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


def _without_verb(clause: Clause, at: int) -> Iterator[MissingWord]:
    """*The children not allowed to work.*: the sentence has no verb at all."""
    words = clause.words
    if at == 0 or at + 2 >= len(words) or words[at - 1].tag not in ("NN", "NNS") or words[-1].text != ".":
        return
    if words[0].tag not in ("DT", "PRP$") or any(each.text in (",", ";", ":", "(", "–", "—") for each in words):
        return
    if words[at + 1].tag not in ("VBN", "JJ") or any(map(clause.is_finite, range(len(words)))):
        return
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


_RULES: Mapping[str, Callable[[Clause, int], Iterator[MissingWord]]] = {
    **dict.fromkeys(_MODALS, _after_modal),
    **dict.fromkeys(("he", "she", "they", "we", "i"), _nominative),
    **dict.fromkeys((*_PLACING, "is", "was", "becomes", "became", "remains", "as"), _before_counted),
    **dict.fromkeys(("which", "that"), _located),
    "not": _negated,
    "because": _because_alone,
}
"""By the word that gives the gap away."""
