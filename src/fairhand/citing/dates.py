"""Years as citations give them: ``2019a``, ``1966/1969``, ``n.d.``, ``in press``.

**Source**: Publication Manual of the APA 7, 8.15 and 9.13–9.17; Chicago Manual of Style 17, 15.40–15.45.
"""

from __future__ import annotations

import re

from fairhand.citing.telltales import MONTH
from fairhand.model.span import Span

_YEAR = re.compile(
    rf"(?P<dated>(?:\d{{1,2}}(?:[-–]\d{{1,2}})?\s+)?{MONTH}\s+(?:\d{{1,2}}(?:[-–]\d{{1,2}})?,?\s+)?|(?:[Ss]pring|[Ss]ummer|[Ff]all|[Aa]utumn|[Ww]inter)\s+)?"
    r"(?:c(?:a|irca)?\.?\s+)?(?:\[\s?(?P<original>(?:1\d|20)\d\d)\s?\]\s+)?(?:\[\s?)?(?P<year>(?:1\d|20)\d\d(?:-?[a-z](?![\w.]))?)(?:\s?\])?"
    r"(?:\s?/\s?(?P<later>(?:1\d|20)\d\d[a-z]?)|\s?[\[(]\s?(?P<bracketed>(?:1\d|20)\d\d[a-z]?)\s?[\])])?"
    rf"(?![\w%]|\s?[-–—−]\s?\d|[.,]\d)(?P<day>,\s+{MONTH}(?:\s\d{{1,2}}(?:[-–]\d{{1,2}})?)?)?"
)
_WORDS = re.compile(
    r"(?P<nd>n\.\s?d\.?(?:\s?[-–]?\s?[a-z](?![\w.]))?|nd(?=\s*[,;)]|$)|undated|no date)"
    r"|(?P<press>(?:in press|forthcoming|in preparation|submitted)(?:-[a-z])?)(?!\w)",
)
_LETTER = re.compile(r"\s*(?:,|and|&)\s*(?P<letter>[b-z])(?![\w.’'])")
_SPACE = re.compile(r"\s+")


def read_year(text: str, at: int, end: int) -> tuple[str, Span, bool] | None:
    """The year that starts at ``at``, its place, and whether it is part of a longer date; None where none does.

    >>> read_year("1966/1969, 12", 0, 13)
    ('1966/1969', Span(start=0, end=9), False)
    >>> read_year("1999–2004", 0, 9) is None
    True
    """
    if found := _YEAR.match(text, at, end):
        later = found["later"] or found["bracketed"]
        year = "/".join(part for part in (found["original"], found["year"], later) if part)
        return year.replace("-", ""), Span(found.start(), found.end()), bool(found["dated"])
    if found := _WORDS.match(text, at, end):
        if found["nd"]:
            letter = re.search(r"[-–\s]([a-z])$", found["nd"])
            return "n.d." + (f"-{letter[1]}" if letter else ""), Span(found.start(), found.end()), False
        return _SPACE.sub(" ", found["press"]), Span(found.start(), found.end()), False
    return None


def read_letter(text: str, at: int, end: int) -> tuple[str, int] | None:
    """A further letter after a year, *2019a, b*, and the code point after it; None where none stands there.

    >>> read_letter("2019a, b", 5, 8)
    ('b', 8)
    """
    found = _LETTER.match(text, at, end)
    return (found["letter"], found.end()) if found else None
