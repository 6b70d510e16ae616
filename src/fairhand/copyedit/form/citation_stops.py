"""The stop at a citation: before the bracket or after it, twice or not at all, and the blank beside it."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from fairhand.citing.mention import Mention
from fairhand.copyedit.own_prose import OwnParagraph
from fairhand.manuscript.parts import Manuscript, Paragraph
from fairhand.model.finding import Instead
from fairhand.model.span import Span

Fault = Literal[
    "stop before", "stop twice", "stop missing", "comma before", "stop after block", "no blank before", "no blank after"
]

_CLOSING = "”\"’'*_"
_STOP_BEFORE = re.compile(rf"(?<=[\w%)\]”\"’'*_])([.,])([{_CLOSING}]*)[ \t\n]{{0,2}}\Z")
_CRY_BEFORE = re.compile(r"\w[?!][”\"]\s{0,2}\Z")
_SHORT = re.compile(
    r"(?:\b(?:[A-Za-z]|al|ca?|cf|ch|Co|Corp|[Dd]ept|Drs?|eds?|etc|[Ff]igs?|ff|Inc|Jr|Ltd|Messrs|Mrs?|Ms|no|op|pp?|Prof"
    r"|sic|spp?|Sr|St|subsp|trans|univ|vols?|vs?)|\.\w{1,3})\Z",
    re.IGNORECASE,
)
"""What a stop may belong to that ends no sentence."""
_NEW_SENTENCE = re.compile(r"\s+(?:[“\"‘]?[A-Z\[]|\[\^)|\s*\Z")
_OPENER = re.compile(
    r"\s+(?:The|This|These|Those|It|Its|In|However|A|An|He|She|They|We|There|For|But|And|When|While|Although|If|As|Such"
    r"|Yet|Thus|Nor)\s[a-z]"
)
_LETTER = re.compile(r"[^\W\d_]")
_NOTE = re.compile(r"(?<=[\w”\"’')\]%*])((?:\[\^[^\]\s]{1,40}\])+)([.,;:?!]+[”\"’]?|[”’])(?=\s|\Z|[”’])")
_FEWEST_WORDS = 8
"""Words of a paragraph that is a sentence, and not a line of a title page or the name under a motto."""


@dataclass(frozen=True, slots=True)
class StopFault:
    """A citation whose stop, comma or blank is not where it belongs."""

    fault: Fault
    span: Span
    """From the mark before to the mark after, the bracket between them."""
    instead: tuple[Instead, ...]


def find_stop_faults(manuscript: Manuscript, mentions: Sequence[Mention], *, american: bool) -> Iterator[StopFault]:
    """The citations in brackets with a stop out of place; what stands in tables, captions and notes is let be.

    A stop that may belong to an abbreviation, and a bracket that is a sentence of its own, are let be.

    **Source**: MLA 9, 6.43 and 6.53; APA 7, 8.26 and 8.27; Chicago 17, 13.68–13.70 and 15.25 (from memory): run in, the
    stop stands after the citation; under a block quotation before it, and none after.

    Args:
        manuscript: The draft.
        mentions: Its citations.
        american: Whether the manual has no second stop within the closing mark.

    >>> from fairhand.citing.recognise import recognise
    >>> from fairhand.manuscript.draft import read_manuscript
    >>> draft = read_manuscript("The tide fell. (Okafor, 2019) The quay stood dry.")
    >>> [found.fault for found in find_stop_faults(draft, recognise(draft), american=True)]
    ['stop before']
    """
    text = manuscript.text
    plain = {block.span for block in manuscript.blocks if block.kind == "paragraph"}
    follows = _blocks_after(manuscript)
    for mention in mentions:
        paragraph = manuscript.paragraphs[mention.paragraph]
        bracket = _bracket(text, mention)
        if bracket is None or paragraph.in_table or paragraph.in_caption or paragraph.in_note:
            continue
        yield from _blanks(text, bracket, paragraph)
        if mention.form == "narrative" or (text[bracket.end - 2] in ".?!" and not _ends_short(text, bracket.end - 2)):
            continue
        if paragraph.in_quote:
            yield from _under_block(text, bracket, paragraph)
            continue
        ends = paragraph.span in plain and follows.get(paragraph.span, True)
        yield from _run_in(text, bracket, paragraph, american=american, ends=ends)


def _bracket(text: str, mention: Mention) -> Span | None:
    """The round bracket of a citation."""
    end = mention.span.end
    if mention.form == "note" or text[end - 1 : end] != ")":
        return None
    start = mention.span.start if text[mention.span.start] == "(" else text.rfind("(", mention.span.start, end)
    return Span(start, end) if start >= 0 else None


def _blocks_after(manuscript: Manuscript) -> dict[Span, bool]:
    """Of each block at the top, whether the text ends there or goes on in a new paragraph, or under a heading."""
    blocks = manuscript.blocks
    return {
        one.span: after is None or after.kind in ("paragraph", "heading")
        for one, after in zip(blocks, [*blocks[1:], None][: len(blocks)], strict=True)
    }


def _blanks(text: str, bracket: Span, paragraph: Paragraph) -> Iterator[StopFault]:
    if bracket.start > paragraph.span.start and (
        _LETTER.match(text[bracket.start - 1]) or text[bracket.start - 1] in ".,;”"
    ):
        place = Instead(Span(bracket.start, bracket.start), " ")
        yield StopFault("no blank before", Span(bracket.start - 1, bracket.end), (place,))
    if bracket.end < paragraph.span.end and _LETTER.match(text[bracket.end]):
        place = Instead(Span(bracket.end, bracket.end), " ")
        yield StopFault("no blank after", Span(bracket.start, bracket.end + 1), (place,))


def _run_in(text: str, bracket: Span, paragraph: Paragraph, *, american: bool, ends: bool) -> Iterator[StopFault]:
    before = text[paragraph.span.start : bracket.start]
    after = text[bracket.end : paragraph.span.end]
    at_end = not after.strip()
    stop = _STOP_BEFORE.search(before)
    if stop is not None and not (stop[1] == "." and _ends_short(before, stop.start())):
        mark = Span(*stop.span(1)).shifted(paragraph.span.start)
        whole = Span(mark.start, bracket.end)
        if stop[1] == ",":
            there = after[:1] in (",", ".", ";", ":", "?", "!")
            moved = () if there else (Instead(Span(bracket.end, bracket.end), ","),)
            yield StopFault("comma before", whole, (Instead(mark), *moved))
        elif after[:1] in (".", "?", "!", ","):
            if american:
                yield StopFault("stop twice", Span(mark.start, bracket.end + 1), (Instead(mark),))
        elif _NEW_SENTENCE.match(after):
            yield StopFault("stop before", whole, (Instead(mark), Instead(Span(bracket.end, bracket.end), ".")))
        return
    missing = StopFault("stop missing", bracket, (Instead(Span(bracket.end, bracket.end), "."),))
    if _CRY_BEFORE.search(before) and _OPENER.match(after):
        yield missing
    elif before.rstrip()[-1:] in tuple(".?!…:") or len(before.split()) < _FEWEST_WORDS:
        return
    elif (at_end and ends) or _OPENER.match(after):
        yield missing


def _under_block(text: str, bracket: Span, paragraph: Paragraph) -> Iterator[StopFault]:
    """A stop after the citation that ends a block quotation."""
    after = text[bracket.end : paragraph.span.end]
    if after.strip() != "." or not after.startswith("."):
        return
    before = text[paragraph.span.start : bracket.start].rstrip()
    stop = Instead(Span(bracket.end, bracket.end + 1))
    at = paragraph.span.start + len(before)
    set_before = () if not before or before.rstrip(_CLOSING)[-1:] in ".?!…" else (Instead(Span(at, at), "."),)
    yield StopFault("stop after block", Span(bracket.start, bracket.end + 1), (*set_before, stop))


def _ends_short(text: str, at: int) -> bool:
    """Whether the stop at ``at`` may be an abbreviation's, or one of several points."""
    return text[at - 1] in ".…" or text[at - 2 : at] == ". " or _SHORT.search(text[max(0, at - 12) : at]) is not None


def find_notes_before_marks(own: OwnParagraph, text: str) -> Iterator[tuple[Span, Span]]:
    """The numbers of notes that stand before the mark which they should follow, each with the mark; a dash comes after.

    **Source**: Chicago 17, 14.26; MLA 9, 7.1; APA 7, 2.13; MHRA 4, 9.3 (from memory): the number follows the stop and
    the closing mark, and only a dash follows the number.

    >>> own = OwnParagraph("It fell[^1]. It rose.[^2]", 0, ())
    >>> [(number.start, mark.start) for number, mark in find_notes_before_marks(own, own.text)]
    [(7, 11)]
    """
    end = own.start + len(own.text)
    for found in _NOTE.finditer(text, own.start, end):
        if found.start() > own.start:
            yield Span(*found.span(1)), Span(*found.span(2))
