"""Words of a source that stand in a passage with no quotation marks: a place to look, never a verdict.

Method: shingles that both share and that follow one another in both are chained, and the two stretches aligned word by
word. **Source**: N. Heintze 1996, *Scalable document fingerprinting* (shared shingles); P. Clough and M. Stevenson 2011
(what is cut, lightly and heavily revised); the thresholds are measured, ``docs/decisions/0082``.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import lru_cache
from itertools import combinations
from typing import Literal

from fairhand.fidelity.prepared import word_spans, words_of
from fairhand.fidelity.shelf import Shelf, content_of
from fairhand.language.content_words import JOINING
from fairhand.language.stems import stem
from fairhand.model.span import Span

SENTENCE = 8
"""Words of a sentence that is compared whole; a shorter one is anybody's."""
MOST_WORDS = 200
"""The same, at most."""
RUN = 12
"""Words of a run that is nobody's common phrase."""
TELLING = 4
"""Words in it that say something, names left out."""
VERBATIM = 0.9
"""Share of the words of a run or sentence that are the source's, from which it is copied."""
CLOSE_RUN = 0.75
"""The same, from which it is close."""
CLOSE_SENTENCE = 0.67
"""Share of a whole sentence's words, by their stems and in the same order, from which it is close."""
MARGIN = 12
"""Words on either side of the stretch of a source that a sentence seems to follow, which are compared too."""
BREAK = "\n"
"""Stands for a quotation between the writer's words."""

How = Literal["copied", "close"]


@dataclass(frozen=True, slots=True)
class OwnWords:
    """The words of a paragraph that are the writer's own, with breaks where others' stand."""

    words: tuple[str, ...]
    spans: tuple[Span, ...]
    names: frozenset[int]
    """Which of them are names: set with a capital elsewhere than at a sentence's head."""
    sentences: tuple[tuple[int, int], ...]
    """The words of each sentence, half-open."""


@dataclass(frozen=True, slots=True)
class Likeness:
    """A stretch of the writer's words, and the stretch of a source that it is like."""

    how: How
    span: Span
    """In the paragraph."""
    source: int
    """Its number on the shelf."""
    words: int
    """How many words of the writer's it is."""
    start: int
    """The source's first word."""
    end: int
    shared: float
    """The share of the words that are the source's, by their stems in a sentence that is close."""
    draft_differs: tuple[Span, ...]
    """Words in the paragraph that the source has not."""
    source_differs: tuple[int, ...]
    """Words of the source that the paragraph has not."""


@lru_cache(maxsize=2048)
def own_words(text: str, sentences: tuple[Span, ...], quoted: tuple[Span, ...], skipped: tuple[Span, ...]) -> OwnWords:
    """The writer's own words in a paragraph.

    Args:
        text: The paragraph.
        sentences: Its sentences, in order.
        quoted: Others' words, in order: they break the writer's.
        skipped: Citations and asides, in order: the words around them belong together.
    """
    words: list[str] = []
    spans: list[Span] = []
    for word, span in zip(words_of(text), word_spans(text), strict=True):
        if any(span.overlaps(left) for left in skipped):
            continue
        said = BREAK if any(span.overlaps(left) for left in quoted) else word
        if said != BREAK or words[-1:] != [BREAK]:
            words.append(said)
            spans.append(span)
    bounds = []
    at = 0
    for sentence in sentences:
        begin = at
        while at < len(spans) and spans[at].start < sentence.end:
            at += 1
        bounds.append((begin, at))
    heads = {begin for begin, _ in bounds}
    names = frozenset(k for k, s in enumerate(spans) if k not in heads and text[s.start].isupper())
    return OwnWords(tuple(words), tuple(spans), names, tuple(bounds))


@lru_cache(maxsize=2048)
def find_likenesses(own: OwnWords, shelf: Shelf) -> tuple[Likeness, ...]:
    """The near-verbatim runs in a paragraph, and the sentences that follow a source closely, in order."""
    return tuple(_apart((*_runs(own, shelf), *_sentences(own, shelf))))


def _apart(found: Iterable[Likeness]) -> list[Likeness]:
    """The likenesses in order; of those that overlap, what is copied before what is close, the longest first."""
    kept: list[Likeness] = []
    for one in sorted(found, key=lambda one: (one.how == "close", -len(one.span), -one.shared, one.source, one.start)):
        if not any(one.span.overlaps(other.span) for other in kept):
            kept.append(one)
    return sorted(kept, key=lambda one: one.span)


def _runs(own: OwnWords, shelf: Shelf) -> Iterator[Likeness]:
    """Every run of words that stands nearly so in a source."""
    index = shelf.words
    for chain in index.chains(own.words):
        (low, place), (last, last_place) = chain[0], chain[-1]
        high = last + index.size
        if len(chain) < 2 or high - low < RUN or BREAK in own.words[low:high]:
            continue
        number, start = index.text_at(place)
        end = start + last_place - place + index.size
        one = _compare(own, (low, high), number, own.words[low:high], shelf.sources[number].words, (start, end))
        if one.shared >= CLOSE_RUN and one.worded >= RUN and one.telling >= TELLING:
            yield one.told()


