"""Reading a draft: any text is some manuscript."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace

from fairhand.manuscript.asides import is_abbreviation
from fairhand.manuscript.blocks import Part, read_parts
from fairhand.manuscript.captions import caption_span, find_captions
from fairhand.manuscript.parts import (
    Aside,
    Block,
    Bracket,
    Manuscript,
    Paragraph,
    Placeholder,
    Quotation,
    Section,
)
from fairhand.manuscript.passages import Reading, read_passage
from fairhand.manuscript.places import Passage
from fairhand.manuscript.quoting import block_extent, block_text, inline_text, offsets_within, passages_of
from fairhand.model.span import Span

_LETTER = re.compile(r"[^\W\d_]")


def read_manuscript(text: str) -> Manuscript:
    r"""The draft, taken apart; every span is one of ``text`` as it was given.

    Args:
        text: CommonMark with tables and footnotes; line ends of any kind.

    Returns:
        The parts, each list in the order of the draft, what encloses before what it encloses.

    >>> draft = read_manuscript("# Tides\n\nLind says “water *waits*” (12). [NB: which page?]\n")
    >>> draft.quotations[0].text, draft.asides[0].text
    ('water waits', 'which page?')
    """
    parts, _ = read_parts(text)
    captions = find_captions(parts)
    spans = {index: caption_span(parts, places) for index, places in captions.items()}
    blocks = tuple(
        replace(part.block, caption=spans[index]) if index in spans else part.block for index, part in enumerate(parts)
    )
    captioned = {parts[place].block.span for places in captions.values() for place in places}
    sections = _sections(text, parts)
    taker = _Taker(not is_abbreviation(text), sections, captioned)
    for part in parts:
        taker.take(part)
    quotations = tuple(_nested(sorted(taker.quotations, key=lambda each: (each.span.start, -each.span.end))))
    headings = [section.heading for section in sections if section.heading and section.level == 1]
    first = next((section.heading for section in sections if section.heading), None)
    everything = [block for block in blocks for block in _within(block)]
    return Manuscript(
        text=text,
        title=first.content if first and headings == [first] else None,
        blocks=blocks,
        sections=sections,
        paragraphs=tuple(taker.paragraphs),
        quotations=quotations,
        brackets=tuple(_placed(taker.brackets, quotations)),
        asides=tuple(taker.asides),
        placeholders=tuple(taker.placeholders),
        tables=tuple(block for block in everything if block.kind == "table"),
        figures=tuple(block for block in everything if block.kind == "figure"),
        notes={block.label: block for block in reversed(everything) if block.kind == "note"},
    )


def quotation_offsets(manuscript: Manuscript, quotation: Quotation) -> tuple[int, ...]:
    """For each character of ``quotation.text``, its place in the draft; a blank between lines has the line end's."""
    return offsets_within(read_parts(manuscript.text)[0], quotation)


def _within(block: Block) -> Iterator[Block]:
    yield block
    for child in block.children:
        yield from _within(child)


def _sections(text: str, parts: Sequence[Part]) -> tuple[Section, ...]:
    """The sections by the headings that stand in no other block."""
    headings = [part for part in parts if part.block.kind == "heading"]
    first = headings[0].block.span.start if headings else len(text)
    sections = []
    if not headings or text[:first].strip():
        sections.append(Section(None, "", 0, Span(0, first)))
    ends: list[int] = []
    waiting: list[int] = []
    for index, part in enumerate(headings):
        ends.append(len(text))
        while waiting and headings[waiting[-1]].block.level >= part.block.level:
            ends[waiting.pop()] = part.block.span.start
        waiting.append(index)
    for part, end in zip(headings, ends, strict=True):
        sections.append(Section(part.block, _title(part), part.block.level, Span(part.block.span.start, end)))
    return tuple(sections)


def _title(part: Part) -> str:
    """What a heading says, without what is left in it for the writer alone."""
    if part.passage is None:
        return ""
    reading = read_passage(part.passage.text)
    said, at = "", 0
    for left in reading.left:
        said += reading.bare.text[at : left.start]
        at = left.end
    return " ".join((said + reading.bare.text[at:]).split())


