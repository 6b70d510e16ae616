"""Terms that a passage explains, and people whom it introduces.

**Source**: common practice: a short form stands in parentheses after the whole words; a term that is explained is set
off by quotation marks or italics; a person is named in full at first, and by surname afterwards.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache

from fairhand.language.content_words import JOINING
from fairhand.model.span import Span

_SHORT_FORM = re.compile(r"\(([A-Z](?:[A-Za-z&-]*[A-Z])[A-Za-z]?)\)")
_WORD = re.compile(r"[^\W\d_]+")
_SET_OFF = (
    r"(?:“(?P<a>[^“”]{3,40}?),?”|\"(?P<b>[^\"]{3,40}?),?\""
    r"|(?<![*\w])\*(?P<c>[^*\n]{3,40})\*(?!\*)|(?<!\w)_(?P<d>[^_\n]{3,40})_(?!\w))"
)
_EXPLAINED = (
    re.compile(
        rf"\bby (?:the (?:term|word|phrase) )?{_SET_OFF},? (?:I|we|is|one) (?:shall |will |here )?mean", re.IGNORECASE
    ),
    re.compile(
        r"\b(?:call|calls|called|calling|term|terms|termed|named|dub|dubs|dubbed|labels?|labelled|labeled|coin(?:s|ed)"
        r"|known as|referred to as|refers? to (?:it|this|these|them|such) as|speaks? of|the term|the phrase)"
        rf" (?:(?:it|this|these|them|that|such|here|the|an?|\w+s?) ){{0,3}}?{_SET_OFF}"
    ),
    re.compile(
        rf"{_SET_OFF},? (?:is|are|may be|can be) (?:here )?(?:defined|understood|taken|used) (?:here )?(?:as|to|for)\b"
    ),
    re.compile(rf"{_SET_OFF},? (?:here )?(?:means|mean|refers to|refer to|denotes|denote|stands for|, that is,)"),
    re.compile(rf"\bdefin(?:e|es|ed|ing) {_SET_OFF}"),
)
MOST_WORDS = 5
_NAME = r"[A-Z][a-zà-ÿ]+(?:-[A-Z][a-zà-ÿ]+)?"
_WHOLE_NAME = re.compile(
    rf"(?<![\w.])(?P<given>{_NAME})(?: [A-Z]\.){{0,2}} (?:(?:van|von|de|du|della|di|la|le|der|den|ter|al|bin|ibn) )*"
    rf"(?P<surname>{_NAME})(?![\w-])"
)
_ALONE = re.compile(rf"(?P<before>\w+[’']?\w*[.,;:]?\s+)?(?<![\w-])(?P<surname>{_NAME})(?![\w-])(?!\s+[A-Z][a-z])")
_NO_GIVEN = frozenset(
    """later earlier meanwhile today perhaps indeed although often sometimes recently finally instead unlike according
    following given like historian critic professor doctor mister poet novelist
    north south east west new old great saint january february march april may june july august september october
    november december monday tuesday wednesday thursday friday saturday sunday chapter section part table figure book
    world king queen lord lady sir university college city county first second third""".split()
) | JOINING  # fmt: skip
_NO_SURNAME = frozenset(
    """street road hall house museum library university college city county sea ocean river lake bay island islands park
    bridge square station council company society committee commission act war press journal review party union school
    church court office department ministry bank street avenue england america states kingdom state world century day
    academy institute association board bureau american african asian european british english french german irish
    scottish welsh italian spanish russian chinese japanese indian mexican canadian australian greek roman christian
    jewish muslim catholic protestant""".split()
) | JOINING  # fmt: skip


@dataclass(frozen=True, slots=True)
class Term:
    """A term, as a passage explains it."""

    words: str
    pattern: re.Pattern[str]
    """Finds it where it is used."""


@lru_cache(maxsize=4096)
def find_terms(text: str) -> tuple[Term, ...]:
    """The terms and short forms that a passage explains, in order.

    >>> [term.words for term in find_terms("The World Health Organization (WHO) calls this “herd immunity.”")]
    ['WHO', 'herd immunity']
    """
    found = [*_short_forms(text), *_set_off(text)]
    return tuple(dict(sorted(found, key=lambda pair: pair[0])).values())


def _short_forms(text: str) -> Iterator[tuple[int, Term]]:
    """Capitals in parentheses whose letters begin the words before them."""
    for match in _SHORT_FORM.finditer(text):
        short = match[1]
        letters = [letter for letter in short.rstrip("s").lower() if letter.isalpha()]
        before = [word.lower() for word in _WORD.findall(text[: match.start()])][-2 * len(letters) - 2 :]
        if _begin(letters, before):
            yield match.start(), Term(short, re.compile(rf"(?<!\w){re.escape(short.rstrip('s'))}(?:s|’s|'s)?(?!\w)"))


def _begin(letters: list[str], words: list[str]) -> bool:
    """Whether the letters begin the last words, one after another; small words may lie between."""
    at = len(letters) - 1
    for word in reversed(words):
        if at >= 0 and word.startswith(letters[at]):
            at -= 1
        elif word not in JOINING:
            break
    return at < 0


def _set_off(text: str) -> Iterator[tuple[int, Term]]:
    for pattern in _EXPLAINED:
        for match in pattern.finditer(text):
            words = next(filter(None, (match[group] for group in "abcd")), "").strip(" ,.;:").lower()
            many = words.split()
            if 1 <= len(many) <= MOST_WORDS and any(word not in JOINING for word in many):
                inner = r"[\s-]+".join(re.escape(word) for word in many)
                yield match.start(), Term(words, re.compile(rf"(?<!\w){inner}(?:s|es)?(?!\w)", re.IGNORECASE))


def find_names(text: str, common: Collection[str] = ()) -> tuple[frozenset[str], Mapping[str, Span]]:
    """The surnames of those whom a passage names in full, and those that it names alone, each where it first does.

    Args:
        text: The passage.
        common: Words that the draft writes small somewhere, and that are no given names at the head of a sentence.

    >>> whole, alone = find_names("Ellen Marsh counted. Later Osei counted too, and Marsh agreed.", {"later"})
    >>> sorted(whole), sorted(alone)
    (['Marsh'], ['Marsh', 'Osei'])
    """
    whole: set[str] = set()
    taken: list[Span] = []
    for match in _WHOLE_NAME.finditer(text):
        given, surname = match["given"].lower(), match["surname"].lower()
        if given not in _NO_GIVEN and given not in common and surname not in _NO_SURNAME:
            whole.add(match["surname"])
            taken.append(Span(*match.span()))
    alone: dict[str, Span] = {}
    for match in _ALONE.finditer(text):
        span = Span(*match.span("surname"))
        before = (match["before"] or "").strip()
        if before.lower() in {"the", "a", "an"} or match["surname"].lower() in _NO_SURNAME:
            continue
        if before[:1].isupper() and before[-1:].isalpha() and before.lower() not in _NO_GIVEN.union(common):
            continue  # a name of several words, as of a film or a place
        if not any(one.overlaps(span) for one in taken):
            alone.setdefault(match["surname"], span)
    return frozenset(whole), alone
