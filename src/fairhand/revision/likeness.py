"""How alike passages of one paper are, by the words that they share: a rare word tells more than a common one."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Collection, Mapping, Sequence
from functools import lru_cache

from fairhand.language.content_words import list_stems


@lru_cache(maxsize=16384)
def count_stems(text: str) -> Mapping[str, int]:
    """How often each word that says something occurs in a text, by its stem."""
    return Counter(list_stems(text))


class Weights:
    """What each word tells in a paper.

    **Source**: inverse document frequency: Spärck Jones 1972; the cosine: Salton and McGill 1983.
    """

    def __init__(self, passages: Sequence[str]) -> None:
        """The weights from the paper's own passages."""
        self.passages = passages
        self.among = Counter(stem for text in passages for stem in count_stems(text))

    def of(self, stem: str) -> float:
        """What one word tells: the more, the fewer passages have it."""
        return math.log(1 + len(self.passages) / max(1, self.among[stem]))

    def total(self, stems: Collection[str]) -> float:
        """What some words tell together, each counted once."""
        return sum(map(self.of, stems))

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
        first, second = count_stems(one), count_stems(other)
        both = sum(many * self.of(stem) ** 2 * second[stem] for stem, many in first.items() if stem in second)
        return both / (self._length(first) * self._length(second)) if both else 0.0

    def _length(self, counts: Mapping[str, int]) -> float:
        return math.sqrt(sum((many * self.of(stem)) ** 2 for stem, many in counts.items()))
