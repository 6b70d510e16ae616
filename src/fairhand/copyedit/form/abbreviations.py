"""Abbreviations: explained twice, or used before they are explained."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from fairhand.copyedit.own_prose import OwnParagraph
from fairhand.model.span import Span

_EXPLAINED = re.compile(r"(?P<words>(?:[^\W_][\w’'-]*[ \n/-]{1,2}){1,9})\((?P<short>[A-Z][A-Za-z&.-]{1,8})(?:s|’s)?\)")
_SMALL = frozenset("of the and for in on to a an by with at de la or".split())
_FEWEST = 2
_BESIDE = 40
"""Letters within which an abbreviation and its explanation stand together."""


@dataclass(frozen=True, slots=True)
class Explained:
    """An abbreviation with the words that it stands for, in brackets after them."""

    short: str
    words: str
    span: Span
    """The words with the bracket, in the draft."""


@dataclass(frozen=True, slots=True)
class Misplaced:
    """An abbreviation that is explained too late, or again."""

    fault: Literal["again", "late"]
    short: str
    words: str
    span: Span


def find_explained(paragraphs: Sequence[OwnParagraph]) -> Iterator[Explained]:
    """The abbreviations that are explained by the words before their bracket, in order.

    >>> own = OwnParagraph("The Tidal Water Board (TWB) met the press (PTO).", 0, ())
    >>> [(one.short, one.words) for one in find_explained([own])]
    [('TWB', 'Tidal Water Board')]
    """
    for own in paragraphs:
        for found in _EXPLAINED.finditer(own.text):
            start = _first_word(found["words"], found["short"])
            if start is not None:
                words = " ".join(found["words"][start:].split())
                span = Span(found.start() + start, found.end()).shifted(own.start)
                yield Explained(found["short"], words, span)


def find_misplaced(paragraphs: Sequence[OwnParagraph], everything: Sequence[OwnParagraph] = ()) -> Iterator[Misplaced]:
    """The abbreviations that are explained a second time, or that stand in the text before they are explained.

    Args:
        paragraphs: The running text in order, without abstract, notes, captions and tables, which explain their own.
        everything: All paragraphs, where an earlier bracket may explain it in another way.

    **Source**: APA 7, 6.25; MLA 9, appendix 1; Chicago 17, 10.3 (from memory): explained once, where it is first used.

    >>> text = "The TWB met in the long house on the quay. The Tidal Water Board (TWB) sat. A Tidal Water Board (TWB)."
    >>> own = OwnParagraph(text, 0, ())
    >>> [(one.fault, one.short) for one in find_misplaced([own])]
    [('late', 'TWB'), ('again', 'TWB')]
    """
    first: dict[str, Explained] = {}
    for one in find_explained(paragraphs):
        known = first.setdefault(one.short, one)
        if known is not one and _same(known.words, one.words):
            yield Misplaced("again", one.short, one.words, one.span)
        elif known is one and (early := _before(paragraphs, everything, one)) is not None:
            yield Misplaced("late", one.short, one.words, early)


def _same(one: str, other: str) -> bool:
    return one.casefold().rstrip("s") == other.casefold().rstrip("s")


def _first_word(words: str, short: str) -> int | None:
    """Where the words begin whose first letters are those of the abbreviation; None where they are others."""
    letters = [letter.casefold() for letter in short if letter.isupper()]
    if len(letters) < _FEWEST:
        return None
    starts = [(found.start(), found[0][0].casefold(), found[0].casefold()) for found in re.finditer(r"[^\W_]+", words)]
    at = len(starts) - 1
    for letter in reversed(letters):
        while at >= 0 and starts[at][1] != letter and starts[at][2] in _SMALL:
            at -= 1
        if at < 0 or starts[at][1] != letter:
            return None
        at -= 1
    return starts[at + 1][0]


def _before(paragraphs: Sequence[OwnParagraph], everything: Sequence[OwnParagraph], one: Explained) -> Span | None:
    """The first place of the abbreviation before it is explained."""
    if not one.short.isupper():
        return None
    pattern = re.compile(rf"(?<![\w&.(-]){re.escape(one.short)}(?![\w&)-])")
    bracketed = re.compile(rf"[(\[]\W?{re.escape(one.short)}(?![\w&-])")
    for own in (*paragraphs, *everything):
        found = bracketed.search(own.text)
        if found is not None and own.start + found.start() < one.span.start:
            return None
    for own in paragraphs:
        found = pattern.search(own.text)
        if found is not None:
            place = Span(*found.span()).shifted(own.start)
            return place if place.start < one.span.start - _BESIDE else None
    return None
