"""Log-linear models fitted by stochastic descent with a rate of its own for each weight (AdaGrad: J. Duchi 2011)."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import numpy.typing as npt

Numbers = npt.NDArray[np.float64]
Places = npt.NDArray[np.int64]
_BATCH = 512


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


def fit_pair(table: Places, by_part: Numbers, second: Places, features: int) -> tuple[Numbers, float, float]:
    """What each feature says for the second of two words, the bias, and how much the parts of speech count."""
    share = np.where(second == 1, second.mean(), 1 - second.mean())
    counts = np.minimum(0.5 / share, 5)
    weights, squares = np.zeros(features), np.full(features, 1e-2)
    bias, scale, scale_squares = 0.0, 1.0, 0.1
    drawn = np.random.default_rng(0)
    for _ in range(6):
        order = drawn.permutation(len(second))
        for start in range(0, len(second), 64):
            batch = order[start : start + 64]
            sums = weights[table[batch]].sum(1) + bias + scale * by_part[batch]
            off = (1 / (1 + np.exp(-sums)) - second[batch]) * counts[batch]
            met, where = np.unique(table[batch], return_inverse=True)
            slope = np.zeros(len(met))
            np.add.at(slope, where.ravel(), np.repeat(off, table.shape[1]))
            slope = np.where(met == 0, 0, slope + 2e-3 * weights[met])
            squares[met] += slope * slope
            weights[met] -= 0.2 * slope / np.sqrt(squares[met])
            bias -= 0.01 * off.mean()
            of_scale = float((off * by_part[batch]).sum()) + 0.01 * scale
            scale_squares += of_scale * of_scale
            scale -= 0.1 * of_scale / scale_squares**0.5
    return weights, float(bias), float(scale)
