"""What stands in two texts: the same words in a row, or the same figure said of the same thing.

Lists of references, quoted matter and the notices that every issue of a journal prints are left out.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass
from difflib import SequenceMatcher
from functools import lru_cache

from fairhand.evidence.passage import Passage, cut_passage, show_whole
from fairhand.language.content_words import JOINING, list_words
from fairhand.language.shingles import shingles
from fairhand.language.stems import stem
from fairhand.language.words import words
from fairhand.model.source import SourceText
from fairhand.model.span import Span

SIZE = 5
"""Words in a shingle."""
LONG_RUN = 9
"""So many words in a row that stand in both are its wording; fewer come about by chance in one field."""
TELLING = 5
"""So many of them must say something, and not merely join."""
BESIDE = 6
"""How many words on either side of a figure say what it is of."""
SHARED_BESIDE = 3
"""So many of them must be the same, for two figures to be one."""
CONVENTIONAL = frozenset("10 12 20 24 25 30 37 48 50 60 75 80 90 95 99 100 0.05 0.01 0.001 365 1000".split())
"""Figures that stand everywhere: shares, hours and days, limits of error."""

_LIST = re.compile(
    r"^\W{0,6}(?:\d{1,2}\.?\s)?(?:references?(?: cited)?|reference list|works cited|bibliography|literature(?: cited)?|"
    r"sources|endnotes)\W{0,3}$",
    re.IGNORECASE | re.MULTILINE,
)
_NOTICE = frozenset(
    "license licence licensed copyright permits unrestricted reproduction permission reserved credited competing "
    "consent".split()
)
_WORD = re.compile(r"[^\W_]+")
_FIGURE = re.compile(r"\d{1,3}(?:[,\u202f\u00a0]\d{3})+(?:\.\d+)?|\d+\.\d+|\d{2,}")
_YEAR = re.compile(r"(?:1[5-9]|20)\d\d")
_NOTE_NUMBERS = re.compile(r"[\[(]\d{1,3}(?:[\]\[)(,;\s–-]+\d{1,3})*[\])]")
_QUOTED = re.compile(r"“[^“”]{1,1200}”|(?<!\w)\"[^\"]{1,1200}\"(?!\w)")


@dataclass(frozen=True, eq=False)
class Reading:
    """The words of a text, each with its place; what is no running text is left out."""

    text: SourceText
    keys: tuple[str, ...]
    places: tuple[tuple[int, int, int], ...]
    """Page, start and end of each."""
    quoted: frozenset[int]
    """Which of them stand in quotation marks."""
    shingles: tuple[int, ...]
    """A number for each run of ``SIZE`` words, by where it begins."""
    starts: dict[int, int]
    """Where each shingle stands first."""

    def show(self, first: int, last: int) -> Passage:
        """The words from one to another, as far as they stand on the first's page."""
        page, start, _ = self.places[first]
        end = max(e for p, _, e in self.places[first : last + 1] if p == page)
        return show_whole(self.text, page, Span(start, end))


@lru_cache(maxsize=256)
def read_running(text: SourceText) -> Reading:
    """The running text of a source, made ready to be compared."""
    keys: list[str] = []
    places: list[tuple[int, int, int]] = []
    quoted: set[int] = set()
    for number, body in _bodies(text):
        marked = [found.span() for found in _QUOTED.finditer(body)]
        at = 0
        for word in _WORD.finditer(body):
            start, end = word.span()
            while at < len(marked) and marked[at][1] <= start:
                at += 1
            if at < len(marked) and marked[at][0] <= start:
                quoted.add(len(keys))
            keys.append(word.group().lower())
            places.append((number, start, end))
    numbers = tuple(map(hash, shingles(keys, SIZE)))
    starts = {number: at for at, number in reversed(list(enumerate(numbers)))}
    return Reading(text, tuple(keys), tuple(places), frozenset(quoted), numbers, starts)


