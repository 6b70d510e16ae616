"""Parentheses that hold a year or a place alone, for a work that is named outside them."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace

from fairhand.citing.grading import Tail
from fairhand.citing.known import Known, Work
from fairhand.citing.locators import Place
from fairhand.citing.mention import Cite, Mention
from fairhand.citing.names import name_key, read_who
from fairhand.citing.naming import Naming
from fairhand.citing.narrative import Author, find_author
from fairhand.citing.page_or_year import is_in_pages, read_pages
from fairhand.citing.parenthesis import ends_there, read_tails
from fairhand.citing.sighting import Need, Sighting
from fairhand.citing.telltales import COUNTED, OPENERS, PRONOUNS, read_reporting
from fairhand.model.span import Span

_REMARK = re.compile(
    r"[\s,;]*(?:(?:my|our|original|the author's)\s)?(?:emphas[ie]s|italics?|translat|trans\.|brackets|capitals|ellips"
    r"|added|mine)",
    re.IGNORECASE,
)
_AFTER_QUOTE = re.compile(
    r"[\"”»][.,;:!?]?\s{0,2}\Z|(?<=[\w.,!?])[’'][.,;:!?]?\s{0,2}\Z|[\w.,!?…][.,;:]?[\"”][.,;:]?\s\Z"
)
_CLAUSE_END = re.compile(r"\s*(?:[.,;:!?)\]–—]|\Z)|\n")
_CAPITAL = re.compile(r"(?<![\w.])[^\W\d_][\w'’-]{1,30}")
_CAPITALISED_LABEL = re.compile(r"[A-Z][a-z]")
_OF_TEXT = re.compile(r"\b(?:tables?|fig)", re.IGNORECASE)
_LOOK_BACK = 800
"""How far before a parenthesis, in code points, an author is looked for who is in no list."""


@dataclass(frozen=True, slots=True)
class Around:
    """A parenthesis, and what stands around it."""

    text: str
    """The paragraph, levelled."""
    bracket: Span
    inner: Span
    sentence: Span
    known: Known
    namings: tuple[Naming, ...]
    """What the paragraph names before it."""
    last_named: int
    """Where the paragraph last names or cites something before it; -1 where it does not."""
    in_quote: bool

    def before(self, reach: int) -> str:
        """The last words before the parenthesis."""
        return self.text[max(0, self.bracket.start - reach) : self.bracket.start]


def read_apart(around: Around, square: bool) -> Sighting | None:
    """A parenthesis that holds the year, the place, or both, of a work named outside it; None where it cites nothing.

    Args:
        around: The parenthesis.
        square: Whether it is a square bracket, which may only hold the year of an author just named.
    """
    text, inner, bracket = around.text, around.inner, around.bracket
    start = inner.end - len(inner.of(text).lstrip())
    tails, past = read_tails(text, start, inner.end)
    if not tails or not (ends_there(text, past, inner.end) or _REMARK.match(text, past, inner.end)):
        return None
    remark = text[past : inner.end].strip(" ,;.")
    author = find_author(text, bracket.start, around.known, bracket.end)
    works = _may_be_meant(around, author)
    tails = read_pages(tails, works)
    if not tails[0].year and not (_may_be_place(tails[0]) or is_in_pages(tails[0], works)):
        return None
    if author is not None and author.known and (tails[0].year or not square):
        return _by(author, bracket, remark, tails)
    if square:
        return None
    if tails[0].year:
        if (found := _named_with_year(around, tails)) is not None:
            adjacent = not text[found.span.end : bracket.start].strip(" *_\n”\"’'")
            span = Span(found.span.start, bracket.end) if adjacent else bracket
            cite = replace(_cite_of(text, found, bracket, around.known), suffix=remark)
            return _narrative(span, cite, tails, known=True)
        if tails[0].dated:
            return None
    if author is not None and (tails[0].year or not _is_of_text(tails[0])):
        return _by(author, bracket, remark, tails)
    return _year_and_page(around, tails, remark) if tails[0].year else _read_page(around, tails, remark)


def _may_be_meant(around: Around, author: Author | None) -> list[Work]:
    """The works of the author named just before a parenthesis, or last in its sentence; after a quotation, any."""
    known = around.known
    if author is not None:
        return [known.works[at] for at in known.works_by(author.who.names[0])] if author.known else []
    quoted = around.in_quote or _AFTER_QUOTE.search(around.before(6))
    if quoted:
        return list(known.works)
    named = around.namings[-1:] if around.namings and around.namings[-1].span.start >= around.sentence.start else ()
    return [known.works[at] for naming in named for at in naming.works]


def _is_of_text(tail: Tail) -> bool:
    """Whether a place is one of those that the writer's own text has too: a figure, a chapter, a note."""
    locator = tail.place.locator if tail.place else None
    return locator is not None and (
        locator.kind not in ("page", "line", "paragraph", "act") or _OF_TEXT.search(locator.within) is not None
    )


