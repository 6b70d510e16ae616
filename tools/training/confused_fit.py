"""Log-linear models, fitted without chance.

That of the parts of speech by stochastic descent with a rate of its own for each weight (AdaGrad: J. Duchi, E. Hazan,
Y. Singer 2011), those of pairs by L-BFGS (D. C. Liu, J. Nocedal 1989) with a square penalty on the weights.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

Numbers = npt.NDArray[np.float64]
Places = npt.NDArray[np.int64]
_BATCH = 512
PENALTY = 0.2
"""Of half the squares of a pair's weights, against the loss in logarithms."""
_OUTWEIGHED = 5
"""How many times the rarer of two words may count, so that it is learnt as well as the other."""
_KEPT = 8
"""Pairs of steps that L-BFGS remembers the shape of the loss by."""


def pad(rows: Sequence[Sequence[int]]) -> Places:
    """Rows of numbers of features as a table; 0 is no feature."""
    table = np.zeros((len(rows), max(map(len, rows))), dtype=np.int64)
    for at, row in enumerate(rows):
        table[at, : len(row)] = row
    return table


def fit_parts(table: Places, labels: Places, features: int, parts: int) -> tuple[Numbers, Numbers]:
    """The weight of each feature for each part of speech, and their bias."""
    weights, squares = np.zeros((features, parts)), np.full((features, parts), 1e-2)
    bias = np.zeros(parts)
    drawn = np.random.default_rng(1)
    for _ in range(3):
        order = drawn.permutation(len(labels))
        for start in range(0, len(labels), _BATCH):
            batch = order[start : start + _BATCH]
            sums = weights[table[batch]].sum(1) + bias
            likely = np.exp(sums - sums.max(1, keepdims=True))
            likely /= likely.sum(1, keepdims=True)
            likely[np.arange(len(batch)), labels[batch]] -= 1
            met, where = np.unique(table[batch], return_inverse=True)
            slope = np.zeros((len(met), parts))
            np.add.at(slope, where.ravel(), np.repeat(likely, table.shape[1], axis=0))
            slope[met == 0] = 0
            slope += 1e-3 * weights[met]
            squares[met] += slope * slope
            weights[met] -= 0.25 * slope / np.sqrt(squares[met])
            bias -= 0.002 * likely.sum(0)
    return weights, bias


@dataclass(frozen=True)
class Fitted:
    """What was learnt of two words."""

    weights: Numbers
    """What each feature says for the second; that of number 0 is nothing."""
    bias: float
    share: float
    """How much the parts of speech count."""

    def favours(self, table: Places, by_part: Numbers) -> Numbers:
        """How much rather the second stands at each place: a logarithm."""
        sums: Numbers = self.weights[table].sum(1) + self.bias + self.share * by_part
        return sums


def fit_pair(table: Places, by_part: Numbers, second: Places, features: int, steps: int) -> Fitted:
    """What tells two words apart.

    Args:
        table: The features of each place, padded with 0.
        by_part: How much rather the parts of speech of the second stand there.
        second: 1 for a place of the second, 0 for one of the first.
        features: How many features there are, with that of number 0.
        steps: How many steps down are made, at most.
    """
    of_second = second.mean()
    heavier = min(float(_OUTWEIGHED), max(of_second, 1 - of_second) / max(min(of_second, 1 - of_second), 1e-9))
    counts = np.where((second == 1) == (of_second < 1 / 2), heavier, 1.0)
    flat, wide = table.ravel(), table.shape[1]

    def loss_at(at: Numbers) -> tuple[float, Numbers]:
        weights = at[:features]
        sums = weights[table].sum(1) + at[features] + at[features + 1] * by_part
        loss = float((counts * (np.logaddexp(0, sums) - second * sums)).sum())
        loss += PENALTY / 2 * float(weights @ weights + (at[features + 1] - 1) ** 2)
        off = counts * (1 / (1 + np.exp(-sums)) - second)
        slope = np.empty_like(at)
        slope[:features] = np.bincount(flat, np.repeat(off, wide), features) + PENALTY * weights
        slope[0] = 0
        slope[features:] = off.sum(), (off * by_part).sum() + PENALTY * (at[features + 1] - 1)
        return loss, slope

    start = np.zeros(features + 2)
    start[features + 1] = 1
    found = descend(loss_at, start, steps)
    return Fitted(found[:features], float(found[features]), float(found[features + 1]))


def descend(loss_at: Callable[[Numbers], tuple[float, Numbers]], at: Numbers, most: int) -> Numbers:
    """The place of the least loss, as far as ``most`` steps lead there."""
    steps: list[tuple[Numbers, Numbers]] = []
    loss, slope = loss_at(at)
    for _ in range(most):
        way = _newton(slope, steps)
        length, steep = 1.0, float(slope @ way)
        while True:
            there = at - length * way
            less, slope_there = loss_at(there)
            if less <= loss - 1e-4 * length * steep or length < 1e-6:
                break
            length /= 2
        if (there - at) @ (slope_there - slope) > 1e-10:
            steps = [*steps, (there - at, slope_there - slope)][-_KEPT:]
        done = loss - less < 1e-5 * abs(loss)
        at, loss, slope = there, less, slope_there
        if done:
            break
    return at


def _newton(slope: Numbers, steps: Sequence[tuple[Numbers, Numbers]]) -> Numbers:
    """The way down, by the last steps and what became of the slope on them."""
    way = slope.copy()
    shares = []
    for step, turn in reversed(steps):
        share = float(step @ way) / float(turn @ step)
        way -= share * turn
        shares.append(share)
    if not steps:
        return way / max(1.0, float(np.abs(slope).max()))
    step, turn = steps[-1]
    way *= float(step @ turn) / float(turn @ turn)
    for (step, turn), share in zip(steps, reversed(shares), strict=True):
        way += (share - float(turn @ way) / float(turn @ step)) * step
    return way
