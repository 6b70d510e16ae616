"""How surely names, a title, years and places in a parenthesis are a citation.

**Source**: common practice.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Literal

from fairhand.citing.fitting import is_of_year
from fairhand.citing.known import Known
from fairhand.citing.locators import Place
from fairhand.citing.mention import Cite
from fairhand.citing.names import Who, name_key, name_words
from fairhand.citing.telltales import CALENDAR, EVENTS, LABELS, OPENERS
from fairhand.model.span import Span

Grade = Literal["known", "plain", "likely"]
"""How surely something is a citation: a source answers to it; its form alone says so; only where the draft cites so."""

SECOND_HAND = re.compile(
    r"[,;:]?\s*(?<!\w)(?:as\s+)?(?:qtd\.?|quoted|cited|cit\.|reported|paraphrased|mentioned|referenced)\s+(?:in|by|from)\s+",
    re.IGNORECASE,
)
"""What passes on another's words: *qtd. in*, *as cited in*."""


@dataclass(frozen=True, slots=True)
class Tail:
    """A year, a place, or both, as they stand after a name."""

    span: Span
    year: str = ""
    dated: bool = False
    """Whether the year is part of a longer date."""
    place: Place | None = None


def grade_citation(cite: Cite, who: Who | None, tails: tuple[Tail, ...], known: Known, rest: str) -> Grade | None:
    """How surely it is a citation, or None where it is something else."""
    year = next((tail for tail in tails if tail.year), None)
    if _is_known(cite, known) and (tails or not rest):
        return None if _is_date(cite, year, known) else "known"
    if who is not None and _is_false_friend(who, year):
        return None
    if SECOND_HAND.search(cite.prefix + " ") or (cite.title and who is not None and tails):
        return "plain"
    if cite.title and who is None:
        return _grade_title(cite, tails, known)
    if who is None:
        return None
    if year is not None:
        return None if year.dated else "plain"
    if rest or not tails:
        return "plain" if who.et_al and not rest else None
    place = tails[0].place
    if who.et_al or (place and place.labelled and place.locator.kind in ("page", "line", "paragraph", "act")):
        return "plain"
    if (
        place
        and place.locator.kind in ("page", "volume", "act", "time")
        and not who.names[0].isupper()
        and len(place.locator.text) < 12
    ):
        return "likely"
    return None


def _is_date(cite: Cite, year: Tail | None, known: Known) -> bool:
    """Whether an author's name is a month's too, and what follows it is no year of theirs: *(May 2020)*, *(May 5)*."""
    if len(cite.names) != 1 or cite.initials or name_key(cite.names[0]) not in CALENDAR:
        return False
    return year is None or not any(is_of_year(known.works[at], year.year) for at in known.works_by(cite.names[0]))


def _is_known(cite: Cite, known: Known) -> bool:
    if cite.names:
        return known.knows_name(cite.names[0])
    return bool(cite.title) and known.knows_title(cite.title)


def _grade_title(cite: Cite, tails: tuple[Tail, ...], known: Known) -> Grade | None:
    """A title that no source has cites only with a place; in a list of none, with a year too."""
    if not tails or (not cite.title[0].isupper() and not cite.title[0].isdigit()):
        return None
    if tails[0].place is not None:
        return "plain"
    return (
        "plain"
        if not known.works
        or (
            len(name_words(cite.title)) > 1
            and not tails[0].dated
            and tails[0].year
            and _is_near_title(cite.title, known)
        )
        else None
    )


def _is_near_title(title: str, known: Known) -> bool:
    """Whether a title is, but for a slip, one of the list's."""
    from rapidfuzz import fuzz

    key = name_key(title)
    return any(fuzz.ratio(key, "".join(words)) > 85 for work in known.works for words in work.titles)


def _is_false_friend(who: Who, year: Tail | None) -> bool:
    """Whether the words before a number make it a date, an event's year, or a thing's own number."""
    words = [word for name in who.names for word in name_words(name)]
    if not words or (len(words) > 1 and who.names[0].isupper()):
        return True
    if any(word in CALENDAR for word in words) or words[0] in OPENERS or words[-1] in EVENTS:
        return True
    if year is None:
        return words[0] in LABELS or words[-1] in LABELS
    return words[0] in LABELS and len(words) == 1
