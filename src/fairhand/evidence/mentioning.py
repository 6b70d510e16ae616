"""Where the text of a source cites another work, in its sentences or in its list of references."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import lru_cache

from fairhand.language.folding import fold
from fairhand.model.entry import Entry, Name
from fairhand.model.source import SourceText
from fairhand.model.span import Span

NEAR = 60
"""How far, in characters, a year may stand from a surname to be read as one citation."""

SHORTEST = 6
"""Letters of the shortest name of a newspaper or site that is taken for one."""
_YEAR = re.compile(r"(?<!\d)(?:1[5-9]|20)\d\d(?!\d)")
_INITIALS_AFTER = re.compile(r",?\s(?P<first>[^\W\d_a-z])(?:\.|[^\W\d_a-z]{1,2}(?!\w)|(?=\s?[,;(\d]))")
_INITIALS_BEFORE = re.compile(r"(?<!\w)(?P<first>[^\W\d_a-z])\.\s?(?:[^\W\d_a-z]\.\s?){0,2}\Z")


def find_mentions(citing: SourceText, cited: Entry) -> Iterator[tuple[int, Span]]:
    """Each place, by page from 0, at which a text plainly cites a work: a surname with its year, or the whole title.

    Of an unsigned piece the newspaper or site that it stands in is cited with its year.
    """
    by_name, by_title = _citation_patterns(cited)
    surname, longest = _telling_words(cited)
    for number, page in enumerate(citing.pages):
        folded = _fold_page(page.text)
        for found in by_name.finditer(folded) if by_name and surname in folded else ():
            if not (cited.authors and _is_anothers(page.text, Span(*found.span("surname")), cited.authors[0])):
                yield number, Span(found.start(), found.end("to"))
        for found in by_title.finditer(folded) if by_title and longest in folded else ():
            yield number, Span(*found.span())


def _telling_words(cited: Entry) -> tuple[str, str]:
    """What it is cited by and the longest word of its title, folded: a page without them need not be looked through."""
    return _cited_by(cited), max(fold(cited.title).split(), key=len, default="")


def _cited_by(cited: Entry) -> str:
    """The surname of the first author, folded; of an unsigned piece what it stands in, as *Sallow Mercury*."""
    if cited.authors:
        return fold(cited.authors[0].surname)
    place = fold(cited.container_title)
    return place if len(place) >= SHORTEST else ""


def find_names(citing: SourceText, cited: Entry) -> Iterator[tuple[int, Span]]:
    """Each place at which the surname of a work's first author stands, with no other year after it.

    That is no citation; beside words that say what was taken over, it tells whose.
    """
    surname = cited.authors[0].surname if cited.authors and cited.authors[0].family else ""
    if not surname[:1].isupper():
        return  # nobody; or a body, which publishes much
    year = str(cited.issued.year) if cited.issued and cited.issued.year else ""
    pattern = re.compile(rf"(?<![\w-]){re.escape(surname)}(?![\w-])(?P<after>[^.;]{{0,30}})")
    for number, page in enumerate(citing.pages):
        for found in pattern.finditer(page.text) if surname in page.text else ():
            span = Span(found.start(), found.start("after"))
            years = _YEAR.findall(found["after"])
            if not _is_anothers(page.text, span, cited.authors[0]) and (not years or year in years):
                yield number, span


@lru_cache(maxsize=2048)
def _fold_page(text: str) -> str:
    return fold(text)


def _is_anothers(text: str, surname: Span, author: Name) -> bool:
    """Whether the initials beside a surname are another's: *K. L. Reid*, or in a list *Reid, K. L.*, *Reid KL*."""
    beside = _INITIALS_AFTER.match(text, surname.end) or _INITIALS_BEFORE.search(
        text, max(0, surname.start - 12), surname.start
    )
    return beside is not None and bool(author.given) and fold(beside["first"]) != fold(author.given[0])


@lru_cache(maxsize=512)
def _citation_patterns(cited: Entry) -> tuple[re.Pattern[str] | None, re.Pattern[str] | None]:
    """What a plain citation of ``cited`` looks like in folded text, by its first author's name and by its title."""
    by_name = by_title = None
    year = cited.issued.year if cited.issued else None
    surname = _cited_by(cited)
    if surname and year:
        by_name = re.compile(
            rf"(?<![\w-])(?P<surname>{re.escape(surname)})(?![\w-])(?=(?P<to>[^;]{{0,{NEAR}}}?\b{year}[a-z]?\b))"
        )
    words = fold(cited.title).split()
    if len(words) > 3:
        by_title = re.compile(r"\s+".join(map(re.escape, words)))
    return by_name, by_title