class _Taker:
    """Goes through the blocks once and collects what stands in them."""

    def __init__(self, matter: bool, sections: tuple[Section, ...], captioned: set[Span]) -> None:
        self.matter = matter
        self.sections = sections
        self.captioned = captioned
        self.section = 0
        self.paragraphs: list[Paragraph] = []
        self.quotations: list[Quotation] = []
        self.brackets: list[Bracket] = []
        self.asides: list[Aside] = []
        self.placeholders: list[Placeholder] = []

    def take(self, part: Part, *, in_quote: bool = False, in_note: bool = False) -> None:
        """Collect what stands in a block and in those within it."""
        kind = part.block.kind
        if kind == "quote":
            self._block_quotation(part)
        for cell in (cell for row in part.cells for cell in row):
            self._left(cell)
            if _LETTER.search(cell.text):
                self._paragraph(cell, cell.whole, in_quote=in_quote, in_note=in_note, in_table=True)
        if part.passage is not None:
            self._left(part.passage)
            if kind == "paragraph":
                self._paragraph(part.passage, part.block.span, in_quote=in_quote, in_note=in_note)
        for child in part.children:
            self.take(child, in_quote=in_quote or kind == "quote", in_note=in_note or kind == "note")

    def _read(self, passage: Passage) -> Reading:
        return read_passage(passage.text, matter_to_come=self.matter)

    def _left(self, passage: Passage) -> None:
        reading = self._read(passage)
        for left in reading.left:
            inner = reading.span(left.start, left.end)
            start = inner.start
            if passage.text[start - 1 : start] == "\\":
                start -= 1
            span = passage.span(start, inner.end)
            if left.kind == "aside":
                self.asides.append(Aside(span, left.text))
            else:
                self.placeholders.append(Placeholder(span, left.text))

    def _paragraph(
        self, passage: Passage, span: Span, *, in_quote: bool, in_note: bool, in_table: bool = False
    ) -> None:
        index = len(self.paragraphs)
        reading = self._read(passage)
        while self.section + 1 < len(self.sections) and self.sections[self.section + 1].span.start <= span.start:
            self.section += 1
        sentences = tuple(passage.span(each.start, each.end) for each in reading.sentences)
        self.paragraphs.append(
            Paragraph(index, span, sentences, self.section, in_quote, in_note, span in self.captioned, in_table)
        )
        for pair in reading.pairs:
            outer = reading.span(pair.start, pair.end)
            inner = reading.between(pair.inner_start, pair.inner_end)
            if not pair.closed:
                inner = Span(inner.start, min(inner.end, outer.end))
            outer_span, inner_span = passage.span(outer.start, outer.end), passage.span(inner.start, inner.end)
            if pair.quoted:
                text, _, verse = inline_text(passage, inner.start, inner.end)
                if text:
                    self.quotations.append(
                        Quotation(outer_span, inner_span, text, "run-in", index, verse=verse, closed=pair.closed)
                    )
            else:
                self.brackets.append(Bracket(outer_span, inner_span, "(" if pair.mark == "(" else "[", index, None))

    def _block_quotation(self, part: Part) -> None:
        passages = passages_of(part)
        if not passages:
            return
        kept, inner = block_extent(passages)
        text, _, verse = block_text(kept)
        if text:
            span = Span(part.block.span.start, inner.end)
            self.quotations.append(Quotation(span, inner, text, "block", len(self.paragraphs), verse=verse))


def _nested(quotations: list[Quotation]) -> Iterator[Quotation]:
    """The quotations again, each with the index of the one that it stands in."""
    waiting: list[int] = []
    for index, quotation in enumerate(quotations):
        while waiting and quotations[waiting[-1]].span.end <= quotation.span.start:
            waiting.pop()
        yield replace(quotation, within=waiting[-1] if waiting else None)
        waiting.append(index)


def _placed(brackets: list[Bracket], quotations: tuple[Quotation, ...]) -> Iterator[Bracket]:
    """The brackets in order, each with the index of the innermost quotation that it stands in."""
    waiting: list[int] = []
    following = 0
    for bracket in sorted(brackets, key=lambda each: (each.span.start, -each.span.end)):
        while following < len(quotations) and quotations[following].span.start <= bracket.span.start:
            waiting.append(following)
            following += 1
        while waiting and quotations[waiting[-1]].span.end <= bracket.span.start:
            waiting.pop()
        yield replace(bracket, quotation=waiting[-1] if waiting else None)