def _bodies(text: SourceText) -> Iterator[tuple[int, str]]:
    """Each page up to where the list of references begins, with its number."""
    ends = list_begins(text)
    for number, page in enumerate(text.pages):
        if ends is not None and number > ends[0]:
            return
        yield number, page.text if ends is None or number < ends[0] else page.text[: ends[1]]


@lru_cache(maxsize=256)
def list_begins(text: SourceText) -> tuple[int, int] | None:
    """The page and place where its list of references begins: the last line that heads one, in the later half."""
    for number in range(len(text.pages) - 1, len(text.pages) // 2 - 1, -1):
        found = list(_LIST.finditer(text.pages[number].text))
        if found and (number or found[-1].start() > len(text.pages[0].text) // 2):
            return number, found[-1].start()
    return None


def find_wording(one: SourceText, other: SourceText, without: Collection[str] = ()) -> tuple[Passage, Passage] | None:
    """The longest run of words that stands in both, where it is long enough to be no chance.

    Args:
        one: A text.
        other: Another.
        without: Titles, whose words do not count.
    """
    best = max(_runs(read_running(one), read_running(other), without), key=lambda run: run[2], default=None)
    if best is None:
        return None
    here, there, length = best
    return read_running(one).show(here, here + length - 1), read_running(other).show(there, there + length - 1)


def _runs(one: Reading, other: Reading, without: Collection[str]) -> Iterator[tuple[int, int, int]]:
    """Each long run that is both texts' own words: where it begins in each, and how many words it has."""
    titles = [tuple(list_words(title)) for title in without]
    at = 0
    while at < len(one.shingles):
        there = other.starts.get(one.shingles[at], -1)
        length = 0
        while (
            there >= 0
            and at + length < len(one.keys)
            and there + length < len(other.keys)
            and one.keys[at + length] == other.keys[there + length]
        ):
            length += 1
        if length < SIZE:
            at += 1
            continue
        run = one.keys[at : at + length]
        if (
            length >= LONG_RUN
            and _tells(run)
            and not any(_is_within(run, title) for title in titles)
            and not any(at + k in one.quoted or there + k in other.quoted for k in (0, length - 1))
        ):
            yield at, there, length
        at += length - SIZE + 1


def _tells(run: Sequence[str]) -> bool:
    return sum(word not in JOINING and not word.isdigit() for word in run) >= TELLING and not _NOTICE.intersection(run)


def _is_within(run: Sequence[str], title: Sequence[str]) -> bool:
    """Whether a run is a title or a part of one, or little more."""
    shared = SequenceMatcher(None, run, title, autojunk=False).find_longest_match().size
    return shared > len(run) - LONG_RUN


def find_figure(one: SourceText, other: SourceText) -> tuple[Passage, Passage] | None:
    """The first figure that stands in both and is said of the same thing: the words beside it are shared."""
    there = _figures(other)
    for figure, places in _figures(one).items():
        for page, span, beside in places:
            for page_there, span_there, beside_there in there.get(figure, ()):
                if len(beside & beside_there) >= SHARED_BESIDE:
                    return cut_passage(one, page, span), cut_passage(other, page_there, span_there)
    return None


@lru_cache(maxsize=256)
def _figures(text: SourceText) -> dict[str, list[tuple[int, Span, frozenset[str]]]]:
    """Each figure that is no year and no common one, with its places and the stems of what stands beside it."""
    found: dict[str, list[tuple[int, Span, frozenset[str]]]] = {}
    for number, body in _bodies(text):
        note_numbers = [found.span() for found in _NOTE_NUMBERS.finditer(body)]
        said = words(body)
        for at, word in enumerate(said):
            key, span = word.key, word.span
            if not _FIGURE.fullmatch(key) or _YEAR.fullmatch(key) or key in CONVENTIONAL:
                continue
            if any(a <= span.start < b for a, b in note_numbers):
                continue
            around = (one.key for one in (*said[max(0, at - BESIDE) : at], *said[at + 1 : at + 1 + BESIDE]))
            beside = frozenset(stem(one) for one in around if one not in JOINING and one.isalpha() and len(one) > 2)
            found.setdefault(key.replace(",", ""), []).append((number, span, beside))
    return found
