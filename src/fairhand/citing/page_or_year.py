"""A number of four figures that is a page: *(Okafor 2008, 1028)* of an article on pages 1021 to 1040.

**Source**: Chicago Manual of Style 17, 15.23, and MLA Handbook 9, 6.16, where the page follows without a label; that
the list of sources tells a page from a year is our own rule.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from fairhand.citing.fitting import is_of_year
from fairhand.citing.grading import Tail
from fairhand.citing.known import Work
from fairhand.citing.locators import Place
from fairhand.citing.mention import Locator
from fairhand.model.span import Span
from fairhand.reading.labels import labels_in

_FOUR_FIGURES = re.compile(r"1\d{3}|20\d\d")
_FIRST_PRINTED = 1400
"""No work that is cited by its year appeared before it."""


def read_pages(tails: tuple[Tail, ...], works: Sequence[Work]) -> tuple[Tail, ...]:
    """The years and places after a name, a number that is a page of the works and none of their years made a place.

    Args:
        tails: The years and places as they were read.
        works: The works that may be meant.

    >>> from fairhand.citing.known import know
    >>> from fairhand.model.entry import Entry, Issued
    >>> from fairhand.model.span import Span
    >>> works = know((Entry("a", "article-journal", issued=Issued(2008), page="1021-1040"),)).works
    >>> tail, = read_pages((Tail(Span(0, 4), "2008"), Tail(Span(6, 10), "1028")), works)
    >>> tail.year, tail.place.locator.text
    ('2008', '1028')
    """
    out: list[Tail] = []
    for tail in tails:
        if not works or not _is_page(tail, works):
            out.append(tail)
            continue
        place = Place(Locator("page", tail.year, tail.span), labelled=True)
        if out and out[-1].year and out[-1].place is None:
            out[-1] = replace(out[-1], span=Span(out[-1].span.start, tail.span.end), place=place)
        else:
            out.append(Tail(tail.span, place=place))
    return tuple(out)


def is_in_pages(tail: Tail, works: Sequence[Work]) -> bool:
    """Whether a place without a label lies wholly within the pages of one of the works."""
    labels = set(labels_in(tail.place.locator.text)) if tail.place else set()
    return bool(labels) and any(labels.issubset(labels_in(work.entry.page)) for work in works)


def _is_page(tail: Tail, works: Sequence[Work]) -> bool:
    if tail.dated or tail.place is not None or not _FOUR_FIGURES.fullmatch(tail.year):
        return False
    if any(is_of_year(work, tail.year) for work in works):
        return False
    return int(tail.year) < _FIRST_PRINTED or any(tail.year in labels_in(work.entry.page) for work in works)
