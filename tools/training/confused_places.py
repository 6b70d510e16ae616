"""Where the words in question stand in the text that is learnt from, and what is seen around them."""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from fairhand.copyedit.words.confused_clause import clause_at
from fairhand.copyedit.words.confused_features import features_at, see
from training.confused_fit import Numbers, Places, pad
from training.confused_text import TOLD, Tagged

MOST = 40_000
"""Places of a word that are looked at, at most."""


@dataclass(frozen=True)
class Stands:
    """A word in the text."""

    total: int
    """How often it was met."""
    table: Places
    """The features of each of its places, padded with 0."""
    folds: Places
    likely: Numbers
    """How likely each place is to hold each part of speech."""

    def by_part(self, parts: set[int]) -> Numbers:
        """How likely each place is to hold one of some parts of speech: a logarithm."""
        logarithms: Numbers = np.log(self.likely[:, sorted(parts)].sum(1) + 1e-6)
        return logarithms


class Names:
    """The features by number, from 1: those of the parts of speech first, others as they are met."""

    def __init__(self, first: Mapping[str, int]) -> None:
        """Begins with those of the parts of speech."""
        self.of_parts = len(first)
        self._numbers = dict(first)

    def number(self, feature: str) -> int:
        """Its number."""
        return self._numbers.setdefault(feature, len(self._numbers) + 1)

    def listed(self) -> list[str]:
        """All of them in order."""
        return list(self._numbers)


def find_places(
    tagged: Sequence[Tagged], words: set[str], known: Mapping[str, str], names: Names, weights: Numbers, bias: Numbers
) -> dict[str, Stands]:
    """Each of some words as it stands in the text."""
    total: Counter[str] = Counter()
    rows: defaultdict[str, list[list[int]]] = defaultdict(list)
    folds: defaultdict[str, list[int]] = defaultdict(list)
    for sentence in tagged:
        seen = None
        for at, token in enumerate(sentence.tokens):
            if token.text not in words:
                continue
            total[token.text] += 1
            if len(rows[token.text]) < MOST:
                seen = seen or see(sentence.tokens, known)
                rows[token.text].append([names.number(one) for one in (*features_at(seen, at), *clause_at(seen, at))])
                folds[token.text].append(sentence.fold)
    return {
        word: Stands(total[word], pad(of), np.array(folds[word]), _likely(of, names.of_parts, weights, bias))
        for word, of in sorted(rows.items())
    }


def _likely(rows: Sequence[Sequence[int]], first: int, weights: Numbers, bias: Numbers) -> Numbers:
    sums = np.array([weights[[one for one in row if one <= first]].sum(0) + bias for row in rows])[:, :TOLD]
    likely = np.exp(sums - sums.max(1, keepdims=True))
    shares: Numbers = likely / likely.sum(1, keepdims=True)
    return shares
