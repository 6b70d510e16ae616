"""In-text citations found in a draft, in every style's own form, and false friends left alone."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from functools import lru_cache

from fairhand.citing.known import Known, know
from fairhand.citing.mention import Cite, Locator, Mention
from fairhand.citing.names import JOINERS, name_key
from fairhand.citing.prose import Prose, read_prose
from fairhand.citing.sighting import Shape
from fairhand.manuscript.parts import Manuscript, Paragraph, Quotation, Section
from fairhand.manuscript.sections import named_sections, section_kind
from fairhand.model.entry import Entry
from fairhand.model.span import Span

_SHORT_FORM = re.compile(r"[(\[]\s?([A-Z][A-Za-z&.-]{1,14})\s?[)\],]")
_WORD = re.compile(r"[^\W\d_][\w'’-]*")


def recognise(manuscript: Manuscript, entries: Sequence[Entry] = ()) -> tuple[Mention, ...]:
    """Every in-text citation of the draft, in order; none overlaps another.

    What the list of sources knows decides unclear forms: *(Okafor 102)* is a citation where Okafor is an author. A form
    that is plainly a citation is one without it too, so that its source can be missed.

    Args:
        manuscript: The draft.
        entries: The list of sources; may be empty.
    """
    known = know(tuple(entries))
    read = read_paragraphs(manuscript, known)
    by_page = any(
        sighting.known and cite.locator is not None and not cite.year
        for prose in read
        for sighting in prose.sightings
        if sighting.mention.form != "note"
        for cite in sighting.mention.cites
    )
    by_year = any(
        sighting.known and cite.year
        for prose in read
        for sighting in prose.sightings
        for cite in sighting.mention.cites
    )
    default = default_work(manuscript, known) is not None
    mentions: list[Mention] = []
    lists = _reference_lists(manuscript)
    for paragraph, prose in zip(manuscript.paragraphs, read, strict=True):
        if not paragraph.in_note and any(span.contains(paragraph.span) for span in lists):
            continue
        introduced = paragraph.in_quote or _is_introduced(manuscript, paragraph, read)
        for sighting in prose.sightings:
            if (sighting.need == "habit" and not by_page) or (sighting.need == "years" and not by_year):
                continue
            if sighting.need == "work" and not (by_page or default or introduced):
                continue
            if mentions and paragraph.span.start + sighting.mention.span.start < mentions[-1].span.end:
                continue
            mentions.append(_placed(sighting.mention, paragraph))
    return tuple(sorted(mentions, key=lambda mention: mention.span.start))


def _reference_lists(manuscript: Manuscript) -> list[Span]:
    """Where the draft lists its sources: under a heading, or after a line that is a heading in all but its mark."""
    lists = [section.span for kind, section in named_sections(manuscript) if kind == "references"]
    for paragraph in manuscript.paragraphs:
        title = paragraph.span.of(manuscript.text).strip("*_# \n:") if len(paragraph.span) < 60 else ""
        if title and section_kind(Section(None, title, 1, paragraph.span)) == "references":
            lists.append(Span(paragraph.span.start, len(manuscript.text)))
    return lists


def read_paragraphs(manuscript: Manuscript, known: Known) -> tuple[Prose, ...]:
    """What each paragraph names and cites; one that has not changed is not read again."""
    brackets: dict[int, list[tuple[int, int, str]]] = {}
    quotations: dict[int, list[Span]] = {}
    for bracket in manuscript.brackets:
        around = None if bracket.quotation is None else manuscript.quotations[bracket.quotation]
        if around is None or not around.closed or closes_block(manuscript.text, around, bracket.span):
            brackets.setdefault(bracket.paragraph, []).append((bracket.span.start, bracket.span.end, bracket.mark))
    for quotation in manuscript.quotations:
        if quotation.closed and quotation.kind == "run-in":
            quotations.setdefault(quotation.paragraph, []).append(quotation.span)
    out = []
    for paragraph in manuscript.paragraphs:
        start = paragraph.span.start
        shape = Shape(
            tuple((low - start, high - start, mark) for low, high, mark in brackets.get(paragraph.index, ())),
            tuple(span.shifted(-start) for span in quotations.get(paragraph.index, ())),
            tuple(span.shifted(-start) for span in paragraph.sentences),
            paragraph.in_quote,
            paragraph.in_note,
        )
        out.append(read_prose(paragraph.span.of(manuscript.text), shape, known))
    return tuple(out)


def closes_block(text: str, quotation: Quotation, span: Span) -> bool:
    """Whether a parenthesis stands at a block quotation's end, before its stop or after it."""
    return quotation.kind == "block" and not text[span.end : max(span.end, quotation.span.end)].strip(" .\t\r\n")


def default_work(manuscript: Manuscript, known: Known) -> int | None:
    """The index of the work that a page alone cites where none is named near: the paper's only source, or its subject.

    The subject is the one work that the paper's title names. **Source**: MLA Handbook 9, 6.23 and common practice.
    """
    if len(known.works) == 1:
        return 0
    if manuscript.title is None:
        return None
    title = read_prose(manuscript.title.of(manuscript.text), Shape((), (), ()), known)
    works = {at for naming in title.namings for at in naming.works}
    return works.pop() if len(works) == 1 else None


@lru_cache(maxsize=64)
def short_forms(text: str) -> dict[str, str]:
    """Acronyms that a draft introduces, as keys, with the key of the whole name.

    >>> short_forms("the World Health Organization (WHO) says; (Drainage Board [DB], 2019)")
    {'who': 'worldhealthorganization', 'db': 'drainageboard'}
    """
    found: dict[str, str] = {}
    for short in _SHORT_FORM.finditer(text):
        key = name_key(short[1])
        letters = list(key)
        words = list(_WORD.finditer(text, max(0, short.start() - 240), short.start()))
        start = None
        for word in reversed(words):
            if not letters:
                break
            if word[0][0].casefold() == letters[-1]:
                letters.pop()
                start = word.start()
            elif word[0].casefold() not in JOINERS:
                break
        if not letters and start is not None and len(key) > 1:
            found.setdefault(key, name_key(text[start : short.start()]).removeprefix("the"))
    return found


def _is_introduced(manuscript: Manuscript, paragraph: Paragraph, read: Sequence[Prose]) -> bool:
    """Whether the paragraph stands just after a block quotation, as its citation may."""
    before = manuscript.paragraphs[paragraph.index - 1] if paragraph.index else None
    return before is not None and before.in_quote and bool(read)


def _placed(mention: Mention, paragraph: Paragraph) -> Mention:
    """The mention with its places counted from the draft's start."""
    by = paragraph.span.start

    def place(locator: Locator | None) -> Locator | None:
        return replace(locator, span=locator.span.shifted(by)) if locator else None

    def cite(one: Cite) -> Cite:
        return replace(one, span=one.span.shifted(by), locator=place(one.locator))

    return Mention(mention.span.shifted(by), mention.form, paragraph.index, tuple(map(cite, mention.cites)))
