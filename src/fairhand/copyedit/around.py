"""A word's neighbours, and whether they are as a pattern says: the small language in which confusions are written down.

A pattern is parted by blanks; ``_`` stands for the word itself. Each other part is a neighbour: words parted by
``|``, with ``!`` before them where it must be none of them, ``?`` after them where it may be missing. In capitals it
is a kind: those of ``GROUPS``, or one that the list of words tells (``KINDS``). ``.`` is any mark or the end of the
sentence, ``^`` its start, ``*`` any word.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache

from fairhand.language.lexicon import find_word
from fairhand.manuscript.bare import OPAQUE
from fairhand.model.span import Span

START, END = "^", "."
_TOKEN = re.compile(rf"[A-Za-z]+(?:['’-][A-Za-z]+)*|\d[\d.,]*|{OPAQUE}+|[^\sA-Za-z\d]")
_MARK = re.compile(r"[^\w\s]")

GROUPS: Mapping[str, frozenset[str]] = {
    name: frozenset(words.split())
    for name, words in {
        "DET": "a an the this that these those each every some any no another",
        "POSS": "my your his her its our their whose",
        "SUBJ": "i you he she it we they who",
        "OBJ": "me you him her it us them",
        "BE": "is are was were be been being isn't aren't wasn't weren't",
        "HAVE": "has have had having hasn't haven't hadn't",
        "DO": "do does did don't doesn't didn't",
        "MODAL": "can could will would shall should may might must cannot can't couldn't won't wouldn't shouldn't",
        "PREP": "of in to for with on at by from about into through over between among against under during without"
        " within upon across behind beyond despite throughout towards toward beneath around near inside outside",
        "CONJ": "and or but nor",
        "ADV": "not also never always often still only even just very really too so quite rather already soon then now"
        " ever almost nearly perhaps simply merely probably indeed however therefore thus again",
        "WH": "who whom whose which what when where why how whether that",
    }.items()
}
_SMALL = frozenset().union(*GROUPS.values()) | frozenset(
    "because if as than like more most less least many much few several all both such one two three other own same"
    " there here out up down off away back together yet else while although though since until once per".split()
)
"""Words of the grammar, which are no nouns, verbs or adjectives whatever the list of words says."""


_IRREGULAR = frozenset(
    "been done gone seen taken made given found known become begun brought built bought caught chosen come driven"
    " fallen felt forgotten held kept left lost meant met paid read run said sent shown spoken spent stood taught"
    " thought told understood won written grown drawn led put set cut"
    " sold eaten hidden broken spread struck stolen torn bound fought hung laid sung sunk swept thrown woven".split()
)
_IN_BULK = frozenset(
    "nutrients goods funds savings taxes resources assets emissions calories supplies earnings proceeds losses wages"
    " sales profits revenues expenses damages minutes hours days weeks months years miles kilometers kilometres meters"
    " metres dollars pounds euros cents percent degrees grams kilograms tons tonnes liters litres ounces carbohydrates"
    " fats oils antibiotics pesticides toxins means news economics politics physics mathematics ethics".split()
)
"""Plurals that are measured, not counted."""


def _kinds(word: str) -> frozenset[str]:
    if word in _SMALL:
        return frozenset()
    known = find_word(word)
    return frozenset(known.kinds) if known else frozenset()


def is_small(word: str) -> bool:
    """Whether it is a word of the grammar, of which there are few, and no noun, verb or adjective.

    >>> is_small("whose"), is_small("harvest")
    (True, False)
    """
    return word in _SMALL


def is_comparative(word: str) -> bool:
    """Whether it is an adjective's comparative, and no doer of something: it has a superlative too.

    >>> is_comparative("shorter"), is_comparative("baker")
    (True, False)
    """
    if word in ("more", "less", "better", "worse", "rather", "fewer", "further", "farther"):
        return True
    return word != "inner" and word.endswith("er") and "r" in _kinds(word) and "t" in _kinds(word[:-1] + "st")


KINDS: Mapping[str, Callable[[str], bool]] = {
    "N": lambda word: "n" in _kinds(word),
    "N1": lambda word: "n" in _kinds(word) and not _kinds(word) & set("vadg"),
    "NS": lambda word: _kinds(word) == {"s"} and _is_noun_of(word),
    "COUNT": lambda word: _kinds(word) == {"s"} and _is_noun_of(word) and word not in _IN_BULK,
    "S": lambda word: _kinds(word) == {"s"},
    "V": lambda word: (
        "v" in _kinds(word) or word in ("go", "come", "see", "take", "make", "give", "find", "get", "know")
    ),
    "V1": lambda word: "v" in _kinds(word) and not _kinds(word) & set("na"),
    "A": lambda word: "a" in _kinds(word) and not _kinds(word) & set("vs"),
    "ING": lambda word: word.endswith("ing") and bool(_kinds(word) & set("g")),
    "ED": lambda word: "d" in _kinds(word) or word in _IRREGULAR,
    "LY": lambda word: word.endswith("ly") and "y" in _kinds(word),
    "COMP": is_comparative,
    "NUMBER": lambda word: word[:1].isdigit(),
}


def _is_noun_of(plural: str) -> bool:
    """Whether a word is the plural of a noun that is no verb."""
    stems = (plural[:-1], plural[:-2], plural[:-3] + "y" if plural.endswith("ies") else "")
    kinds = next((kinds for stem in stems if len(stem) > 1 and (kinds := _kinds(stem))), frozenset())
    return "n" in kinds and "v" not in kinds


@dataclass(frozen=True, slots=True)
class Token:
    """A word, a number or a mark."""

    text: str
    """In small letters, with a straight apostrophe."""
    span: Span


@lru_cache(maxsize=4096)
def read_tokens(text: str) -> tuple[Token, ...]:
    """The words and marks of a sentence in order.

    >>> [token.text for token in read_tokens("It’s roots, he said.")]
    ["it's", 'roots', ',', 'he', 'said', '.']
    """
    return tuple(Token(found[0].casefold().replace("’", "'"), Span(*found.span())) for found in _TOKEN.finditer(text))


@dataclass(frozen=True, slots=True)
class Part:
    """One neighbour that a pattern asks for."""

    words: frozenset[str]
    kinds: tuple[str, ...]
    negated: bool = False
    optional: bool = False

    def fits(self, word: str) -> bool:
        """Whether a neighbour is as it asks."""
        return self._holds(word) != self.negated

    def _holds(self, word: str) -> bool:
        if word in self.words:
            return True
        for kind in self.kinds:
            if kind == "*":
                if word not in (START, END) and not _MARK.fullmatch(word):
                    return True
            elif kind == END:
                if word == END or (_MARK.fullmatch(word) and word not in (OPAQUE, START)):
                    return True
            elif kind in GROUPS:
                if word in GROUPS[kind]:
                    return True
            elif KINDS[kind](word):
                return True
        return False


@dataclass(frozen=True, slots=True)
class Pattern:
    """The neighbours of a word, the nearest first on either side."""

    before: tuple[Part, ...]
    after: tuple[Part, ...]

    def fits(self, tokens: Sequence[Token], at: int) -> bool:
        """Whether the neighbours of the token at an index are as the pattern says."""
        back = [token.text for token in tokens[max(0, at - 8) : at]][::-1]
        on = [token.text for token in tokens[at + 1 : at + 9]]
        return _fits(self.before, [*back, START], 0, 0) and _fits(self.after, [*on, END], 0, 0)


def _fits(parts: tuple[Part, ...], words: Sequence[str], part: int, word: int) -> bool:
    if part == len(parts):
        return True
    if parts[part].optional and _fits(parts, words, part + 1, word):
        return True
    return word < len(words) and parts[part].fits(words[word]) and _fits(parts, words, part + 1, word + 1)


@lru_cache(maxsize=2048)
def read_pattern(written: str) -> Pattern:
    """The pattern that is written so.

    >>> tokens = read_tokens("on it's own")
    >>> read_pattern("PREP _ own").fits(tokens, 1), read_pattern("_ !own").fits(tokens, 1)
    (True, False)
    """
    before, _, after = f" {written} ".partition(" _ ")
    return Pattern(
        tuple(_read_part(part) for part in reversed(before.split())), tuple(_read_part(part) for part in after.split())
    )


def _read_part(written: str) -> Part:
    optional, negated = written.endswith("?"), written.startswith("!")
    names = written.removesuffix("?").removeprefix("!").split("|")
    kinds = tuple(name for name in names if name in GROUPS or name in KINDS or name in ("*", END))
    return Part(frozenset(names) - frozenset(kinds), kinds, negated, optional)
