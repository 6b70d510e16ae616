"""Faults of commas set into found prose: taken out of where they belong, and put in where they do not."""

from __future__ import annotations

import re
from collections.abc import Iterator

SetIn = tuple[str, str, int, int]
"""A check, the paragraph with a fault for it, and the place of the fault."""
_TWO = re.compile(r"(?<=[a-z]{2})\. (The|This|These|It|They|He|She|We|There|However,|Some|Many|Their|Its)(?= [a-z])")
_OPENING = re.compile(
    r"(?:(?<=[a-z]\. )|\A)(?:"
    r"(?:When|Although|If|Because|While|After|Since|As|Before|Once|Though|Even though) [^,.;:()]{8,90}"
    r"|However|Moreover|Furthermore|Therefore|Consequently|For example|For instance|In addition|As a result"
    r"|On the other hand|In contrast)(,)(?= (?:the|this|these|it|they|he|she|we|there|some|many|their|its|a|an) )"
)
_SUBJECT = re.compile(
    r"(?:(?<=[a-z]\. )|\A)(?:The|This|These|Our|Their|His|Her|One|Most|Some|Many) (?:[a-z]+ ){1,9}?[a-z]+()"
    r"(?= (?:is|was|are|were|has|have|can|will|may) )"
)
_THAT = re.compile(
    r"\b(?:argue|show|suggest|believe|find|state|conclude|claim|report)[sd]?()(?= that (?:the|a|it|they|this) )"
)
_SUCH_AS = re.compile(r"\bsuch as()(?= [a-z]+(?:,| and| or))")
_PAIR = re.compile(
    r"[a-z], (?:which|who) [^,.;:()–—]{5,70}(,)(?= (?:is|was|are|were|has|have|had|can|will|may|[a-z]+ed) )"
)
_ADVERB = re.compile(
    r"(?<=[a-z])(, )(?:however|therefore|for example|for instance|on the other hand|in contrast|in turn|in fact)(,)"
    r"(?= (?:is|was|are|were|has|have|had|can|will|may|[a-z]+ed|[a-z]+s) )"
)
_NAME = re.compile(r"(?<=[a-z]) (?:[A-Z][a-z]+ )+[A-Z][a-z]+(,)(?= (?:who|which) )")
_PART = re.compile(
    r"(?<=[a-z])(,) (?:which|because|although|whereas|such as|including|especially) [^;:()]{10,120}\.(?=\s|\Z)"
)
_BEFORE_MAIN = re.compile(
    r"(?:(?<=[a-z]\. )|\A)(?:When|Although|If|Because|While|Since|After) [^,.;:()]{8,90}(,)"
    r"(?= (?:the|this|these|it|they|he|she|we) [^;:()]{8,}\.)"
)
_LIST = re.compile(
    r"\b(?:includes?|included|such as|consists? of|consisted of)() (?=[a-z]+(?: [a-z]+)?, [^.;:()]{3,60} (?:and|or) )"
)


def spoil_commas(paragraph: str) -> Iterator[SetIn]:
    """Each fault that can be set into a paragraph: its check, the paragraph with it, and its place."""
    for two in _TWO.finditer(paragraph):
        draft = f"{paragraph[: two.start()]} {two[1][0].lower()}{paragraph[two.start(1) + 1 :]}"
        yield "fused-sentence", draft, two.start() - 1, two.end() - 1
    for opening in _OPENING.finditer(paragraph):
        at = opening.start(1)
        yield "comma-opening", paragraph[:at] + paragraph[at + 1 :], at - 1, at + 2
    for pattern in (_SUBJECT, _THAT, _SUCH_AS):
        for place in pattern.finditer(paragraph):
            at = place.start(1)
            yield "comma-unneeded", f"{paragraph[:at]},{paragraph[at:]}", at - 1, at + 2
    for pattern, group in ((_PAIR, 1), (_ADVERB, 2), (_NAME, 1)):
        for place in pattern.finditer(paragraph):
            at = place.start(group)
            yield "comma-nonrestrictive", paragraph[:at] + paragraph[at + 1 :], at - 1, at + 2
    for pattern, mark in ((_PART, ";"), (_BEFORE_MAIN, ";"), (_LIST, ":")):
        for place in pattern.finditer(paragraph):
            at, end = place.span(1)
            yield "semicolon", paragraph[:at] + mark + paragraph[end:], at - 1, at + 2
