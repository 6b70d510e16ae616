"""Names before a year that no source answers to: whether they are an author's, or a place's, a picture's, an event's.

*Quibbly (2019)* and *Lagos (2014)* have one form; the words around them tell them apart. **Source**: common practice.
"""

from __future__ import annotations

import re
from typing import Literal

from fairhand.citing.names import Who, is_body, name_key, name_words
from fairhand.citing.telltales import (
    CALENDAR,
    EVENTS,
    LABELS,
    NAMED_THINGS,
    RANKS,
    REPORTING,
    SAYING,
    STUDIES,
    VERBS_OF_AN_AUTHOR,
    read_reporting,
)
from fairhand.model.span import Span

Sign = Literal["plain", "years"]
"""The words around a name make it an author's in any draft, or only in one that cites by author and year."""

POSSESSIVE = re.compile(r"['’]s$|(?<=s)['’]$")
_INNER_POSSESSIVE = re.compile(r"\w['’]s\s|s['’]\s")
_OWNED = re.compile(r"(?:\w['’]s?|\b(?:his|her|its|their|my|our))\s+\Z")
"""Before what somebody has made: *her* Tower."""
_YEAR_AND_PAGE = re.compile(r"\(\s*(?:1[4-9]|20)\d\d[a-z]?\s*[,:]\s*(?:pp?\.\s*)?(?!(?:1[4-9]|20)\d\d\b)[\divxlc]+\b")
"""A year with a page: whoever stands before it is cited."""
_RELATIVE = re.compile(r"\s*,\s*(?:(?:for|to|with|by)\s+whom|who|whose)\b")
_ASIDE = re.compile(r"\s*,[^,.;:()\n]{1,80},")
_CONTENT = re.compile(r"\s*,?\s+(?:that|how|why|whether)\b")
_ARTICLE = re.compile(r"\bthe\s+\Z", re.IGNORECASE)
_MARK = re.compile(r"[*_]")
_SIGNAL = re.compile(r"\b(?:according\s+to|see(?:\s+also)?|cf\.|pace|contra)\s+\Z", re.IGNORECASE)
_AS = re.compile(r"\b[Aa]s\s+\Z")
_CALLED = re.compile(r"\b(?:\w{2,20}ologist|\w{0,20}historian|critic|scholar|researcher|philosopher|economist)s?\s+\Z")
_COMPARED = re.compile(r"(?:\b(?:following|per|unlike|like|whereas|versus)|(?<![^.!?]\s)For)\s+\Z", re.IGNORECASE)
_WORDS_BEFORE = re.compile(r"(?:\b([\w-]{1,30})[\s*_]+)?\b([\w-]{1,30})[\s*_]+\Z")
_OF_A_PERSON = re.compile(
    r"\s+(?:is|was|are|were|remains?|seems?)\s+(?:(?:\w{2,12}ly|also|not|among)\s+){0,2}(?:right|wrong|correct|mistaken|clear"
    r"|explicit|careful|cautious|sceptical|skeptical|critical|silent|content|first|the\s+first|the\s+only)\b"
)
"""What is said of an author and hardly of a place or a thing."""
_PLACED_AT = frozenset("across at between from in inside near of outside throughout to within".split())
_WITH = frozenset("by from in of on upon to with".split())


def read_sign(text: str, name: Span, who: Who, bracket: Span) -> Sign | None:
    """What makes the name before a parenthesis an author's; None where nothing does, or something speaks against it.

    Args:
        text: A paragraph, levelled.
        name: Where the name stands.
        who: The name as it was read.
        bracket: The parenthesis with the year.

    >>> who = Who(("Quibbly",))
    >>> read_sign("Quibbly (2019) argues it.", Span(0, 7), who, Span(8, 14))
    'plain'
    >>> read_sign("It rained in Quibbly (2019).", Span(13, 20), who, Span(21, 27)) is None
    True
    """
    here = _Setting(text, name, who)
    if here.is_date_or_event or _MARK.match(text, name.end):
        return None
    if _YEAR_AND_PAGE.match(text, bracket.start, bracket.end) or who.et_al:
        return "plain"
    if here.is_thing:
        return None
    said = None if here.led or here.possessive else _verb_after(text, bracket.end)
    if here.preceded(_ARTICLE) and not here.body:
        return "years" if said == "says" or (said and who.names[0].isupper()) else None
    if said == "says" or (said and (here.body or here.preceded(_AS))) or _RELATIVE.match(text, bracket.end):
        return "plain"
    if who.body and not said:
        return "years" if here.is_of_study else None
    several = len(who.names) > 1 and not who.body and here.before[1] not in _PLACED_AT
    if who.initials or several or here.possessive or here.preceded(_SIGNAL) or here.preceded(_CALLED):
        return "plain"
    likely = said or here.is_of_study or here.before[1] in VERBS_OF_AN_AUTHOR or here.preceded(_COMPARED)
    return "years" if likely or (not here.led and _OF_A_PERSON.match(text, bracket.end)) else None


class _Setting:
    """The words around a name that a year follows."""

    def __init__(self, text: str, name: Span, who: Who) -> None:
        self.text = text
        self.start = name.start
        self.name = name.of(text)
        self.words = name_words(self.name)
        self.body = who.body and is_body(self.name)
        self.possessive = POSSESSIVE.search(self.name) is not None
        found = _WORDS_BEFORE.search(text, max(0, name.start - 66), name.start)
        self.before = (name_key(found[1] or ""), name_key(found[2])) if found else ("", "")
        """The last two words before it, where nothing but spaces parts them."""
        self.led = self.before[1] in _PLACED_AT | _WITH
        """Whether a preposition stands before it, so that it is no subject."""

    def preceded(self, pattern: re.Pattern[str]) -> bool:
        """Whether what stands before the name matches."""
        return pattern.search(self.text, max(0, self.start - 32), self.start) is not None

    @property
    def is_date_or_event(self) -> bool:
        """Whether the name is a month's, an event's or a law's, or a thing's that is numbered."""
        words = self.words
        if any(word in CALENDAR for word in words) or words[-1] in EVENTS or words[0] in LABELS:
            return True
        return len(words) > 1 and words[0] in EVENTS

    @property
    def is_thing(self) -> bool:
        """Whether it is a work's, a place's or a ruler's by its own words or the word before it."""
        if self.before[1] in NAMED_THINGS or self.preceded(_OWNED):
            return True
        if len(self.words) > 1 and self.words[0] in RANKS:
            return True
        return not self.body and _INNER_POSSESSIVE.search(self.name) is not None

    @property
    def is_of_study(self) -> bool:
        """Whether it is that of whoever made a study, or whom something was shown, taken or argued by."""
        first, last = self.before
        verbs = SAYING if last == "in" else REPORTING
        return last in _WITH and (first in STUDIES or first in verbs)


def _verb_after(text: str, at: int) -> Literal["says", "does"] | None:
    """What kind of verb of reporting follows, at once or after an aside between commas."""
    end = read_reporting(text, at)
    if end is None and (aside := _ASIDE.match(text, at)):
        end = read_reporting(text, aside.end())
    if end is None:
        return None
    verb = re.search(r"\w+\Z", text[max(0, end - 30) : end])
    says = (verb is not None and verb[0] in SAYING) or _CONTENT.match(text, end) is not None
    return "says" if says else "does"
