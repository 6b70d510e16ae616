"""A source made ready for searching: all its words in one line, each of which leads back to its page.

Words are compared without case, with one kind of apostrophe, without hyphens (a hyphen at a line's end cannot be told
from one of the word's own), with ligatures taken apart. Nothing else is forgiven: a changed word stays a changed word.
"""

from __future__ import annotations

import re
import unicodedata
from bisect import bisect_left, bisect_right
from collections.abc import Iterator
from dataclasses import dataclass, replace
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


@dataclass(frozen=True, slots=True)
class Stretch:
    """The running text of a page, or its footnotes."""

    page: int
    """The page's index."""
    offset: int
    """Where it begins in the page's text."""
    text: str
    joined: int = 0
    """How many of its words belong to the stretch before: 1 where a word is broken between two pages."""


@dataclass(frozen=True, eq=False)
class PreparedSource:
    """A source, ready to be searched."""

    source: SourceText
    words: tuple[str, ...]
    """Its folded words: the running text of all pages, and after that the footnotes of all."""
    line: str
    """The same words with one space between, before and behind them."""
    stretches: tuple[Stretch, ...]
    """The stretches that the words stand in, in the same order."""
    starts: tuple[int, ...]
    """For each stretch, the index of its first word."""

    def stretch_at(self, word: int) -> int:
        """The index of the stretch that holds a word."""
        return bisect_right(self.starts, word) - 1

    def page_at(self, word: int) -> int:
        """The index of the page that holds a word."""
        return self.stretches[self.stretch_at(word)].page

    def place_of(self, word: int) -> tuple[int, Span]:
        """The page of a word, by index, and the word's interval in the page's text."""
        number = self.stretch_at(word)
        stretch = self.stretches[number]
        span = word_spans(stretch.text)[word - self.starts[number] + stretch.joined]
        return stretch.page, span.shifted(stretch.offset) if stretch.offset else span

    def as_set(self, word: int) -> str:
        """A word as it stands on its page."""
        page, span = self.place_of(word)
        return span.of(self.source.pages[page].text)

    def gap_after(self, word: int) -> str | None:
        """What stands between a word and the next one; None across two pages."""
        page, span = self.place_of(word)
        next_page, next_span = self.place_of(word + 1)
        return self.source.pages[page].text[span.end : next_span.start] if page == next_page else None

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
    running = [Stretch(k, 0, page.text[: page.notes_from]) for k, page in enumerate(source.pages)]
    notes = [
        Stretch(k, page.notes_from, page.text[page.notes_from :])
        for k, page in enumerate(source.pages)
        if page.notes_from is not None
    ]
    words: list[str] = []
    starts = []
    stretches = []
    before = ""
    for stretch in (*running, *notes):
        found = words_of(stretch.text)
        broken = bool(words and found) and before.endswith(tuple(_HYPHEN)) and stretch.text.lstrip()[:1].islower()
        if broken:
            words[-1] += found[0]
        starts.append(len(words))
        words.extend(found[broken:])
        stretches.append(replace(stretch, joined=int(broken)))
        before = stretch.text.rstrip()
    return PreparedSource(source, tuple(words), f" {' '.join(words)} ", tuple(stretches), tuple(starts))