def _sentences(own: OwnWords, shelf: Shelf) -> Iterator[Likeness]:
    """Each sentence whose words, by their stems, stand in a source in nearly the same order."""
    from rapidfuzz.distance import LCSseq

    for low, high in own.sentences:
        words = own.words[low:high]
        if not SENTENCE <= high - low <= MOST_WORDS or BREAK in words:
            continue
        said = tuple(map(stem, words))
        least = max(SENTENCE, math.ceil(CLOSE_SENTENCE * len(said)))
        found = [
            _compare(own, (low, high), number, said, shelf.word_stems[number], there)
            for number, there in _stretches(words, shelf)
            if LCSseq.similarity(said, shelf.word_stems[number][slice(*there)], score_cutoff=least)
        ]
        best = max(found, key=lambda one: one.shared, default=None)
        if best and best.shared >= CLOSE_SENTENCE and best.telling >= TELLING:
            yield best.told()


def _stretches(words: tuple[str, ...], shelf: Shelf) -> Iterator[tuple[int, tuple[int, int]]]:
    """Stretches of the sources, by their words, that a sentence may follow."""
    own, index = content_of(words), shelf.stems
    for chain in index.chains(own.stems):
        (at, place), (last_at, last_place) = chain[0], chain[-1]
        number, start = index.text_at(place)
        there = shelf.content[number].places
        first, last = there[start], there[start + last_place - place + index.size - 1]
        low = first - own.places[at] - MARGIN
        high = last + len(words) - own.places[last_at + index.size - 1] + MARGIN
        yield number, (max(0, low), min(len(shelf.sources[number].words), high))


@dataclass(frozen=True, slots=True)
class _Compared:
    """Two stretches, word by word."""

    own: OwnWords
    run: tuple[int, int]
    source: int
    there: tuple[int, int]
    same: frozenset[int]
    """The writer's words that the source has, in its order."""
    found: frozenset[int]
    """The source's words that the writer has."""

    @property
    def kept(self) -> int:
        return len(self.same)

    @property
    def worded(self) -> int:
        """How many of them are words: what was measured has hardly two ways to be said."""
        return sum(not any(map(str.isdigit, self.own.words[k])) for k in self.same)

    @property
    def shared(self) -> float:
        """The share of the longer stretch."""
        return self.kept / max(self.run[1] - self.run[0], self.there[1] - self.there[0], 1)

    @property
    def telling(self) -> int:
        return sum(self.own.words[k] not in JOINING and k not in self.own.names for k in self.same)

    def told(self) -> Likeness:
        """As it is told of."""
        low, high = self.run
        spans = self.own.spans
        return Likeness(
            "copied" if self.shared >= VERBATIM else "close",
            Span(spans[low].start, spans[high - 1].end),
            self.source,
            high - low,
            *self.there,
            self.shared,
            tuple(spans[k] for k in range(low, high) if k not in self.same),
            tuple(k for k in range(*self.there) if k not in self.found),
        )


def _compare(
    own: OwnWords,
    run: tuple[int, int],
    source: int,
    said: tuple[str, ...],
    words: tuple[str, ...],
    there: tuple[int, int],
) -> _Compared:
    """The longest sequence of words, or of their stems, that both have; the source's stretch cut to it."""
    first = _align(own, run, source, said, words, there)
    if not first.same or first.there[1] - first.there[0] <= run[1] - run[0]:
        return first
    low, high = _heart(sorted(first.found), sorted(first.same), run)
    return max(first, _align(own, run, source, said, words, (low, min(high, len(words)))), key=lambda one: one.shared)


def _align(
    own: OwnWords,
    run: tuple[int, int],
    source: int,
    said: tuple[str, ...],
    words: tuple[str, ...],
    there: tuple[int, int],
) -> _Compared:
    from rapidfuzz.distance import LCSseq

    same = [op for op in LCSseq.opcodes(said, words[slice(*there)]) if op.tag == "equal"]
    kept = frozenset(run[0] + k for op in same for k in range(op.src_start, op.src_end))
    found = frozenset(there[0] + k for op in same for k in range(op.dest_start, op.dest_end))
    cut = (min(found), max(found) + 1) if found else (there[0], there[0])
    return _Compared(own, run, source, cut, kept, found)


def _heart(found: list[int], same: list[int], run: tuple[int, int]) -> tuple[int, int]:
    """The source's stretch without what was matched far off, such as the "it is" of the sentence before.

    Args:
        found: The source's words that are matched, in order.
        same: The writer's words that they match, in order.
        run: The writer's stretch.
    """
    length = run[1] - run[0]
    many = len(found)
    first, last = max(
        combinations(range(many), 2),
        key=lambda at: (at[1] - at[0] + 1) / max(length, found[at[1]] - found[at[0]] + 1),
        default=(0, many - 1),
    )
    return max(0, found[first] - (same[first] - run[0])), found[last] + run[1] - same[last]
