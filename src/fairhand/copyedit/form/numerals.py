"""Sentences that open with a numeral."""

from __future__ import annotations

import re
from collections.abc import Iterator

from fairhand.copyedit.own_prose import OwnParagraph
from fairhand.manuscript.bare import OPAQUE
from fairhand.model.span import Span

_OPENS = re.compile(
    r"(?:\d{1,3}(?:,\d{3})+|\d+)(?:\.\d+)?(?:[%‰]|(?=[\s–-]))"
    r"(?!-[A-Z\d]|-\w{1,2}\b|[.)]|\s+(?:[A-Z]|\(\d))"
)
_YEAR = re.compile(r"(?:1\d|20)\d\d(?!\w)")
_SHORTEST = 3
"""Words of so many letters may be abbreviations."""
_LISTED = re.compile(r"\d{1,2}(?:\.\d+)*[.)]")


def find_opening_numerals(own: OwnParagraph) -> Iterator[Span]:
    """The numerals that a sentence opens with, years and the numbers of lists and of notes let be.

    **Source**: APA 7, 6.33; MLA 9, 2.126; Chicago 17, 9.5 (from memory): a number at the opening of a sentence is
    written in words, or the sentence is turned.

    >>> [s.start for s in find_opening_numerals(OwnParagraph("They rested. 40 men came along.", 0,
    ...     (Span(0, 12), Span(13, 31))))]
    [13]
    """
    for number, sentence in enumerate(own.sentences):
        said = sentence.of(own.text)
        hit = _OPENS.match(said)
        if hit is None or _YEAR.match(said) or _LISTED.match(said) or len(said.split()) < 4:
            continue
        if number and not _ends(own.text[: sentence.start]):
            continue
        yield Span(sentence.start, sentence.start + hit.end()).shifted(own.start)


def _ends(before: str) -> bool:
    """Whether what stands before is surely the end of a sentence, and not of an abbreviation."""
    said = before.rstrip().rstrip('”"’')
    if not said.endswith((".", "?", "!")):
        return said.endswith((".)", "?)", ".]"))
    word = re.split(r"[\s(]", said)[-1].rstrip(".?!")
    return (
        word.endswith((")", "]", OPAQUE))
        or _YEAR.fullmatch(word) is not None
        or (len(word) > _SHORTEST and word.isalpha() and word[1:].islower())
    )
