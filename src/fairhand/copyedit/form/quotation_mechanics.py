"""Marks in and around a quotation that do not belong there, or are wanting.

**Source**: "mechanical error with a quotation" in A. A. Lunsford and K. J. Lunsford 2008; MLA 9, 6.40–6.54; APA 7, 6.7
and 8.26–8.31; Chicago 17, 6.9–6.10, 6.124 and 13.14–13.30 (from memory). Single marks within single ones are not read.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator
from dataclasses import dataclass
from typing import Literal

from fairhand.citing.telltales import REPORTING
from fairhand.manuscript.parts import Manuscript, Quotation
from fairhand.model.finding import Instead
from fairhand.model.span import Span

Fault = Literal["mark within", "stop twice", "same marks", "comma wanting", "comma after that", "block in marks"]

_DOUBLE = frozenset('"“”„')
_SINGLE = frozenset("'‘’‚")
_VERBS = (
    r"(?:says|said|writes|wrote|argues|argued|states|stated|asks|asked|replies|replied|explains|explained|observes"
    r"|observed|adds|added|declares|declared|remarks|remarked|noted|claimed|insists|insisted|concludes|concluded|answered"
    r"|cried|announces|announced|recalls|recalled|warns|warned|maintains|maintained|suggests|suggested|contends"
    r"|contended|admits|admitted|confesses|confessed|complains|complained|protested|exclaims|exclaimed|asserts|asserted)"
)
_LED = re.compile(rf"(?<=[\w)’'] ){_VERBS}(?P<gap> )\Z")
_THAT = re.compile(r"\b(?P<verb>\w+) that(?P<comma>,) \Z")
_AROUND = 40
_FEWEST = 5
"""Words of a sentence that is quoted whole; fewer are a title or a cry."""
_LONG = 4
_SMALL = 2
"""Long words in small letters that a title has not."""


@dataclass(frozen=True, slots=True)
class MarkFault:
    """A quotation with a mark out of place."""

    fault: Fault
    span: Span
    instead: tuple[Instead, ...]
    mark: str = ""


def find_mark_faults(manuscript: Manuscript, titles: Collection[int], *, american: bool) -> Iterator[MarkFault]:
    """The quotations with a mark out of place; those in tables and notes are let be.

    Args:
        manuscript: The draft.
        titles: Indices of the quotations that are titles.
        american: Whether a question mark within the closing mark makes the full stop after it needless.

    >>> from fairhand.manuscript.draft import read_manuscript
    >>> draft = read_manuscript("It was “a slow retreat;” no more.")
    >>> [one.fault for one in find_mark_faults(draft, (), american=True)]
    ['mark within']
    """
    for index, quotation in enumerate(manuscript.quotations):
        paragraph = manuscript.paragraphs[quotation.paragraph]
        if not quotation.closed or paragraph.in_note or paragraph.in_table:
            continue
        if quotation.kind == "block":
            yield from _block(manuscript, index, quotation)
            continue
        outer = manuscript.quotations[quotation.within] if quotation.within is not None else None
        if outer is not None and outer.kind == "run-in":
            yield from _nested(manuscript.text, outer, quotation)
        if outer is None and not paragraph.in_quote:
            yield from _ends(manuscript.text, quotation, american=american)
            if index not in titles:
                yield from _led(manuscript.text, quotation, paragraph.span.start)


def _ends(text: str, quotation: Quotation, *, american: bool) -> Iterator[MarkFault]:
    """A semicolon or colon within the closing mark; a full stop after a quoted question."""
    close = quotation.inner.end
    end = quotation.span.end
    last = text[close - 1 : close]
    word = max(text.rfind(" ", 0, close - 1) + 1, quotation.span.start)
    if text[close:end] not in (*_DOUBLE, *_SINGLE):
        return
    if last in (";", ":") and text[end : end + 1].isspace():
        place = Instead(Span(close - 1, end), text[close:end] + last)
        yield MarkFault("mark within", Span(word, end), (place,), last)
    elif american and last in ("?", "!") and text[end : end + 1] == "." and text[end + 1 : end + 2] != ".":
        yield MarkFault("stop twice", Span(word, end + 1), (Instead(Span(end, end + 1)),), last)


def _led(text: str, quotation: Quotation, start: int) -> Iterator[MarkFault]:
    """A comma that is wanting between a verb of saying and a whole sentence, or stands after *that*."""
    at = quotation.span.start
    before = text[max(start, at - _AROUND) : at]
    if text[at] not in (*_DOUBLE, *_SINGLE):
        return
    if (that := _THAT.search(before)) and that["verb"] in REPORTING:
        comma = at - len(before) + that.start("comma")
        yield MarkFault("comma after that", Span(comma - len("that"), at + 1), (Instead(Span(comma, comma + 1)),))
    elif (led := _LED.search(before)) and _is_sentence(quotation.text):
        gap = at - len(before) + led.start("gap")
        yield MarkFault("comma wanting", Span(at - len(before) + led.start(), at + 1), (Instead(Span(gap, gap), ","),))


def _is_sentence(words: str) -> bool:
    """Whether what is quoted can be a sentence: a capital, words enough, several of them small, as in no title."""
    said = words.split()
    small = [word for word in said[1:] if word.islower() and len(word.strip(".,;:?!")) >= _LONG]
    return words[:1].isupper() and len(said) >= _FEWEST and len(small) >= _SMALL


def _nested(text: str, outer: Quotation, inner: Quotation) -> Iterator[MarkFault]:
    """A quotation in the same marks as the one that it stands in."""
    marks = (text[outer.span.start], text[inner.span.start])
    if all(mark in _DOUBLE for mark in marks) and inner.span.end - inner.inner.end == 1:
        ends = Span(inner.span.start, inner.inner.start), Span(inner.inner.end, inner.span.end)
        instead = (Instead(ends[0], "‘"), Instead(ends[1], "’"))
        yield MarkFault("same marks", inner.span, instead)


def _block(manuscript: Manuscript, index: int, block: Quotation) -> Iterator[MarkFault]:
    """Quotation marks around the whole of a block quotation."""
    for quotation in manuscript.quotations[index + 1 :]:
        if quotation.within != index:
            break
        if quotation.closed and quotation.span.start == block.inner.start and quotation.span.end >= block.inner.end:
            opening, closing = (
                Span(quotation.span.start, quotation.inner.start),
                Span(quotation.inner.end, quotation.span.end),
            )
            yield MarkFault("block in marks", opening, (Instead(opening), Instead(closing)))
