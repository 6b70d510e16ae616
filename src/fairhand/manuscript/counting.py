"""The words of a draft, part by part, so that any rule of what counts can be applied and shown."""

from __future__ import annotations

import re
from bisect import bisect_right
from collections import Counter
from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Literal, get_args

from fairhand.manuscript.blocks import Part, read_parts
from fairhand.manuscript.captions import find_captions
from fairhand.manuscript.front import front_places
from fairhand.manuscript.notes import is_bibliographic
from fairhand.manuscript.parts import Manuscript
from fairhand.manuscript.passages import read_passage
from fairhand.manuscript.places import Passage
from fairhand.manuscript.sections import SectionKind, named_sections
from fairhand.model.span import Span

WordsOf = Literal[
    "body",
    "title-page",
    "headings",
    "abstract",
    "contents",
    "quotations",
    "block-quotes",
    "citations",
    "bibliographic-notes",
    "footnotes",
    "tables",
    "captions",
    "appendices",
    "references",
]
"""A part of a paper whose words are counted or not."""

_EXCLUSIONS: dict[str, tuple[WordsOf, ...]] = {
    "figures": ("tables", "captions"),
    "footnotes": ("footnotes", "bibliographic-notes"),
}
_SECTIONS: dict[SectionKind, WordsOf] = {
    "abstract": "abstract",
    "contents": "contents",
    "references": "references",
    "appendices": "appendices",
    "notes": "footnotes",
}
_TOKEN = re.compile(r"\S+")
_LETTER = re.compile(r"[^\W_]")


@dataclass(frozen=True)
class WordCount:
    """How many words count, and how many do not."""

    counted: int
    parts: Mapping[WordsOf, int]
    """All the words of the draft by the part that they stand in, counted or not."""
    excluded: Mapping[WordsOf, int]
    """The words that do not count, by the part that excludes them."""
    rule: str
    """What was excluded, in words."""

    @property
    def total(self) -> int:
        """Every word that is printed."""
        return sum(self.parts.values())


def count_words(manuscript: Manuscript, exclude: Collection[str] = (), citations: Iterable[Span] = ()) -> WordCount:
    r"""The words of the draft without those of the parts that do not count.

    A word is what stands between blanks and holds a letter or a figure, as word processors have it. Asides and TKs are
    never counted. A word may stand in several parts at once (a citation in a footnote): any of them excludes it.

    Args:
        manuscript: The draft.
        exclude: Names out of title-page, headings, abstract, contents, quotations (run in), block-quotes, citations,
            footnotes (all notes), bibliographic-notes (those that only cite), figures (tables and captions), tables,
            captions, appendices, references; other names exclude nothing.
        citations: Where the draft cites; without them no word is a citation's.

    **Source**: common practice; what counts is the sheet's to say (check-values of the trade, section 1).

    >>> from fairhand.manuscript.draft import read_manuscript
    >>> draft = read_manuscript("# On Tides\n\nThe tide [NB: which?] turns “twice a day.”\n")
    >>> count = count_words(draft, ["title-page", "quotations"])
    >>> count.counted, dict(count.excluded)
    (3, {'title-page': 2, 'quotations': 3})
    """
    counter = _count(manuscript, exclude, citations)
    named = [name for name in dict.fromkeys(exclude) if name in _EXCLUSIONS or name in get_args(WordsOf)]
    rule = f"without {_listed(sorted(named))}" if named else "every word that is printed"
    total = sum(counter.parts.values())
    return WordCount(total - sum(counter.excluded.values()), counter.parts, counter.excluded, rule)


def place_words(
    manuscript: Manuscript, exclude: Collection[str] = (), citations: Iterable[Span] = ()
) -> tuple[int, ...]:
    r"""Where each word that counts begins, in order: what a part of the draft has of them is between its ends.

    Args:
        manuscript: The draft.
        exclude: As ``count_words`` has it.
        citations: Where the draft cites.

    >>> from fairhand.manuscript.draft import read_manuscript
    >>> place_words(read_manuscript("The tide [NB: which?] turns.\n"))
    (0, 4, 22)
    """
    return tuple(sorted(_count(manuscript, exclude, citations).places))


