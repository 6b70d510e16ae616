"""Authors named in the sentence itself, before a parenthesis that holds the year or the page alone.

**Source**: MLA Handbook 9, 6.3; Publication Manual of the APA 7, 8.11; Chicago Manual of Style 17, 15.25.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from fairhand.citing.known import Known
from fairhand.citing.names import PARTICLES, Who, name_key, name_words, read_who
from fairhand.citing.strangers import POSSESSIVE, Sign, read_sign
from fairhand.citing.telltales import CALENDAR, OPENERS, STUDIES
from fairhand.model.span import Span

_TOKEN = re.compile(
    r"et\.? al\b\.?"
    r"|[^\W\d_](?:[^\W\d_]|['’.‐-](?=[^\W\d_])){0,40}(?:\.(?=\s[^\W\d_]))?['’]?|\[[A-Z][\w&.-]{1,14}\]|[,&]"
)
_GAP = re.compile(r"[\s*_]{0,3}")
_IN_MONTH = re.compile(
    r"(?:\b(?:in|since|by|of|until|during|from|early|late|mid|on|to|last|next|this)|\d)[\s-]+\Z", re.IGNORECASE
)
_INITIAL = re.compile(r"[A-Z]\.")
_STUDY_OF = re.compile(r"['’]s?(?:\s[a-z-]{2,20})?\s([a-z]{4,14})[\s*_]{1,3}\Z")
"""What an author is said to have made, between the name and the year: *Lind’s first study (2019)*."""
_PLACED_BEFORE = re.compile(r"\b(?:in|at|near|throughout|across)\s+\Z")
_SIGNALS = frozenset("compare contra following pace see".split())
_WINDOW = 160


@dataclass(frozen=True, slots=True)
class Author:
    """Names that stand just before a parenthesis."""

    span: Span
    who: Who
    sign: Sign | None = None
    """Of an author that no source has: what makes the name an author's."""

    @property
    def known(self) -> bool:
        """Whether a source is theirs."""
        return self.sign is None


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
        read = read_who(POSSESSIVE.sub("", text[start:end]), known.given, known.whole)
        if read is not None and known.knows_name(read.names[0]) and not (read.body and text[start].islower()):
            first = at
            while first and name_key(tokens[first - 1][0]) in PARTICLES:
                first -= 1
            start = tokens[first][1]
            return Author(Span(start, end), read)
    return _unknown_author(text, tokens, known, Span(before, after))


def _unknown_author(text: str, tokens: list[tuple[str, int, int]], known: Known, bracket: Span) -> Author | None:
    """A name that no source answers to, only where it is plainly an author's."""
    studied = _STUDY_OF.search(text, max(0, bracket.start - 60), bracket.start)
    studied = studied if studied and studied[1] in STUDIES else None
    if studied:
        tokens = _run_before(text, studied.start() + len(studied[0].split(maxsplit=1)[0]))
    if tokens and _PLACED_BEFORE.search(text, max(0, tokens[0][1] - 12), tokens[0][1]):
        comma = next((at for at, token in enumerate(tokens) if token[0] == ","), -1)
        tokens = tokens[comma + 1 :]
    while tokens and (not _may_begin(tokens[0][0]) or _opens(tokens[0][0]) or _signals(tokens)):
        tokens = tokens[1:]
    if not tokens:
        return None
    span = Span(tokens[0][1], tokens[-1][2])
    who = read_who(POSSESSIVE.sub("", span.of(text)), known.given, known.whole)
    if who is None or not name_words(span.of(text)):
        return None
    if text[span.start].islower() and name_key(tokens[0][0]) not in PARTICLES:
        return None
    sign = "years" if studied else read_sign(text, span, who, bracket)
    return Author(span, who, sign) if sign else None


def _opens(token: str) -> bool:
    """Whether a word opens a sentence rather than a name; an initial is no such word."""
    return name_key(token) in OPENERS and not _INITIAL.fullmatch(token)


def _signals(tokens: list[tuple[str, int, int]]) -> bool:
    """Whether a word before a name sends the reader to it: *See Lind*; alone it may be a name."""
    return len(tokens) > 1 and name_key(tokens[0][0]) in _SIGNALS


def _may_begin(token: str) -> bool:
    return not token.startswith(("et al", "et. al", ",", "&", "[")) and name_key(token) not in ("and", "the")


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
        others = word.startswith(("et al", "et. al", "["))
        if not (joins or others or not word[0].islower()) and not (word.islower() and not run):
            break
        run.append(token)
        edge = token[1]
        if len(run) > 18:
            break
    run.reverse()
    return run
