"""A source made ready for searching: all its words in one line, each of which leads back to its page.

Words are compared without case, with one kind of apostrophe, without hyphens (a hyphen at a line's end cannot be told
from one of the word's own), with ligatures taken apart. Nothing else is forgiven: a changed word stays a changed word.
"""

from __future__ import annotations

import re
import unicodedata
from bisect import bisect_left, bisect_right
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property, lru_cache
from itertools import accumulate

from fairhand.model.source import SourceText
from fairhand.model.span import Span

LETTER = r"[^\W_²³¹⁰⁴-⁹₀-₉]"
"""A letter or digit; a raised figure is no part of a word (it calls a note)."""
_MARK = "\u0300-\u036f"
_HYPHEN = "-\u2010\u2011\u00ad\ufffe"
_RUN = rf"{LETTER}++(?:[{_MARK}]++{LETTER}*+)*+"
_LINE_BREAK = r"(?:[ \t]{0,20}\r?\n[ \t]{0,20})?"
# Between two figures a hyphen parts them, as a dash does; a dash joins names alone (Franco–Prussian).
_JOIN = rf"(?:(?<!\d)[{_HYPHEN}]{_LINE_BREAK}|[{_HYPHEN}]{_LINE_BREAK}(?!\d)|–(?=[A-Z]))"
WORD = re.compile(rf"{_RUN}(?:(?:['’ʼ]|{_JOIN}){_RUN})*+|[&%$£€]")
"""A word, with the apostrophes and hyphens inside it; or a sign that is read as one."""
_FOLDED = str.maketrans(
    {"’": "'", "ʼ": "'", "ſ": "s", "ﬀ": "ff", "ﬁ": "fi", "ﬂ": "fl", "ﬃ": "ffi", "ﬄ": "ffl", "ﬅ": "st", "ﬆ": "st"}
    | dict.fromkeys("-–\u2010\u2011\u00ad\ufffe\t\r\n", "")
)
_LINE_END = re.compile(rf"(?<=[{_HYPHEN}])\s+")


def fold(text: str) -> str:
    """``text`` as it is compared: lower case, plain apostrophes, no hyphens, ligatures apart.

    >>> fold("The Ofﬁcer’s well-known")
    "the officer's wellknown"
    """
    folded = text.lower().translate(_FOLDED)
    return folded if folded.isascii() else unicodedata.normalize("NFC", folded)


def words_of(text: str) -> tuple[str, ...]:
    r"""The folded words of ``text``, in order.

    >>> words_of("Quays -- and mid-\nstream moorings.")
    ('quays', 'and', 'midstream', 'moorings')
    """
    # Folding the joined words at once is many times quicker than folding each; no word holds a space by then.
    found: list[str] = WORD.findall(text)
    if not found:
        return ()
    return tuple(fold(" ".join(w if w.isalnum() else _LINE_END.sub("", w) for w in found)).split(" "))


@lru_cache(maxsize=512)
def word_spans(text: str) -> tuple[Span, ...]:
    """The place of each of the words of :func:`words_of`."""
    return tuple(Span(*found.span()) for found in WORD.finditer(text))


@dataclass(frozen=True, eq=False)
class PreparedSource:
    """A source, ready to be searched."""

    source: SourceText
    words: tuple[str, ...]
    """Its folded words, over all pages."""
    line: str
    """The same words with one space between, before and behind them."""
    starts: tuple[int, ...]
    """For each page, the index of its first word."""
    joined: tuple[int, ...]
    """For each page, how many of its words belong to the page before: 1 where a word is broken between the two."""

    def page_at(self, word: int) -> int:
        """The index of the page that holds a word."""
        return bisect_right(self.starts, word) - 1

    def place_of(self, word: int) -> tuple[int, Span]:
        """The page of a word, by index, and the word's interval in the page's text."""
        page = self.page_at(word)
        return page, word_spans(self.source.pages[page].text)[word - self.starts[page] + self.joined[page]]

    def as_set(self, word: int) -> str:
        """A word as it stands on its page."""
        page, span = self.place_of(word)
        return span.of(self.source.pages[page].text)

    @cached_property
    def offsets(self) -> tuple[int, ...]:
        """The place in ``line`` of the space before each word."""
        return (0, *accumulate(len(word) + 1 for word in self.words))

    def word_at(self, offset: int) -> int:
        """The index of the first word that begins at or after a place in ``line``."""
        return bisect_left(self.offsets, offset)

    def occurrences(self, run: tuple[str, ...], start: int = 0, end: int | None = None) -> Iterator[int]:
        """The indices of the words at which ``run`` begins, between two words of the source."""
        needle = f" {' '.join(run)} "
        at = self.offsets[start]
        before = len(self.line) if end is None else self.offsets[end] + 1
        while (found := self.line.find(needle, at, before)) >= 0:
            yield self.word_at(found)
            at = found + 1


@lru_cache(maxsize=128)
def prepare(source: SourceText) -> PreparedSource:
    """``source``, ready to be searched; the same text is prepared once.

    >>> from fairhand.model.source import Page
    >>> prepare(SourceText("quay", (Page("7", "The quay was"), Page("8", "sold.")), paged=True)).starts
    (0, 3)
    """
    words: list[str] = []
    starts = []
    joined = []
    before = ""
    for page in source.pages:
        found = words_of(page.text)
        broken = bool(words and found) and before.endswith(tuple(_HYPHEN)) and page.text.lstrip()[:1].islower()
        if broken:
            words[-1] += found[0]
        starts.append(len(words))
        joined.append(int(broken))
        words.extend(found[broken:])
        before = page.text.rstrip()
    return PreparedSource(source, tuple(words), f" {' '.join(words)} ", tuple(starts), tuple(joined))