def _may_be_place(tail: Tail) -> bool:
    """Whether a place without a label is no year and no letter of a list."""
    place = tail.place
    return place is not None and (place.labelled or place.locator.kind != "page" or _is_page_number(place.locator.text))


def _is_page_number(text: str) -> bool:
    """Whether a bare number could be a page: not a year, nor a letter of a list."""
    first = re.match(r"\d+", text)
    return 0 < int(first[0]) < 1000 if first else len(text) > 1


def _by(author: Author, bracket: Span, remark: str, tails: tuple[Tail, ...]) -> Sighting:
    """A citation of an author named just before."""
    who, place = author.who, tails[0].place
    sure = author.known or tails[0].year or who.et_al or (place is not None and place.labelled)
    need: Need = "years" if author.sign == "years" and tails[0].year else "" if sure else "habit"
    base = Cite(bracket, who.names, who.initials, who.et_al, suffix=remark)
    return _narrative(Span(author.span.start, bracket.end), base, tails, need, author.known)


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


def _named_with_year(around: Around, tails: tuple[Tail, ...]) -> Naming | None:
    """The last work named before a year that is of that year; with a page, the last one named at all."""
    years = {tail.year.rstrip("abcdefghijklmnopqrstuvwxyz") for tail in tails if tail.year}

    def is_of_year(naming: Naming) -> bool:
        dates = (around.known.works[at].entry.issued for at in naming.works)
        return any(date is not None and str(date.year) in years for date in dates)

    near = around.namings[:-41:-1]
    here = [naming for naming in near if naming.span.start >= around.sentence.start]
    found = next(filter(is_of_year, here), None)
    if found is None and here:
        adjacent = not around.text[here[0].span.end : around.bracket.start].strip(" *_\n")
        found = here[0] if adjacent or tails[0].place else None
    if found is None and tails[0].place:
        found = next(filter(is_of_year, near), None)
    return found


def _cite_of(text: str, naming: Naming, bracket: Span, known: Known) -> Cite:
    """The names, or the title, with which a work is named."""
    words = naming.span.of(text)
    who = read_who(words, known.given, known.whole)
    if who is not None and known.knows_name(who.names[0]):
        return Cite(bracket, who.names, who.initials, who.et_al)
    return Cite(bracket, title=words.strip("*_\"“”‘’'"))


def _year_and_page(around: Around, tails: tuple[Tail, ...], remark: str) -> Sighting | None:
    """*(1958, 12)* after somebody that no source answers to: a citation by its form."""
    if tails[0].place is None or tails[0].place.locator.kind in ("figure", "table"):
        return None
    start = max(around.sentence.start, around.bracket.start - _LOOK_BACK)
    speakers = [
        word[0]
        for word in _CAPITAL.finditer(around.text, start, around.bracket.start)
        if word[0][0].isupper() and read_reporting(around.text, word.end())
    ]
    if not speakers and not _AFTER_QUOTE.search(around.before(6)):
        return None
    names = [word for word in speakers if name_key(word) not in OPENERS | PRONOUNS]
    return _narrative(around.bracket, Cite(around.bracket, tuple(names[-1:]), suffix=remark), tails)


def _read_page(around: Around, tails: tuple[Tail, ...], remark: str) -> Sighting | None:
    """A place alone: *(p. 102)*, *(102)*, *(1.2.34)*, where its form and its surroundings make it a citation."""
    place, bracket = tails[0].place, around.bracket
    if place is None or len(tails) > 1:
        return None
    need = _need_of_page(around, place)
    if need is None:
        return None
    cite = Cite(Span(bracket.start + 1, bracket.end - 1), locator=place.locator, suffix=remark)
    return Sighting(Mention(bracket, "page-only", 0, (cite,)), need)


def _need_of_page(around: Around, place: Place) -> Need | None:
    """What it takes for a place alone to be a citation; None where nothing would make it one."""
    bracket, kind = around.bracket, place.locator.kind
    here = around.last_named >= around.sentence.start
    in_paragraph = around.last_named >= 0
    quoted = around.in_quote or _AFTER_QUOTE.search(around.before(6)) is not None
    ends = _CLAUSE_END.match(around.text, bracket.end) is not None
    if kind in ("figure", "table") or _OF_TEXT.search(place.locator.within):
        return None
    if place.labelled and kind in ("page", "paragraph"):
        return ""
    if place.labelled and kind in ("line", "act"):
        return "" if here or (in_paragraph and (quoted or ends)) else "work"
    if place.labelled:
        own = _CAPITALISED_LABEL.match(around.text, bracket.start + 1)
        return "" if here and (quoted or ends) and not own else None
    if COUNTED.search(around.before(30)) or (kind == "page" and not quoted and not place.locator.text[:1].isdigit()):
        return None
    if quoted:
        return "" if in_paragraph else "work"
    if not (ends and in_paragraph):
        return None
    if kind == "page":
        return "" if here else "habit"
    return "" if here and kind != "volume" and re.search(r"[-–]", place.locator.text) else None
