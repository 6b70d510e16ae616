"""What one paragraph cites and names, before the rest of the draft is known."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Literal

from fairhand.citing.footnotes import read_note
from fairhand.citing.known import Known
from fairhand.citing.locators import read_places
from fairhand.citing.mention import Cite, Mention
from fairhand.citing.names import name_key, name_words, read_who
from fairhand.citing.naming import Naming, find_namings
from fairhand.citing.narrative import find_author
from fairhand.citing.parenthesis import Read, Tail, ends_there, level, read_parenthesis, read_tails
from fairhand.citing.telltales import COUNTED, REPORTING
from fairhand.model.span import Span

Need = Literal["", "habit", "work"]
"""What it takes for a sighting to be a citation: nothing more; that the draft cites by author and page elsewhere; that
the work meant is told by the draft as a whole."""

IBID = re.compile(r"\s*(?:see\s+)?ibid(?:em)?\b\.?[,:;]?\s*", re.IGNORECASE)
"""What means the work cited last."""

_REMARK = re.compile(
    r"[\s,;]*(?:(?:my|our|original|the author's)\s)?(?:emphas[ie]s|italics?|translat|trans\.|brackets|capitals|ellips"
    r"|added|mine)",
    re.IGNORECASE,
)
_AFTER_QUOTE = re.compile(
    r"[\"”»][.,;:!?]?\s{0,2}\Z|(?<=[\w.,!?])[’'][.,;:!?]?\s{0,2}\Z|[\w.,!?…][.,;:]?[\"”][.,;:]?\s\Z"
)
_CLAUSE_END = re.compile(r"\s*(?:[.,;:!?)\]–—]|\Z)|\n")
_ITALIC_TITLE = re.compile(r"[*_](?:[^\W\d_])[^*_\n]{0,200}[*_]\s?\Z")
_CAPITAL = re.compile(r"(?<![\w.])[^\W\d_][\w'’-]{1,30}")
_CAPITALISED_LABEL = re.compile(r"[A-Z][a-z]")
_ARTICLE = re.compile(r"(?:the|a|an)\s", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Shape:
    """A paragraph as the manuscript has taken it apart; every place is counted from its start."""

    brackets: tuple[tuple[int, int, str], ...]
    """Start, end and kind of the brackets that stand outside quotations."""
    quotations: tuple[Span, ...]
    """Closed quotations."""
    sentences: tuple[Span, ...]
    in_quote: bool = False
    in_note: bool = False


@dataclass(frozen=True, slots=True)
class Sighting:
    """A mention, if the rest of the draft bears it out."""

    mention: Mention
    need: Need = ""
    known: bool = False
    """Whether a source answers to it."""


@dataclass(frozen=True, slots=True)
class Prose:
    """What a paragraph names and cites; every place is counted from its start."""

    namings: tuple[Naming, ...]
    sightings: tuple[Sighting, ...]


@lru_cache(maxsize=4096)
def read_prose(text: str, shape: Shape, known: Known) -> Prose:
    """The names and citations of one paragraph, remembered by its text."""
    levelled = level(text)
    namings = find_namings(levelled, known, shape.quotations)
    sightings = [Sighting(note, known=sure) for note, sure in read_note(levelled, known)] if shape.in_note else []
    taken = [sighting.mention.span for sighting in sightings]
    for start, end, mark in shape.brackets:
        if any(start < span.end and span.start < end for span in taken):
            continue
        bracket = Span(start, end)
        inner = Span(start + 1, max(start + 1, end - 1 if levelled[end - 1 : end] in ")]" else end))
        sighting = _read_round(levelled, bracket, inner, known) if mark == "(" else None
        if sighting is None:
            sighting = _read_tail(levelled, bracket, inner, shape, known, namings, sightings, square=mark == "[")
        if sighting is not None and not any(sighting.mention.span.overlaps(span) for span in taken):
            sightings.append(sighting)
            taken.append(sighting.mention.span)
    sightings.sort(key=lambda sighting: sighting.mention.span.start)
    return Prose(namings, tuple(sightings))


def sentence_around(sentences: Sequence[Span], span: Span) -> Span:
    """The sentence, or run of sentences, that ``span`` stands in; one that it opens is counted to the one before.

    >>> sentence_around((Span(0, 9), Span(10, 30)), Span(10, 14))
    Span(start=0, end=30)
    """
    within = [
        at
        for at, sentence in enumerate(sentences)
        if sentence.start < max(span.end, span.start + 1) and span.start < sentence.end
    ]
    if not within:
        return span
    first = within[0]
    if first and sentences[first].start >= span.start:
        first -= 1
    return Span(min(sentences[first].start, span.start), max(sentences[within[-1]].end, span.end))


def _read_round(text: str, bracket: Span, inner: Span, known: Known) -> Sighting | None:
    """A parenthesis that holds the whole citation."""
    if ibid := IBID.match(text, inner.start, inner.end):
        place, past = read_places(text, ibid.end(), inner.end)
        if not ends_there(text, past, inner.end):
            return None
        cite = Cite(inner, locator=place.locator if place else None)
        return Sighting(Mention(bracket, "page-only", 0, (cite,)))
    reads = read_parenthesis(text, inner, known)
    if not reads or _introduces_acronym(text, bracket, reads):
        return None
    sure = any(read.grade == "known" for read in reads)
    if not sure and _follows_title(text, bracket):
        return None
    if all(read.grade == "likely" for read in reads):
        return Sighting(Mention(bracket, "parenthetical", 0, tuple(read.cite for read in reads)), "habit")
    cites = tuple(read.cite for read in reads if read.grade != "likely")
    return Sighting(Mention(bracket, "parenthetical", 0, cites), known=sure)


def _introduces_acronym(text: str, bracket: Span, reads: tuple[Read, ...]) -> bool:
    """Whether the parenthesis gives the short form of the name before it: *World Health Organization (WHO)*."""
    cite = reads[0].cite
    if len(reads) > 1 or cite.year or cite.locator or cite.secondary or len(cite.names) != 1:
        return False
    short = name_key(cite.names[0])
    words = [
        word
        for word in re.findall(r"[^\W\d_]+", text[max(0, bracket.start - 200) : bracket.start])
        if word[0].isupper()
    ]
    return "".join(word[0] for word in words[-len(short) :]).casefold() == short


def _follows_title(text: str, bracket: Span) -> bool:
    """Whether a title in italics stands before it, so that what follows may be its publisher and year."""
    found = _ITALIC_TITLE.search(text, max(0, bracket.start - 220), bracket.start)
    return found is not None and name_words(found[0])[:1] != () and found[0][1].isupper()


def _read_tail(
    text: str,
    bracket: Span,
    inner: Span,
    shape: Shape,
    known: Known,
    namings: tuple[Naming, ...],
    before: Sequence[Sighting],
    square: bool,
) -> Sighting | None:
    """A parenthesis that holds the year, the place, or both, for a work named outside it."""
    tails, past = read_tails(
        text, inner.start + len(text[inner.start : inner.end]) - len(text[inner.start : inner.end].lstrip()), inner.end
    )
    if not tails or not (ends_there(text, past, inner.end) or _REMARK.match(text, past, inner.end)):
        return None
    remark = text[past : inner.end].strip(" ,;.")
    place = tails[0].place
    if (
        not tails[0].year
        and place
        and not (place.labelled or place.locator.kind != "page" or _is_page_number(place.locator.text))
    ):
        return None
    author = find_author(text, bracket.start, known, bracket.end)
    if author is not None and author.known and (tails[0].year or not square):
        who = author.who
        base = Cite(bracket, who.names, who.initials, who.et_al, suffix=remark)
        return _narrative(Span(author.span.start, bracket.end), base, tails, known=True)
    if square:
        return None
    sentence = sentence_around(shape.sentences, bracket)
    if tails[0].year:
        if (found := _named_with_year(text, sentence, bracket, tails, known, namings)) is not None:
            adjacent = not text[found.span.end : bracket.start].strip(" *_\n”\"’'")
            span = Span(found.span.start, bracket.end) if adjacent and found.span.end <= bracket.start else bracket
            return _narrative(span, replace(_cite_of(text, found, bracket, known), suffix=remark), tails, known=True)
        if tails[0].dated:
            return None
    if author is not None:
        base = Cite(bracket, author.who.names, author.who.initials, author.who.et_al, suffix=remark)
        sure = bool(tails[0].year) or author.who.et_al or (place is not None and place.labelled)
        return _narrative(Span(author.span.start, bracket.end), base, tails, need="" if sure else "habit")
    if tails[0].year:
        return _year_and_page(text, sentence, bracket, tails, remark)
    return _read_page(text, bracket, sentence, tails, remark, namings, before, shape.in_quote)


def _narrative(span: Span, base: Cite, tails: tuple[Tail, ...], need: Need = "", known: bool = False) -> Sighting:
    """A narrative citation of one work, or of several years of its author."""
    start = span.start + (span == base.span)
    last = len(tails) - 1
    cites = tuple(
        replace(
            base,
            span=Span(
                start if n == 0 else tail.span.start, tail.span.end if n < last or span == base.span else span.end
            ),
            year=tail.year,
            locator=tail.place.locator if tail.place else None,
            suffix=base.suffix if n == last else "",
        )
        for n, tail in enumerate(tails)
    )
    return Sighting(Mention(span, "narrative", 0, cites), need, known)


def _named_with_year(
    text: str, sentence: Span, bracket: Span, tails: tuple[Tail, ...], known: Known, namings: tuple[Naming, ...]
) -> Naming | None:
    """The last work named before a year that is of that year; with a page, the last one named at all."""
    years = {tail.year.rstrip("abcdefghijklmnopqrstuvwxyz") for tail in tails if tail.year}
    earlier = [naming for naming in namings if naming.span.end <= bracket.start]
    here = [naming for naming in earlier if naming.span.start >= sentence.start]

    def is_of_year(naming: Naming) -> bool:
        dates = (known.works[at].entry.issued for at in naming.works)
        return any(date is not None and str(date.year) in years for date in dates)

    fitting = [naming for naming in here if is_of_year(naming)]
    if not fitting and here and (tails[0].place or not text[here[-1].span.end : bracket.start].strip(" *_\n")):
        fitting = here
    if not fitting and tails[0].place:
        fitting = [naming for naming in earlier if is_of_year(naming)]
    return fitting[-1] if fitting else None


def _cite_of(text: str, naming: Naming, bracket: Span, known: Known) -> Cite:
    """The names, or the title, with which a work is named."""
    words = naming.span.of(text)
    who = read_who(words, known.given, known.whole)
    if who is not None and known.knows_name(who.names[0]):
        return Cite(bracket, who.names, who.initials, who.et_al)
    return Cite(bracket, title=words.strip("*_\"“”‘’'"))


def _year_and_page(text: str, sentence: Span, bracket: Span, tails: tuple[Tail, ...], remark: str) -> Sighting | None:
    """*(1958, 12)* after somebody that no source answers to: a citation by its form."""
    if tails[0].place is None or tails[0].place.locator.kind in ("figure", "table"):
        return None
    names = [
        word[0]
        for word in _CAPITAL.finditer(text, sentence.start, bracket.start)
        if word[0][0].isupper() and REPORTING.match(text, word.end())
    ]
    if not names and not _AFTER_QUOTE.search(text, max(0, bracket.start - 6), bracket.start):
        return None
    return _narrative(bracket, Cite(bracket, tuple(names[-1:]), suffix=remark), tails)


def _read_page(
    text: str,
    bracket: Span,
    sentence: Span,
    tails: tuple[Tail, ...],
    remark: str,
    namings: tuple[Naming, ...],
    before: Sequence[Sighting],
    in_quote: bool,
) -> Sighting | None:
    """A place alone: *(p. 102)*, *(102)*, *(1.2.34)*, where the form and its surroundings make it a citation."""
    place = tails[0].place
    if place is None or len(tails) > 1:
        return None
    named = [naming.span.start for naming in namings] + [sighting.mention.span.start for sighting in before]
    here = any(sentence.start <= at < bracket.start for at in named)
    in_paragraph = any(at < bracket.start for at in named)
    quoted = in_quote or _AFTER_QUOTE.search(text, max(0, bracket.start - 6), bracket.start) is not None
    ends = _CLAUSE_END.match(text, bracket.end) is not None
    need: Need | None
    kind = place.locator.kind
    if kind in ("figure", "table"):
        need = None
    elif place.labelled and kind in ("page", "line", "paragraph", "act"):
        need = ""
    elif place.labelled:
        need = "" if here and (quoted or ends) and not _CAPITALISED_LABEL.match(text, bracket.start + 1) else None
    elif COUNTED.search(text, max(0, bracket.start - 30), bracket.start) or (
        kind == "page" and not quoted and not place.locator.text[:1].isdigit()
    ):
        need = None
    elif quoted:
        need = "" if in_paragraph else "work"
    elif kind == "page":
        need = ("" if here else "habit") if ends and in_paragraph else None
    else:
        need = "" if here and ends and kind != "volume" and re.search(r"[-–]", place.locator.text) else None
    if need is None:
        return None
    cite = Cite(Span(bracket.start + 1, bracket.end - 1), locator=place.locator, suffix=remark)
    return Sighting(Mention(bracket, "page-only", 0, (cite,)), need)


def _is_page_number(text: str) -> bool:
    """Whether a bare number could be a page: not a year, nor a letter of a list."""
    first = re.match(r"\d+", text)
    return len(first[0]) < 4 if first else len(text) > 1
