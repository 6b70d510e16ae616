"""Authors named in the sentence itself, before a parenthesis that holds the year or the page alone.

**Source**: MLA Handbook 9, 6.3; Publication Manual of the APA 7, 8.11; Chicago Manual of Style 17, 15.25.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from fairhand.citing.known import Known
from fairhand.citing.names import PARTICLES, Who, is_body, name_key, name_words, read_who
from fairhand.citing.telltales import BEFORE_AUTHOR, CALENDAR, EVENTS, LABELS, OPENERS, read_reporting
from fairhand.model.span import Span

_TOKEN = re.compile(
    r"et al\b\.?|[^\W\d_](?:[^\W\d_]|['’.‐-](?=[^\W\d_])){0,40}(?:\.(?=\s[^\W\d_]))?['’]?|\[[A-Z][\w&.-]{1,14}\]|[,&]"
)
_GAP = re.compile(r"[\s*_]{0,3}")
_POSSESSIVE = re.compile(r"['’]s$|(?<=s)['’]$")
_IN_MONTH = re.compile(
    r"(?:\b(?:in|since|by|of|until|during|from|early|late|mid|on|to|last|next|this)|\d)[\s-]+\Z", re.IGNORECASE
)
_ARTICLE = re.compile(r"\bthe\s+\Z", re.IGNORECASE)
_YEAR_AND_PAGE = re.compile(r"\(\s*(?:1[4-9]|20)\d\d[a-z]?\s*[,:]\s*(?:pp?\.\s*)?(?!(?:1[4-9]|20)\d\d\b)[\divxlc]+\b")
"""A year with a page: whoever stands before it is cited."""
_RELATIVE = re.compile(r"\s*,\s*(?:(?:for|to|with|by)\s+whom|who|whose)\b")
_INITIAL = re.compile(r"[A-Z]\.")
_MARKED = re.compile(r"[*_]")
_WINDOW = 160


@dataclass(frozen=True, slots=True)
class Author:
    """Names that stand just before a parenthesis."""

    span: Span
    who: Who
    known: bool
    """Whether a source is theirs."""


def find_author(text: str, before: int, known: Known, after: int) -> Author | None:
    """The author named just before a parenthesis, or None where the words there are no name, or only look like one.

    Args:
        text: A paragraph, levelled.
        before: Where the parenthesis starts.
        known: The list of sources.
        after: The code point after the parenthesis: a reporting verb there makes an unknown name an author's.
    """
    tokens = _run_before(text, before)
    if (
        tokens
        and name_key(tokens[-1][0]) in CALENDAR
        and _IN_MONTH.search(text, max(0, tokens[-1][1] - 12), tokens[-1][1])
    ):
        return None
    for at, token in enumerate(tokens):
        if not _may_begin(token[0]):
            continue
        start, end = token[1], tokens[-1][2]
        read = read_who(_POSSESSIVE.sub("", text[start:end]), known.given, known.whole)
        if read is not None and known.knows_name(read.names[0]) and not (read.body and text[start].islower()):
            first = at
            while first and name_key(tokens[first - 1][0]) in PARTICLES:
                first -= 1
            start = tokens[first][1]
            return Author(Span(start, end), read, known=True)
    return _unknown_author(text, tokens, known, Span(before, after))


def _unknown_author(text: str, tokens: list[tuple[str, int, int]], known: Known, bracket: Span) -> Author | None:
    """A name that no source answers to, only where it is plainly an author's."""
    while tokens and (not _may_begin(tokens[0][0]) or _opens(tokens[0][0])):
        tokens = tokens[1:]
    if not tokens:
        return None
    start, end = tokens[0][1], tokens[-1][2]
    names = text[start:end]
    who = read_who(_POSSESSIVE.sub("", names), known.given, known.whole)
    words = name_words(names)
    if who is None or not words or text[start].islower() or _MARKED.match(text, end):
        return None
    placed = _YEAR_AND_PAGE.match(text, bracket.start, bracket.end) is not None
    if _ARTICLE.search(text, max(0, start - 6), start) and not (who.body and is_body(names)) and not placed:
        return None
    if any(word in CALENDAR for word in words) or words[-1] in EVENTS or words[0] in LABELS:
        return None
    several = who.et_al or (len(who.names) > 1 and not who.body)
    reports = read_reporting(text, bracket.end) is not None or _RELATIVE.match(text, bracket.end) is not None
    if who.body or placed:
        plain = reports or placed
    else:
        signal = BEFORE_AUTHOR.search(text[max(0, start - 16) : start])
        plain = several or reports or bool(who.initials or signal or _POSSESSIVE.search(names))
    return Author(Span(start, end), who, known=False) if plain else None


def _opens(token: str) -> bool:
    """Whether a word opens a sentence rather than a name; an initial is no such word."""
    return name_key(token) in OPENERS and not _INITIAL.fullmatch(token)


def _may_begin(token: str) -> bool:
    return not token.startswith(("et al", ",", "&", "[")) and name_key(token) not in ("and", "the")


def _run_before(text: str, before: int) -> list[tuple[str, int, int]]:
    """The longest run of words that could be a list of names, up to ``before``: word, start, end."""
    low = max(0, before - _WINDOW)
    found = [(match[0], match.start(), match.end()) for match in _TOKEN.finditer(text, low, before)]
    run: list[tuple[str, int, int]] = []
    edge = before
    for token in reversed(found):
        word, _, end = token
        gap = _GAP.fullmatch(text, end, edge)
        if gap is None or (not run and (edge - end > 2 or word in ",&")):
            break
        joins = word in (",", "&", "and", "of", "for", "the", "on", "in", "to") or name_key(word) in PARTICLES
        if not (joins or word.startswith(("et al", "[")) or not word[0].islower()) and not (word.islower() and not run):
            break
        run.append(token)
        edge = token[1]
        if len(run) > 18:
            break
    run.reverse()
    return run
