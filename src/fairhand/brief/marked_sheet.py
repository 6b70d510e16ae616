"""The sheet itself, with the words of each requirement marked in it, and what was not understood marked too."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from fairhand.brief.layout import read_sheet
from fairhand.model.requirement import Requirement
from fairhand.model.span import Span


@dataclass(frozen=True, slots=True)
class Place:
    """A stretch of the sheet that asks something, or that was not understood."""

    span: Span
    requirements: tuple[str, ...] = ()
    """The ids of all that its words ask; empty where they were not understood."""


@dataclass(frozen=True, slots=True)
class Piece:
    """A stretch of the sheet between two edges of places."""

    text: str
    """Its words; where a line is only wrapped, a blank stands for its end."""
    within: int | None = None
    """The index of the innermost place that it lies in."""
    begins: bool = False
    """Whether a place begins with it."""
    ends: bool = False
    """Whether a place ends with it."""
    notes: tuple[int, ...] = ()
    """The places whose note in the margin stands on the line where it ends: those whose first word it holds."""


@dataclass(frozen=True)
class MarkedSheet:
    """One sheet, ready to be shown."""

    name: str
    """Its file name."""
    places: tuple[Place, ...]
    """In the order of the sheet; of those that begin together the longest first."""
    pieces: tuple[Piece, ...]
    """Together they are the sheet."""


def mark_sheet(name: str, text: str, requirements: Sequence[Requirement], unread: Iterable[str] = ()) -> MarkedSheet:
    """The sheet cut wherever something that it asks begins or ends; no word of it is lost, however they overlap.

    Args:
        name: The sheet's file name.
        text: Its text.
        requirements: What it asks; those of other sheets are passed over.
        unread: The sentences that were not understood, as ``Brief.unread`` has them.

    >>> sheet = mark_sheet("a.txt", "Write 900 words.", [Requirement("length", {}, "", Span(6, 15), "must", "a.txt")])
    >>> [(piece.text, piece.within) for piece in sheet.pieces]
    [('Write ', None), ('900', 0), (' words', 0), ('.', None)]
    """
    asked: dict[Span, list[str]] = {}
    for one in requirements:
        if one.sheet == name and 0 <= one.span.start < one.span.end <= len(text):
            asked.setdefault(one.span, []).append(one.id)
    for span in _find_unread(name, text, frozenset(unread)):
        asked.setdefault(span, [])
    places = tuple(Place(span, tuple(asked[span])) for span in sorted(asked, key=lambda s: (s.start, -s.end)))
    return MarkedSheet(name, places, tuple(_cut(text, places, _wrapped(name, text))))


def _find_unread(name: str, text: str, unread: frozenset[str]) -> Iterator[Span]:
    """Where the sentences stand that were not understood."""
    if unread:
        for sentence in read_sheet(name, text).sentences:
            span = sentence.span(0, len(sentence.text))
            if span.start < span.end and " ".join(span.of(text).split()) in unread:
                yield span


def _wrapped(name: str, text: str) -> frozenset[int]:
    """The line ends that only wrap a line: those within a paragraph, an item or a heading."""
    return frozenset(
        at
        for passage in read_sheet(name, text).passages
        if passage.kind != "row" and passage.at
        for at in range(passage.at[0], passage.at[-1])
        if text[at] == "\n"
    )


def _cut(text: str, places: Sequence[Place], wrapped: frozenset[int]) -> Iterator[Piece]:
    noted: dict[int, list[int]] = {}
    for number, place in enumerate(places):
        noted.setdefault(_end_of_word(text, place.span), []).append(number)
    starts = {place.span.start for place in places}
    ends = {place.span.end for place in places}
    open_: list[int] = []
    coming = iter(enumerate(places))
    following = next(coming, None)
    for start, end in pairwise(sorted({0, len(text), *starts, *ends, *noted})):
        while following and following[1].span.start <= start:
            open_.append(following[0])
            following = next(coming, None)
        open_ = [number for number in open_ if places[number].span.end > start]
        yield Piece(
            "".join(" " if at in wrapped else text[at] for at in range(start, end)),
            min(open_, key=lambda number: places[number].span.end - places[number].span.start, default=None),
            start in starts,
            end in ends,
            tuple(noted.get(end, ())),
        )


def _end_of_word(text: str, span: Span) -> int:
    """Where the first word of a place ends."""
    return next((at for at in range(span.start + 1, span.end) if text[at].isspace()), span.end)
