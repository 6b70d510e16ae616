"""Words that no dictionary of the paper's country has, nor the writer, nor the sources.

**Source**: the dictionaries of SCOWL; what is let be is common practice of copy-editing: names, abbreviations, words of
the field, what is put together from known parts.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator
from dataclasses import dataclass
from functools import lru_cache
from importlib.resources import files

from fairhand.language.lexicon import Country, find_word
from fairhand.language.words import Word, words
from fairhand.manuscript.bare import OPAQUE
from fairhand.model.span import Span

_PLAIN = re.compile(r"[A-Za-z]+(?:['’-][A-Za-z]+)*\Z")
_POSSESSED = re.compile(r"['’]s?\Z")
_SENTENCE_END = re.compile(r"[.!?:;”\"]\W*\Z|\A\W*\Z")
PREFIXES = (
    "anti auto bio cardio chemo co counter crypto cyber de dis eco electro ethno ex extra fore geo hetero histo hydro"
    " hyper immuno infra inter intra iso macro mega meta micro mid mini mis mono multi nano neo neuro non off omni"
    " ortho over paleo palaeo para patho petro pharmaco phono photo physio poly post pre pro proto pseudo psycho quasi"
    " radio re retro self semi socio spatio step sub super supra techno tele thermo trans tri ultra un under uni vice"
).split()
"""What stands before a word with or without a hyphen."""
_LOOSE = frozenset("co de dis ex mis off pre pro re step un".split())
"""Those that a slip makes too easily, so that they must be written with a hyphen: *mis-pell*."""
ENDINGS = (
    ("ness", ""), ("ly", ""), ("less", ""), ("like", ""), ("wise", ""), ("ship", ""), ("hood", ""), ("dom", ""),
    ("isation", "ise"), ("ization", "ize"), ("ability", "able"), ("ibility", "ible"), ("ically", "ic"),
    ("ically", "ical"), ("ality", "al"), ("icity", "ic"), ("ivity", "ive"), ("osity", "ous"), ("fulness", "ful"),
    ("ism", ""), ("ist", ""), ("isms", ""), ("ists", ""), ("ism", "e"), ("ist", "e"), ("ised", "e"), ("ized", ""),
    ("izing", ""), ("ize", ""), ("ised", ""), ("ising", ""), ("ise", ""), ("able", ""), ("able", "e"), ("ably", "able"),
    ("s", ""), ("ers", "er"), ("ive", ""),
)  # fmt: skip
"""Endings that make a good word of a known one, and what the known one ends with instead."""
SHORTEST = 6
"""Letters of the shortest known word that takes such a beginning or ending unseen."""


@dataclass(frozen=True, slots=True)
class Unknown:
    """A word that is not known."""

    word: Word
    """The part of a hyphened word that is not known, with its place."""
    other: bool
    """Whether the other country spells it so."""
    opens: bool
    """Whether it has a capital that the start of a sentence may give it."""


def find_unknown(text: str, country: Country, sentences: Collection[Span] = ()) -> Iterator[Unknown]:
    """The words of a paragraph that are not known, capitalised ones within a sentence and abbreviations aside.

    Args:
        text: A paragraph of the writer's own prose.
        country: Whose spelling the paper keeps.
        sentences: Its sentences; without them each full stop ends one.

    >>> [each.word.text for each in find_unknown("The goverment of Zembla met Dr Kinbote’s colour.", "US")]
    ['goverment', 'colour']
    """
    starts = {span.start for span in sentences}
    for word in words(text):
        before, after = text[: word.span.start][-3:], text[word.span.end : word.span.end + 1]
        if OPAQUE in (before[-1:], after) or before[-1:] in ("@", "#", "/", "\\", "_") or after in ("/", "_", "@"):
            continue
        if not _PLAIN.match(word.text) or not _is_prose(word.text):
            continue
        opens = word.text[0].isupper()
        if opens and not (word.span.start in starts if starts else _SENTENCE_END.search(before)):
            continue
        for part in _parts(word, country):
            known = look_up(part.text, country)
            if known != "known":
                yield Unknown(part, known == "other", opens and part.text[0].isupper())


def _is_prose(word: str) -> bool:
    """Whether a word is not an abbreviation, a sign or a number with a letter."""
    return len(word) > 2 and not any(sign.isupper() for sign in word[1:].replace("-", ""))


def _parts(word: Word, country: Country) -> Iterator[Word]:
    """The word without its possessive; of a hyphened word, its parts."""
    text = _POSSESSED.sub("", word.text)
    at = word.span.start
    if "-" in text and look_up(text.replace("-", ""), country) == "known":
        return
    for part in text.split("-"):
        if part == text or (len(part) > 2 and part.casefold() not in PREFIXES):
            yield Word(part, type(word.span)(at, at + len(part)))
        at += len(part) + 1


@lru_cache(maxsize=8192)
def names_in(text: str) -> frozenset[str]:
    """The words of a paragraph that have their capital elsewhere than at the start of a sentence.

    >>> sorted(names_in("Raman spectra, by Raman, in Kiel."))
    ['Kiel', 'Raman']
    """
    return frozenset(
        _POSSESSED.sub("", word.text)
        for word in words(text)
        if word.text[0].isupper() and not _SENTENCE_END.search(text[: word.span.start][-3:])
    )


@lru_cache(maxsize=32768)
def look_up(text: str, country: Country) -> str:
    """Whether a word is ``known``, ``unknown``, or the ``other`` country's.

    >>> look_up("organized", "GB"), look_up("colour", "US"), look_up("colour", "GB"), look_up("biofilm", "US")
    ('known', 'other', 'known', 'known')
    """
    plain = text.replace("’", "'")
    forms = [plain, plain.casefold()] if plain != plain.casefold() else [plain]
    found = [lexeme for form in forms if (lexeme := find_word(form))]
    if any(lexeme.is_spelled(country) for lexeme in found) or forms[-1] in academic_words() or plain in PREFIXES:
        return "known"
    if any(lexeme.countries for lexeme in found):
        return "known" if country == "GB" and _is_oxford(forms[-1]) else "other"
    if found or _is_built(forms[-1], country):
        return "known"
    return "other" if _is_built(forms[-1], "GB" if country == "US" else "US") else "unknown"


def _is_oxford(word: str) -> bool:
    """Whether it has the *-ize* that British presses allow beside *-ise*."""
    return re.search(r"i[zs](?:e[sdr]?|ers?|ing|able|ations?|ational)\Z|yz(?:e[sdr]?|ing)\Z", word) is not None


def _is_built(word: str, country: Country) -> bool:
    """Whether it is put together of a known word and a beginning or an ending."""
    for before in PREFIXES:
        rest = word.removeprefix(before)
        if rest != word and before not in _LOOSE and len(rest) >= SHORTEST - 1 and _is_spelled(rest, country):
            return True
    lexeme = find_word(word.removeprefix("un")) if word.startswith("un") else None
    if lexeme is not None and lexeme.is_spelled(country) and {"d", "g", "a"} & set(lexeme.kinds):
        return len(word) > SHORTEST  # shorter ones are in the dictionaries: not so "untill"
    return any(
        word.endswith(ending)
        and len(word) - len(ending) + len(instead) >= SHORTEST
        and _takes_endings(word.removesuffix(ending) + instead, country)
        for ending, instead in ENDINGS
    )


def _is_spelled(word: str, country: Country) -> bool:
    known = find_word(word)
    return (known is not None and known.is_spelled(country)) or word in academic_words()


def _takes_endings(word: str, country: Country) -> bool:
    known = find_word(word)
    return word in academic_words() or (
        known is not None and known.is_spelled(country) and not {"s", "d", "g"} & set(known.kinds)
    )


@lru_cache(maxsize=1)
def academic_words() -> frozenset[str]:
    """Words of the disciplines that general dictionaries lack; our own list, ``academic_words.txt``."""
    return frozenset((files("fairhand") / "copyedit" / "words" / "academic_words.txt").read_text("utf-8").split())
