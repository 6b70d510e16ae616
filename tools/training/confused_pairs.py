"""What tells two words apart, learnt where both were met often, and how it does on text that was held out."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from training.confused_fit import Fitted, Numbers, Places, fit_pair
from training.confused_places import Stands
from training.confused_text import FOLDS

QUARTERS = 4
"""Weights are kept as whole quarters."""
LEARNT = 16_000
"""Places of a word that are learnt from, at most."""
ROUGHLY, FINALLY = 60, 60
"""Steps down of the fit that shows which features say something, and of the fit of these."""
MET, STRONG = 3, 1.0
"""How often a feature of a pair must be met; how much it must say: its weight by the root of how often."""


@dataclass(frozen=True)
class Pair:
    """What was learnt of two words."""

    numbers: Places
    """The features that say something."""
    fitted: Fitted
    """Over these alone, the first of them number 1."""

    def favours(self, table: Places, by_part: Numbers) -> Numbers:
        """How much rather the second stands at each place."""
        return self.fitted.favours(_renumbered(table, self.numbers), by_part)

    def packed(self, renumber: dict[int, int]) -> Iterator[int]:
        """Steps to the features' numbers in the model (from 0), and what each says in quarters, by turns."""
        last = 0
        weights = zip(self.numbers.tolist(), self.fitted.weights[1:].tolist(), strict=True)
        for number, weight in sorted((renumber[number], weight) for number, weight in weights):
            yield number - last
            yield round(weight * QUARTERS)
            last = number


def learn_pair(table: Places, by_part: Numbers, second: Places) -> Pair:
    """What tells the second of two words from the first, as far as it is kept."""
    met, counts = np.unique(table, return_counts=True)
    enough = (counts >= MET) & (met > 0)
    kept, often = met[enough], counts[enough]
    first = np.abs(fit_pair(_renumbered(table, kept), by_part, second, len(kept) + 1, ROUGHLY).weights[1:])
    kept = kept[(first * np.sqrt(often) >= STRONG) & (first >= 1 / QUARTERS)]
    fitted = fit_pair(_renumbered(table, kept), by_part, second, len(kept) + 1, FINALLY)
    quarters = np.round(fitted.weights * QUARTERS) / QUARTERS
    some = np.flatnonzero(quarters[1:])
    weights = np.concatenate([[0.0], quarters[1:][some]])
    return Pair(kept[some], Fitted(weights, round(fitted.bias, 2), round(fitted.share, 3)))


def _renumbered(table: Places, kept: Places) -> Places:
    """The same with the features that are kept numbered from 1, and 0 for all others."""
    numbers = np.zeros(max(int(table.max(initial=0)), int(kept.max(initial=0))) + 1, dtype=np.int64)
    numbers[kept] = np.arange(1, len(kept) + 1)
    places: Places = numbers[table]
    return places


@dataclass(frozen=True)
class Both:
    """Two words as they stand in the text."""

    table: Places
    by_part: Numbers
    """How much rather the parts of speech of the second stand at each place."""
    second: Places
    folds: Places

    @classmethod
    def of(cls, first: Stands, second: Stands, by_part: tuple[Numbers, Numbers]) -> Both:
        """The places of both."""
        wide = max(first.table.shape[1], second.table.shape[1])
        tables = [np.pad(each.table, ((0, 0), (0, wide - each.table.shape[1]))) for each in (first, second)]
        which = np.array([0] * len(first.table) + [1] * len(second.table))
        return cls(np.concatenate(tables), np.concatenate(by_part), which, np.concatenate([first.folds, second.folds]))

    def learn(self, without: int | None = None) -> Pair:
        """What tells them apart, learnt without one part of the text."""
        use = np.flatnonzero(self.folds != without)
        use = np.concatenate([use[self.second[use] == which][:LEARNT] for which in (0, 1)])
        return learn_pair(self.table[use], self.by_part[use], self.second[use])

    def held_out(self) -> Numbers:
        """How much rather the second stands at each place, by what was learnt without the place's part of the text."""
        favours = np.zeros(len(self.second))
        for fold in range(FOLDS):
            of = np.flatnonzero(self.folds == fold)
            favours[of] = self.learn(without=fold).favours(self.table[of], self.by_part[of])
        return favours
