"""Quotations: the words in them, and where each of their characters stands in the draft."""

from __future__ import annotations

import re
from bisect import bisect_left
from collections.abc import Iterable

from fairhand.manuscript.bare import LINE_END
from fairhand.manuscript.blocks import Part
from fairhand.manuscript.parts import Quotation
from fairhand.manuscript.passages import Reading, read_passage
from fairhand.manuscript.places import Passage
from fairhand.manuscript.verse import reads_as_verse
from fairhand.model.span import Span

_LAST_PARENTHESIS = re.compile(
    r"(?P<before>\S?[ \n\u2028\u2007]*(?:[—–-]{1,2} ?)?)(?P<cited>\((?:[^()]|\([^()]{0,200}\)){1,400}\))"
    r"(?P<stop>[.,;:]?)\Z"
)
_STOPPED = re.compile(r"[.!?…][\"”’'»)\]]{0,3}\Z")
_NAMES_SOMETHING = re.compile(r"\d|n\.d\.|\((?:[\"“‘'*_]|see |qtd)?[A-Z][^.!?]*(?:\.[^.!?)]+)*\)\Z")
_ENDS_AT_A_PLACE = re.compile(r"(?:\d[a-z]?|\b[ivxl]{1,7}|n\.d\.)\s?\)\Z")
_YEARS_ALONE = re.compile(r"\(\s?\d{4}(?:\s?[-–]\s?\d{2,4})?\s?\)")
_ATTRIBUTION = re.compile(r"[\n\u2028][ ]?(?:—|–|--)[ ]?[^\W_][^\n\u2028]{1,200}\Z")
_VERSE = re.compile(r"\S /{1,2} \S")

Piece = tuple[str, int]
"""A character and its place in the draft."""


def inline_text(passage: Passage, start: int, end: int) -> tuple[str, tuple[int, ...], bool]:
    """The words of a quotation between two places of its passage's text, their places, and whether it is verse."""
    pieces = list(_pieces(passage, start, end))
    text, places = _tidy(pieces)
    return text, places, bool(_VERSE.search(text))


def block_extent(passages: list[Passage]) -> tuple[list[tuple[Passage, int]], Span]:
    """The passages of a block quotation, each with its end, a citation at the end left out; and their interval."""
    kept = [(passage, len(passage.text)) for passage in passages]
    while kept:
        passage, _ = kept[-1]
        end = _before_citation(passage, alone=len(kept) > 1)
        if end:
            kept[-1] = (passage, end)
            break
        if len(kept) == 1:
            break
        kept.pop()
    return kept, Span(kept[0][0].place(0), kept[-1][0].span(0, kept[-1][1]).end)


def block_text(kept: list[tuple[Passage, int]]) -> tuple[str, tuple[int, ...], bool]:
    """The words of a block quotation, their places, and whether it is set as lines of verse."""
    unmarked = [reads_as_verse(passage.text) for passage, _ in kept]
    verse = any(unmarked) or any(LINE_END in read_passage(passage.text).bare.text for passage, _ in kept)
    pieces: list[Piece] = []
    for (passage, end), by_line in zip(kept, unmarked, strict=True):
        if pieces:
            pieces += [(char, pieces[-1][1]) for char in (" // " if verse else " ")]
        for char, place in _pieces(passage, 0, end):
            ends = by_line and char.isspace() and passage.text[passage.index(place)] == "\n"
            pieces.append((LINE_END if ends else char, place))
    text, places = _tidy(pieces)
    return text, places, verse


def passages_of(part: Part) -> list[Passage]:
    """The running texts within a block, in order."""
    return [passage for inner in part.walk() for passage in inner.passages if passage.text]


def _pieces(passage: Passage, start: int, end: int) -> Iterable[Piece]:
    """Each character that reads between two places of a passage, remarks to oneself left out."""
    reading: Reading = read_passage(passage.text)
    bare = reading.bare
    hidden = [(left.start, left.end) for left in reading.left if left.labelled]
    at = bisect_left(bare.starts, start)
    while at < len(bare.starts) and bare.ends[at] <= end:
        if hidden and at >= hidden[0][0]:
            at = max(at, hidden.pop(0)[1])
            continue
        yield bare.text[at], passage.place(bare.starts[at])
        at += 1


def _tidy(pieces: list[Piece]) -> tuple[str, tuple[int, ...]]:
    """The characters with each run of blanks as one, and each line end that print keeps as a stroke."""
    chars: list[str] = []
    places: list[int] = []
    for char, place in pieces:
        if char == LINE_END:
            while chars and chars[-1] == " ":
                chars.pop()
                places.pop()
            chars.extend(" / ")
            places.extend([place] * 3)
        elif char.isspace():
            if chars and chars[-1] != " ":
                chars.append(" ")
                places.append(place)
        else:
            if char in ",.;:!?" and len(chars) > 1 and chars[-1] == " " and place - places[-1] > 1:
                chars.pop()
                places.pop()
            chars.append(char)
            places.append(place)
    while chars and chars[-1] == " ":
        chars.pop()
        places.pop()
    return "".join(chars), tuple(places)


def _before_citation(passage: Passage, *, alone: bool) -> int:
    """Where the quoted words of the last passage end, before a citation or attribution; 0 where it is nothing else.

    **Source**: the manuals put a block quotation's citation after its closing point (MLA 9, 6.35; APA 7, 8.27; CMOS 17,
    13.70); one with a figure in it is taken for a citation even where the point is missing, or stands after it.
    """
    reading = read_passage(passage.text)
    said = reading.bare.text.rstrip()
    end = len(said)
    found = _LAST_PARENTHESIS.search(said[-500:])
    if found:
        start = end - len(found.group()) + len(found["before"])
        before = said[:start].rstrip().rstrip("—–-").rstrip()
        cited = found["cited"]
        if not before:
            is_cited = alone
        elif found["stop"]:
            is_cited = bool(_ENDS_AT_A_PLACE.search(cited) and not _YEARS_ALONE.fullmatch(cited))
        else:
            is_cited = bool(_NAMES_SOMETHING.search(cited) and (_STOPPED.search(before) or re.search(r"\d", cited)))
        end = len(before) if is_cited else end
    else:
        attribution = _ATTRIBUTION.search(said[-300:])
        if attribution:
            end -= len(attribution.group())
        elif alone and re.match(r"(?:—|–|--)\s?\w", said):
            end = 0
    if any(pair.start < end < pair.end for pair in reading.pairs):
        end = len(said)
    return reading.bare.ends[end - 1] if end else 0


def offsets_within(parts: tuple[Part, ...], quotation: Quotation) -> tuple[int, ...]:
    """The place in the draft of each character of ``quotation.text``."""
    start = quotation.span.start
    around = next((part for part in reversed(parts) if part.block.span.start <= start), None)
    for part in around.walk() if around else ():
        if quotation.kind == "block":
            if part.block.kind == "quote" and part.block.span.start == start:
                return block_text(block_extent(passages_of(part))[0])[1]
            continue
        for passage in part.passages:
            if passage.text and passage.whole.contains(quotation.span):
                inner = quotation.inner
                return inline_text(passage, passage.index(inner.start), passage.index(inner.end))[1]
    return ()
