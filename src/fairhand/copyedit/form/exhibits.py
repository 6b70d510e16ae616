"""Tables and figures against what the text says of them."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass

from fairhand.manuscript.parts import Manuscript
from fairhand.manuscript.sections import named_sections
from fairhand.model.span import Span

_NUMBERS = r"(?P<numbers>\d{1,3}[A-Za-z]?\b(?:\s?(?:,|and|&|,\s?and|to|–|-|through)\s?\d{1,3}[A-Za-z]?\b){0,8})"
_MENTION = re.compile(rf"\b(?P<kind>tables?|figures?|figs?\.?)\s{{1,2}}{_NUMBERS}(?![.]\d)", re.IGNORECASE)
_NUMBER = re.compile(r"(\d{1,3})[A-Za-z]?\b(\s?(?:to|–|-|through)\s?(?=\d))?")
_POINTED = r"(?:(?:the|this|following|that)\s(?:\w+\s)?{0}|{0}\s(?:below|above|that follows|on the next page))\b"
_OF_SOURCE = re.compile(r"[\])]\s?[:,;]\s?\Z")
"""Before a mention: a source's number, of which the table or figure is."""
_ANOTHER = re.compile(
    r"\A[A-Za-z]?,?\)?\s(?:of|in|from|on page|on p\.)\s(?!(?:this|the present|our|my)\b)", re.IGNORECASE
)


@dataclass(frozen=True, slots=True)
class Numbered:
    """A table or figure as it is printed."""

    kind: str
    """``table`` or ``figure``."""
    number: int
    span: Span
    titled: bool
    """Whether the writer's caption says anything beside the number."""


@dataclass(frozen=True, slots=True)
class Mentioned:
    """A table or figure that the text speaks of."""

    kind: str
    numbers: tuple[int, ...]
    span: Span


def find_exhibit_mentions(manuscript: Manuscript, skipped: Collection[Span]) -> Iterator[Mentioned]:
    """Where the text speaks of a table or figure by number, outside captions and what is skipped.

    Args:
        manuscript: The draft.
        skipped: Places that speak of a source's own: quotations and citations.

    >>> from fairhand.manuscript.draft import read_manuscript
    >>> [m.numbers for m in find_exhibit_mentions(read_manuscript("See Figs. 2–4 and table 1."), ())]
    [(2, 3, 4), (1,)]
    """
    for paragraph in manuscript.paragraphs:
        if paragraph.in_caption or paragraph.in_quote:
            continue
        for found in _MENTION.finditer(manuscript.text, paragraph.span.start, paragraph.span.end):
            span = Span(*found.span())
            if any(each.overlaps(span) for each in skipped) or _OF_SOURCE.search(
                manuscript.text[max(0, span.start - 4) : span.start]
            ):
                continue
            kind = "table" if found["kind"].casefold().startswith("t") else "figure"
            yield Mentioned(kind, tuple(_numbers(found["numbers"])), span)


def find_unmentioned(
    manuscript: Manuscript, exhibits: Sequence[Numbered], skipped: Collection[Span]
) -> Iterator[Numbered]:
    r"""The tables and figures of which the text never speaks, by number or as the one above or below.

    **Source**: APA 7, 7.5; MLA 9, 1.7; Chicago 17, 3.50 (from memory): each is mentioned in the text.

    >>> from fairhand.manuscript.draft import read_manuscript
    >>> draft = read_manuscript("Text.\n\n![Rain](a.png)\n\nFigure 1. Rain.")
    >>> [e.number for e in find_unmentioned(draft, [Numbered("figure", 1, draft.figures[0].span, True)], ())]
    [1]
    """
    told = {(m.kind, number) for m in find_exhibit_mentions(manuscript, skipped) for number in m.numbers}
    apart = [section.span for _, section in named_sections(manuscript)]
    for exhibit in exhibits:
        if (exhibit.kind, exhibit.number) in told or any(span.contains(exhibit.span) for span in apart):
            continue
        if not _is_pointed_at(manuscript, exhibit):
            yield exhibit


def find_missing(
    manuscript: Manuscript, exhibits: Sequence[Numbered], skipped: Collection[Span]
) -> Iterator[tuple[Mentioned, int]]:
    r"""The mentions of a table or figure that the draft has not got; a source's own let be.

    >>> from fairhand.manuscript.draft import read_manuscript
    >>> draft = read_manuscript("See Figure 2, and Figure 3 of the report.\n\n![Rain](a.png)\n\nFigure 1. Rain.")
    >>> [n for _, n in find_missing(draft, [Numbered("figure", 1, draft.figures[0].span, True)], ())]
    [2]
    """
    there = {(each.kind, each.number) for each in exhibits}
    told: set[tuple[str, int]] = set()
    for mentioned in find_exhibit_mentions(manuscript, skipped):
        after = manuscript.text[mentioned.span.end : mentioned.span.end + 40]
        if _ANOTHER.match(after):
            continue
        for number in mentioned.numbers:
            if (mentioned.kind, number) not in there | told:
                told.add((mentioned.kind, number))
                yield mentioned, number


def _numbers(text: str) -> Iterator[int]:
    begun = None
    for found in _NUMBER.finditer(text):
        number = int(found[1])
        if begun is not None:
            yield from range(begun + 1, min(number, begun + 30))
        yield number
        begun = number if found[2] else None


def _is_pointed_at(manuscript: Manuscript, exhibit: Numbered) -> bool:
    """Whether one of the two paragraphs on either side speaks of *the table* or *the figure below*."""
    words = "table" if exhibit.kind == "table" else "(?:figure|chart|graph|map|picture|photograph|image|diagram|plate)"
    pointed = re.compile(_POINTED.format(words), re.IGNORECASE)
    prose = [p for p in manuscript.paragraphs if not (p.in_caption or p.in_table)]
    before = [p for p in prose if p.span.end <= exhibit.span.start][-2:]
    after = [p for p in prose if p.span.start >= exhibit.span.end][:2]
    return any(pointed.search(p.span.of(manuscript.text)) for p in (*before, *after))
