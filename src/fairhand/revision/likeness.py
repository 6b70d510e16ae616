"""How alike passages of one paper are, by the words that they share: a rare word tells more than a common one."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Collection, Mapping, Sequence
from functools import lru_cache

from fairhand.language.content_words import JOINING, list_words
from fairhand.language.irregular import base_of
from fairhand.language.stems import stem


def stem_of(word: str) -> str:
    """The stem of a word in small letters, whatever its form: *grew* and *grown* have that of *grow*."""
    return stem(base_of(word))


@lru_cache(maxsize=16384)
def count_stems(text: str) -> Mapping[str, int]:
    """How often each word that says something occurs in a text, by its stem, whatever its form.

    >>> count_stems("They sold it, and were sorry to sell.")
    Counter({'sell': 2, 'sorri': 1})
    """
    return Counter(stem_of(word) for word in list_words(text) if word not in JOINING)


class Weights:
    """What each word tells in a paper.

    **Source**: inverse document frequency: Spärck Jones 1972; the cosine: Salton and McGill 1983.
    """

    def __init__(self, passages: Sequence[str]) -> None:
        """The weights from the paper's own passages."""
        self.passages = passages
        self.among = Counter(stem for text in passages for stem in count_stems(text))
        self._weights = {stem: math.log(1 + len(passages) / many) for stem, many in self.among.items()}
        self._unknown = math.log(1 + len(passages))
        self._directions: dict[str, Mapping[str, float]] = {}
        self._sum: dict[str, float] | None = None

    def of(self, stem: str) -> float:
        """What one word tells: the more, the fewer passages have it."""
        return self._weights.get(stem, self._unknown)

    def total(self, stems: Collection[str]) -> float:
        """What some words tell together, each counted once."""
        weights, unknown = self._weights, self._unknown
        return sum([weights.get(stem, unknown) for stem in stems])

    def share(self, wanted: Collection[str], had: Collection[str]) -> float:
        """How much of what ``wanted`` tells is had: 0 to 1.

        >>> Weights(["tides scour", "tides ebb"]).share({"scour"}, {"scour", "tide"})
        1.0
        """
        whole = self.total(wanted)
        return self.total([stem for stem in wanted if stem in had]) / whole if whole else 0.0

    def likeness(self, one: str, other: str) -> float:
        """How alike two passages are: 0 where no word is shared, 1 where all are.

        >>> round(Weights(["tides scour", "tides ebb"]).likeness("Tides scour.", "The tide scours"), 3)
        1.0
        """
        first, second = self._direction(one), self._direction(other)
        if len(first) > len(second):
            first, second = second, first
        return sum([weight * second[stem] for stem, weight in first.items() if stem in second])

    def mean_likeness(self, passage: str) -> float:
        """How alike one of the paper's passages is to the others, on the average.

        >>> round(Weights(["tides scour", "tides ebb", "roses"]).mean_likeness("roses"), 3)
        0.0
        """
        if self._sum is None:
            self._sum = {}
            for one in self.passages:
                for known, part in self._direction(one).items():
                    self._sum[known] = self._sum.get(known, 0.0) + part
        direction = self._direction(passage)
        itself = sum(part * part for part in direction.values())
        alike = sum(part * self._sum.get(known, 0.0) for known, part in direction.items()) - itself
        return alike / max(1, len(self.passages) - 1)

    def _direction(self, text: str) -> Mapping[str, float]:
        """The words of a passage, each with its part in it, so that the squares of the parts make one."""
        if text not in self._directions:
            weights, unknown = self._weights, self._unknown
            parts = {stem: many * weights.get(stem, unknown) for stem, many in count_stems(text).items()}
            length = math.sqrt(sum([part * part for part in parts.values()])) or 1.0
            self._directions[text] = {stem: part / length for stem, part in parts.items()}
        return self._directions[text]


@lru_cache(maxsize=8)
def weigh(passages: tuple[str, ...]) -> Weights:
    """The weights of a paper's words; the same for the same passages."""
    return Weights(passages)