def _count(manuscript: Manuscript, exclude: Collection[str], citations: Iterable[Span]) -> _Counter:
    """The words of the draft, gone through once."""
    leaves_out = {part for name in exclude for part in _EXCLUSIONS.get(name, (name,))}
    counter = _Counter(manuscript, citations, leaves_out)
    parts, _ = read_parts(manuscript.text)
    captioned = {place for places in find_captions(parts).values() for place in places}
    opening = front_places(manuscript)
    for index, part in enumerate(parts):
        is_title = manuscript.title is not None and part.block.content == manuscript.title
        outer: tuple[WordsOf, ...] = ("title-page",) if is_title or index in opening else ()
        if index in captioned:
            outer += ("captions",)
        counter.take(part, outer)
    return counter


def _listed(names: Sequence[str]) -> str:
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"


class _Counter:
    """Goes through the blocks once and gives each word its part."""

    def __init__(self, manuscript: Manuscript, citations: Iterable[Span], leaves_out: Collection[str]) -> None:
        self.parts: Counter[WordsOf] = Counter()
        self.excluded: Counter[WordsOf] = Counter()
        self.places: list[int] = []
        self.leaves_out = leaves_out
        self.text = manuscript.text
        self.sections = [(section.span, _SECTIONS[kind]) for kind, section in named_sections(manuscript)]
        run_in = [each.span for each in manuscript.quotations if each.kind == "run-in" and each.closed]
        self.inner: tuple[tuple[WordsOf, list[Span]], ...] = (
            ("citations", _outermost(citations)),
            ("quotations", _outermost(run_in)),
        )

    def take(self, part: Part, outer: tuple[WordsOf, ...]) -> None:
        """Count a block and what stands within it; ``outer`` are the parts that it belongs to so far."""
        kind = part.block.kind
        if kind == "heading" and self._heads_list(part):
            return
        if not outer or outer == ("captions",):
            outer = (*(name for span, name in self.sections if span.contains(part.block.span)), *outer)
        if kind == "quote":
            outer += ("block-quotes",)
        elif kind == "note":
            only_cites = is_bibliographic(part.block.content.of(self.text))
            outer += ("bibliographic-notes" if only_cites else "footnotes",)
        elif kind == "heading" and not outer:
            outer = ("headings",)
        for row in part.cells:
            for cell in row:
                self._count(cell, (*outer, "tables"))
        if part.passage is not None and kind != "figure":
            self._count(part.passage, outer)
        for child in part.children:
            self.take(child, outer)

    def _heads_list(self, part: Part) -> bool:
        """Whether the heading is that of the list of references, where the list itself is not in the draft.

        The list is set from the sources, and its heading with it: that one word alone is no part to be told of.
        """
        span = part.block.span
        return any(
            name == "references" and section.contains(span) and not self.text[span.end : section.end].strip()
            for section, name in self.sections
        )

    def _count(self, passage: Passage, outer: tuple[WordsOf, ...]) -> None:
        for start, end in _tokens(passage.text):
            place, last = passage.place(start), passage.place(end - 1)
            names = [*outer, *(name for name, spans in self.inner if _touches(spans, place, last))]
            names = names or ["body"]
            self.parts[names[0]] += 1
            excluding = next((name for name in names if name in self.leaves_out), None)
            if excluding:
                self.excluded[excluding] += 1
            else:
                self.places.append(place)


def _outermost(spans: Iterable[Span]) -> list[Span]:
    """The spans in order, those that begin within another left out."""
    out: list[Span] = []
    for span in sorted(spans, key=lambda each: (each.start, -each.end)):
        if not out or span.start >= out[-1].end:
            out.append(span)
    return out


def _touches(spans: list[Span], first: int, last: int) -> bool:
    """Whether one of the spans, in order and apart, shares something with the places from ``first`` to ``last``."""
    index = bisect_right(spans, last, key=lambda span: span.start) - 1
    return index >= 0 and spans[index].end > first


@lru_cache(maxsize=8192)
def _tokens(text: str) -> tuple[tuple[int, int], ...]:
    """The words of a passage that is printed, as half-open intervals of it."""
    reading = read_passage(text)
    said = list(reading.bare.text)
    for left in reading.left:
        said[left.start : left.end] = " " * (left.end - left.start)
    tokens = []
    for found in _TOKEN.finditer("".join(said)):
        if _LETTER.search(found.group()):
            span = reading.span(*found.span())
            tokens.append((span.start, span.end))
    return tuple(tokens)
