"""Which pieces of the sources answer a question: by its words, and by what such pages go on to speak of.

Pages that share rare words with the question are looked at first, the more so where words that stand beside each other
in it stand near each other there. The words that the best of these pages have in common join the question, weighted,
and all is ranked anew: so a page on *moorings* is found by who asks after *boats tied up*.

**Source**: Robertson and Walker 1994 (BM25, with k1 = 1.2 and b = 0.75 as is usual); Metzler and Croft 2005
(neighbours, at the share that they found); Lavrenko and Croft 2001 and Abdul-Jaleel et al. 2004 (the relevance model
mixed with the question, half and half). Nothing is fitted to a collection; what it brings is measured in
``tests/outside/test_retrieval.py``.
"""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise
from typing import TypeVar

from fairhand.language.content_words import list_stems
from fairhand.model.piece import Piece

K1 = 1.2
"""How soon a word that comes again stops adding to a piece's weight."""
B = 0.75
"""How far a long piece is held to have its words by its length alone."""
BESIDE = 0.15
"""The weight of all neighbours, beside that of all words."""
NEAR = 3
"""How many words that say something lie between two neighbours and the end of their reach."""
FIRST = 5
"""Pieces at the head of the first ranking whose words join the question."""
JOINED = 20
"""Words that join it."""
OWN_SHARE = 0.5
"""The weight that the question's own words keep."""

Pair = tuple[str, str]
T = TypeVar("T")


@dataclass(frozen=True)
class Question:
    """What is asked, in stems."""

    weights: Mapping[str, float]
    """The weight of each stem; they make up 1."""
    pairs: tuple[Pair, ...]
    """Stems that stand beside each other in it, the two in the order of letters."""


@dataclass(frozen=True, slots=True)
class Collection:
    """What all pieces are beside which one is weighed."""

    pieces: int
    """How many there are."""
    average: float
    """Words that say something, in a piece on average."""
    count: Callable[[Iterable[str]], Mapping[str, int]]
    """In how many pieces each of some stems stands."""


@dataclass(frozen=True, eq=False)
class Weighed:
    """A piece with its stems."""

    piece: Piece
    order: tuple[str, ...]
    """Its stems as they follow each other."""
    times: Mapping[str, int]
    """How often each stands in it or in its source's title."""
    length: int
    """How many they are."""


@dataclass(frozen=True)
class Ranked:
    """A piece with its weight for a question."""

    of: Weighed
    weight: float

    @property
    def piece(self) -> Piece:
        """The piece itself."""
        return self.of.piece


@lru_cache(maxsize=2048)
def weigh_piece(piece: Piece) -> Weighed:
    """The piece with its stems counted, those of its source's title with them."""
    order = list_stems(piece.text)
    times = Counter(order)
    times.update(list_stems(piece.title))
    return Weighed(piece, tuple(order), times, max(times.total(), 1))


def read_question(text: str) -> Question:
    """The stems of a question, and which of them are neighbours.

    >>> read_question("Who moved the moorings?").pairs
    (('moor', 'move'),)
    """
    stems = list_stems(text)
    weights = {one: times / len(stems) for one, times in Counter(stems).items()}
    return Question(weights, tuple(dict.fromkeys((min(p), max(p)) for p in pairwise(stems) if p[0] != p[1])))


def rank_pieces(question: Question, pieces: Sequence[Weighed], collection: Collection) -> tuple[Ranked, ...]:
    """The pieces that have words of the question, the weightiest first; of equals the earlier."""
    rarity = weigh_stems(question, collection)
    near = {one: _count_near(one, question.pairs) for one in pieces}
    seen = Counter(pair for pairs in near.values() for pair in pairs)
    beside = {
        pair: BESIDE / len(question.pairs) * _rarity(collection.pieces, min(seen[pair], collection.pieces))
        for pair in seen
    }
    found = []
    for one in pieces:
        lengthy = one.length / collection.average
        weight = sum_weights(rarity, one.times, lengthy) + sum_weights(beside, near[one], lengthy)
        if weight:
            found.append(Ranked(one, weight))
    return tuple(sorted(found, key=lambda one: -one.weight))


def weigh_stems(question: Question, collection: Collection) -> Mapping[str, float]:
    """The weight of each stem in the question times its rarity in the collection."""
    seen = collection.count(question.weights)
    return {one: share * _rarity(collection.pieces, seen.get(one, 0)) for one, share in question.weights.items()}


def widen_question(question: Question, ranked: Sequence[Ranked]) -> Question:
    """The question with the words that the best pieces have in common, each with its weight."""
    total = sum(one.weight for one in ranked[:FIRST])
    if not total:
        return question
    shared: dict[str, float] = {}
    for one in ranked[:FIRST]:
        for stem, times in one.of.times.items():
            shared[stem] = shared.get(stem, 0.0) + one.weight / total * times / one.of.length
    joined = sorted(shared, key=lambda stem: (-shared[stem], stem))[:JOINED]
    whole = sum(shared[stem] for stem in joined)
    weights = {stem: OWN_SHARE * weight for stem, weight in question.weights.items()}
    for stem in joined:
        weights[stem] = weights.get(stem, 0.0) + (1 - OWN_SHARE) * shared[stem] / whole
    return Question(weights, question.pairs)


def mix_likeness(ranked: Sequence[Ranked], likeness: Sequence[float]) -> tuple[Ranked, ...]:
    """The first of the ranked pieces in another order, half by their weight and half by how like the question they are.

    Args:
        ranked: The pieces.
        likeness: How like the question in meaning each of the first is, by a sentence encoder.
    """
    head = ranked[: len(likeness)]
    mixed = zip(head, _spread([one.weight for one in head]), _spread(likeness), strict=True)
    order = sorted(mixed, key=lambda each: -(each[1] + each[2]))
    return (*(one for one, _, _ in order), *ranked[len(head) :])


def _spread(figures: Sequence[float]) -> list[float]:
    """The figures from 0 to 1."""
    least, most = min(figures, default=0.0), max(figures, default=0.0)
    return [(one - least) / (most - least) if most > least else 0.0 for one in figures]


def _rarity(pieces: int, seen: int) -> float:
    return math.log1p((pieces - seen + 0.5) / (seen + 0.5))


def sum_weights(rarity: Mapping[T, float], times: Mapping[T, int], lengthy: float) -> float:
    """What some words, or pairs of them, weigh in a text.

    Args:
        rarity: The weight of each.
        times: How often each stands in it.
        lengthy: How many times as long as usual it is.
    """
    dulled = K1 * (1 - B + B * lengthy)
    found = ((rare, times[one]) for one, rare in rarity.items() if one in times)
    return sum(rare * many * (K1 + 1) / (many + dulled) for rare, many in found)


@lru_cache(maxsize=2048)
def _count_near(one: Weighed, pairs: tuple[Pair, ...]) -> Mapping[Pair, int]:
    """How often the two stems of each pair stand near each other, in either order."""
    both = [pair for pair in pairs if pair[0] in one.times and pair[1] in one.times]
    if not both:
        return {}
    asked = {stem for pair in both for stem in pair}
    places: dict[str, list[int]] = {stem: [] for stem in asked}
    for place, stem in enumerate(one.order):
        if stem in asked:
            places[stem].append(place)
    counted = {pair: sum(1 for a in places[pair[0]] for b in places[pair[1]] if abs(a - b) <= NEAR) for pair in both}
    return {pair: times for pair, times in counted.items() if times}
