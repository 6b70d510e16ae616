"""The sentence of a page that answers best, with what stands around it."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

from fairhand.language.content_words import list_stems, list_words
from fairhand.language.sentences import split_sentences
from fairhand.language.stems import stem
from fairhand.model.piece import Piece
from fairhand.model.span import Span
from fairhand.reading.query import Term
from fairhand.reading.ranking import sum_weights

AROUND = 220
"""Code points that are shown on either side of the sentence, at most."""
_PARAGRAPH = re.compile(r"\n[ \t]*\n")
_USUAL = 12
"""Words that say something, in a sentence of usual length."""


@dataclass(frozen=True, slots=True)
class Passage:
    """A sentence in its page."""

    source: str
    """The entry's id."""
    page: int
    """Which of the source's pages it is on, from 0."""
    label: str
    """That page's label; empty where there are no pages."""
    span: Span
    """Where the sentence stands in the page's text."""
    before: str
    """What stands before it, from the start of a sentence."""
    sentence: str
    after: str
    """What follows it, to the end of a sentence."""


def find_passage(piece: Piece, weigh: Callable[[str], float]) -> Passage:
    """The weightiest sentence of a piece, the first of several; sentences around it as far as they are near.

    >>> found = find_passage(Piece("quay", 0, "7", 0, "It rained. The quay was sold. It did."), lambda s: "quay" in s)
    >>> found.before, found.sentence, found.after
    ('It rained.', 'The quay was sold.', 'It did.')
    """
    spans = _list_sentences(piece.text) or [Span(0, len(piece.text))]
    weights = [weigh(span.of(piece.text)) for span in spans]
    at = weights.index(max(weights))
    best = spans[at]
    start = min((one.start for one in spans[:at] if best.start - one.start <= AROUND), default=best.start)
    end = max((one.end for one in spans[at + 1 :] if one.end - best.end <= AROUND), default=best.end)
    return Passage(
        piece.source,
        piece.page,
        piece.label,
        best.shifted(piece.start),
        piece.text[start : best.start].strip(),
        best.of(piece.text),
        piece.text[best.end : end].strip(),
    )


def _list_sentences(text: str) -> list[Span]:
    """The sentences of each paragraph; a heading is one of its own."""
    found: list[Span] = []
    start = 0
    for end in (*(one.start() for one in _PARAGRAPH.finditer(text)), len(text)):
        found += (span.shifted(start) for span in split_sentences(text[start:end]))
        start = end
    return found


def weigh_by_question(rarity: Mapping[str, float]) -> Callable[[str], float]:
    """How much of a question's weight a sentence has; a long one must have more of it."""

    def weigh(sentence: str) -> float:
        stems = list_stems(sentence)
        return sum_weights(rarity, Counter(stems), len(stems) / _USUAL)

    return weigh


def weigh_by_terms(terms: Sequence[Term]) -> Callable[[str], float]:
    """How many of the terms a sentence has."""

    def weigh(sentence: str) -> float:
        words = list_words(sentence)
        plain, stems = (f" {' '.join(each)} " for each in (words, map(stem, words)))
        return float(sum(_has(words, plain, stems, term) for term in terms))

    return weigh


def has_term(words: Sequence[str], term: Term) -> bool:
    """Whether words that follow each other have a term among them.

    >>> has_term(["the", "moored", "boats"], Term(("mooring",))), has_term(["moored"], Term(("mooring",), exact=True))
    (True, False)
    """
    plain, stems = (f" {' '.join(each)} " for each in (words, map(stem, words)))
    return _has(words, plain, stems, term)


def _has(words: Sequence[str], plain: str, stems: str, term: Term) -> bool:
    """The same, of words and stems that are one line each already."""
    if term.begins:
        return any(word.startswith(term.words[-1]) for word in words)
    return f" {' '.join(term.words)} " in plain if term.exact else f" {' '.join(term.stems)} " in stems
