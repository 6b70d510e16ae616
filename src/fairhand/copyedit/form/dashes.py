"""Hyphens that stand for a dash, and between the ends of a range.

Two or three hyphens are not looked for: the fair copy makes dashes of them by itself. Dashes that are set unlike each
other are looked for in ``dash_blanks``.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from fairhand.copyedit.own_prose import OwnParagraph
from fairhand.model.span import Span

_HYPHEN = re.compile(
    r"(?<=[^\W_]{2}|[\w\ufffc][,)\]”\"’])( - )(?=(?:[a-z]{2,30}|an?)[\s,’'.])"
    r"|(?<=[^\W\d_A-Z]{2}|[a-z\ufffc][,)”\"’])( - )(?=[^\W\d_]{1,30}[\s,’'.]|[“\"(])"
)
_RANGE = re.compile(r"(?<![\w.,/:$£€∼~+*=−–\[-])(\d{1,4})-(\d{1,4})(?![\w/:+*=−–\]-]|[.,]\d)")
_FIRST_YEAR, _LAST_YEAR = 1000, 2100
_PAGES = re.compile(
    r"\b(?:pp?\.|pages?|chapters?|chs?\.|lines?|ll\.|nos?\.|vols?\.|weeks?|ages?|aged)\s\Z", re.IGNORECASE
)


@dataclass(frozen=True, slots=True)
class Range:
    """Two numbers with a hyphen between them."""

    span: Span
    hyphen: Span
    first: int
    last: int


def find_hyphen_dashes(own: OwnParagraph) -> Iterator[Span]:
    """The places of hyphens between two blanks that part words of a sentence.

    Between figures or signs it may be a minus, between two names part of a code: neither is looked at.

    **Source**: APA 7, 6.6; MLA 9, 2.53; Chicago 17, 6.75–6.85 (from memory).

    >>> [s.start for s in find_hyphen_dashes(OwnParagraph("The tide - so they said - fell by 3 - 4 feet.", 0, ()))]
    [9, 24]
    """
    for hit in _HYPHEN.finditer(own.text):
        yield Span(hit.start() + 1, hit.end() - 1).shifted(own.start)


def find_hyphen_ranges(own: OwnParagraph) -> Iterator[Range]:
    """The ranges of years, pages and rising numbers that have a hyphen for the en dash; citations in brackets let be.

    **Source**: APA 7, 6.6; Chicago 17, 6.78 (from memory). MLA sets ranges with a hyphen.

    >>> [(r.first, r.last) for r in find_hyphen_ranges(OwnParagraph("in 1914-18, of ISO 639-3, on pp. 12-15", 0, ()))]
    [(1914, 1918), (12, 15)]
    """
    for hit in _RANGE.finditer(own.text):
        first, last = hit[1], hit[2]
        if len(last) < len(first) and len(first) > 2:
            last = first[: len(first) - len(last)] + last
        before = own.text[: hit.start()]
        years = len(first) == len(last) == 4 and _FIRST_YEAR <= int(first) < int(last) <= _LAST_YEAR
        pages = _PAGES.search(before) is not None and int(first) < int(last)
        if years or pages or (_rises(hit[1], hit[2]) and not _names(before)):
            at = hit.end(1)
            yield Range(
                Span(*hit.span()).shifted(own.start), Span(at, at + 1).shifted(own.start), int(first), int(last)
            )


def _rises(first: str, last: str) -> bool:
    """Whether two figures can be the ends of a range, and not the halves of a number to ring up."""
    return first[0] != "0" and int(first) < int(last) and (len(first), len(last)) != (3, 4)


def _names(before: str) -> bool:
    """Whether the word before is a name or a code, of which the numbers may be part."""
    word = before.rstrip().rpartition(" ")[2].strip('([“"')
    return bool(word) and (word[0].isupper() or not word[-1].isalpha())
