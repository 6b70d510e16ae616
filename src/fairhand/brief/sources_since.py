"""How recent the sources must be."""

from __future__ import annotations

import datetime as dt
import re

from fairhand.brief.numbers import COUNT, number_value

SINCE = re.compile(
    rf"\b(?:(?P<none>(?:nothing|none|no (?:source|item|work|reference|article|text)s?)\b[^.;]{{0,30}}?(?:before"
    rf"|older than|earlier than"
    rf"|prior to))|(?P<since>since|from|(?:no|not) (?:earlier|older) than|in or after|as of)|(?P<after>after"
    rf"|later than)) "
    r"(?P<year>(?:19|20)\d\d)(?! ?(?:words|[-–]))|(?P<onward>(?:19|20)\d\d) (?:or (?:later|after|newer)|onwards?"
    r"|and (?:later|after))"
    rf"|(?:(?:with)?in|from|over|during) the (?:last|past|previous) (?P<years>{COUNT})(?P<decades> decades?"
    rf"| (?:years?|yrs?))|(?:no|not) (?:older|more) than (?P<old>{COUNT}) years(?: old)?"
    r"|(?:last|past) (?P<decade>decade)",
    re.IGNORECASE,
)
"""Words that set a first year: "since 2010", "nothing older than 2012", "within the last ten years"."""


def find_since(words: str, given: dt.date | None) -> tuple[int | None, bool, int]:
    """The year from which sources may date, whether it is said of all, and where its words end."""
    match = SINCE.search(words)
    if not match or re.search(
        r"\b(?:majority|most|half|some|many|mostly|preferably)\b[^,;]{0,40}$", words[: match.start()], re.IGNORECASE
    ):
        return None, False, 0
    year: int | None = None
    if match["year"]:
        year = int(match["year"]) + (1 if match["after"] else 0)
    elif match["onward"]:
        year = int(match["onward"])
    elif given:
        count = number_value(match["years"] or match["old"] or "10")
        years = int(count) * (10 if match["decades"] and "decade" in match["decades"] else 1)
        year = given.year - years if years < 500 else None
    return year, bool(match["none"]), match.end() if year else 0
