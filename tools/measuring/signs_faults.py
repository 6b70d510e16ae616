"""Slips of signs and small words, to be set into found prose: apostrophes, words, hyphens and capitals left out."""

from __future__ import annotations

import re
from collections.abc import Iterator

_POSSESSIVE = re.compile(
    r"(?<![\w'’-])(?!(?:it|that|what|he|she|there|who|let|here|where|how|one)['’])([A-Za-z][a-z]{2,})"
    r"(?:['’]s|(?<=s)['’])(?= [a-z])"
)
_PLURAL = re.compile(
    r"\b(?:many|several|few|these|those|two|three|four|five) ([a-z]{3,}[^s])s(?=[.,]| (?:of|in|that|and) )"
)


_SMALL = re.compile(r"(?<=[a-z]) (?:of|to|the|a|an|be|is|are|was|been|on|in|for|that|it|with|as)(?= [a-z])")
_PHRASES = tuple(
    re.compile(rf"\b{phrase}\b".replace("<", "(").replace(">", ")"))
    for phrase in (
        "according< to> the", "[Aa]s< a> result", "in order< to> [a-z]+", "due< to> the", "one< of> the [a-z]+",
        "[Mm]ost< of> the", "in spite< of>", "[Rr]egardless< of>", "able< to>", "likely< to>", "ha[sd]< been> [a-z]+ed",
        "(?:can|could|should|must|may)< be> [a-z]+e[dn]", "a number< of>", "at< the> same time",
        "[Oo]n< the> other hand",
        "depends< on>", "based< on>", "[Bb]ecause< of> the", "[Bb]ecause< it> [a-z]+s", "plays?< an?> [a-z]+ role",
        "is< an?> [a-z]+ [a-z]+ of", "want< to>", "trying< to>", "a lot< of>", "[Ii]nstead< of>", "with re[a-z]+< to>",
        "amount< of>", "variety< of>", "used< to>", "important< to> [a-z]+", "responsible< for>", "similar< to>",
    )
)  # fmt: skip
_HYPHEN = re.compile(r"(?<=[a-z] )[a-z]{2,}(-)[a-z]{2,}(?: [a-z]{3,})")
_UNIT = re.compile(
    r"(?<=[a-z] )\d+( )(?:km|cm|mm|kg|mg|kHz|MHz|GB|MB|years|days|weeks|months|hours|minutes|miles|metres)\b"
)
_CAPITAL = re.compile(
    r"(?<=[a-z,] )(?:English|French|German|Spanish|American|European|African|Asian|Chinese|Japanese|British|Indian"
    r"|Americans|Europeans|Christian|Islamic|Latin|Greek|Monday|Sunday|January|July|October|December|America|Europe"
    r"|Africa|Asia|Britain|France|Germany|China|India|Texas|California|Darwinian|Bayesian|Gaussian|I)(?= [a-z])"
    r"|(?<=[a-z]{4}\. )(?:The|This|It|In|We|However|These|There|They|For|When)(?= [a-z])"
)


def drop_small_words(paragraph: str) -> Iterator[tuple[str, int, int]]:
    """A paragraph with any one small word left out: the text, and the place."""
    for found in _SMALL.finditer(paragraph):
        yield f"{paragraph[: found.start()]}{paragraph[found.end() :]}", found.start() - 1, found.start() + 1


def drop_from_phrases(paragraph: str) -> Iterator[tuple[str, int, int]]:
    """A paragraph with a small word left out of a set phrase."""
    for phrase in _PHRASES:
        for found in phrase.finditer(paragraph):
            at = found.start(1)
            yield f"{paragraph[:at]}{paragraph[found.end(1) :]}", at - 1, at + 1


def drop_hyphens(paragraph: str) -> Iterator[tuple[str, int, int]]:
    """A paragraph with one compound before another word that lost its hyphen: the text, and the place."""
    for found in _HYPHEN.finditer(paragraph):
        at = found.start(1)
        yield f"{paragraph[:at]} {paragraph[at + 1 :]}", at - 1, at + 1


def close_units(paragraph: str) -> Iterator[tuple[str, int, int]]:
    """A paragraph with one number run on to its unit: the text, and the place."""
    for found in _UNIT.finditer(paragraph):
        at = found.start(1)
        yield f"{paragraph[:at]}{paragraph[at + 1 :]}", at - 1, at + 1


def spoil_signs(paragraph: str) -> Iterator[tuple[str, str, int, int]]:
    """Each such slip that can be set into a paragraph: the check, the text, and the place."""
    for slip in drop_apostrophes(paragraph):
        yield "apostrophe", *slip
    for slip in drop_from_phrases(paragraph):
        yield "missing-word", *slip
    for slip in drop_capitals(paragraph):
        yield "capital", *slip
    for slip in drop_hyphens(paragraph):
        yield "hyphen", *slip
    for slip in close_units(paragraph):
        yield "number-form", *slip


def drop_apostrophes(paragraph: str) -> Iterator[tuple[str, int, int]]:
    """A paragraph with one possessive bare, or one plain plural with an apostrophe: the text, and the place."""
    for found in _POSSESSIVE.finditer(paragraph):
        bare = found[1] if found[0].endswith(("'", "’")) else f"{found[1]}s"
        yield f"{paragraph[: found.start()]}{bare}{paragraph[found.end() :]}", found.start(), found.start() + len(bare)
    for found in _PLURAL.finditer(paragraph):
        yield (
            f"{paragraph[: found.end(1)]}'s{paragraph[found.end() :]}",
            found.start(1),
            found.end(1) + 2,
        )


def drop_capitals(paragraph: str) -> Iterator[tuple[str, int, int]]:
    """A paragraph with one word in small letters that wants a capital: the text, and the place."""
    for found in _CAPITAL.finditer(paragraph):
        yield f"{paragraph[: found.start()]}{found[0].lower()}{paragraph[found.end() :]}", *found.span()
