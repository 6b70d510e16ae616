"""How sure the scorer must be before it tells a word, set by text that it did not learn from.

The bar of a word learnt with another is one number more than the logarithm of how often the word stands in a million
words: of a scorer whose favours are true logarithms of odds, each word is then told wrongly as often as every other.
That number is the lowest at which all the right words that were held out, of all such pairs together, are told so often
in a million words as is allowed, and no oftener. For words that were met too seldom to be learnt, it is the bar itself.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from training.confused_fit import Numbers

STEP, MOST = 0.25, 40
"""How finely the number is looked for, and how many steps up."""
TELLS = 0.1
"""A word is looked for where so many of the places of the other would be told, at least."""
BY_PART = 5.0
"""The lowest bar of words of which the parts of speech alone were learnt: a factor of some 150."""


@dataclass(frozen=True)
class Way:
    """A word that may have been written for another."""

    wrote: str
    meant: str
    right: Numbers
    """How much rather the other fits at places held out where the word is right."""
    other: Numbers
    """The same at places of the other."""
    in_a_million: float
    """How often the word stands in a million words."""

    def bar(self, above: float) -> float:
        """The bar, by the number that it lies above the logarithm."""
        return round(above + float(np.log(max(1.0, self.in_a_million))), 2)

    def is_told(self, above: float) -> bool:
        """Whether looking for it is worth while."""
        return float((self.other > self.bar(above)).mean()) >= TELLS

    def told_wrongly(self, above: float) -> float:
        """Right words told in a million words."""
        return float((self.right > self.bar(above)).mean()) * self.in_a_million if self.is_told(above) else 0.0


def bars_of(ways: Sequence[Way], rate: float) -> dict[tuple[str, str], float]:
    """The bars of words that were learnt.

    Args:
        ways: The words that may be told, with those meant.
        rate: Right words that may be told in a million words, of all of them together.
    """
    above = next(above for above in _numbers() if sum(way.told_wrongly(above) for way in ways) <= rate)
    return {(way.wrote, way.meant): way.bar(above) for way in ways if way.is_told(above)}


def bars_by_part(ways: Sequence[Way], rate: float, millions: float) -> dict[tuple[str, str], float]:
    """The bars of words that were met too seldom to be learnt: one for all.

    Args:
        ways: The words that may be told, with those meant.
        rate: Right words that may be told in a million words, of all of them together.
        millions: Words of the text held out.
    """
    right = np.concatenate([way.right for way in ways])
    bar = next(bar for bar in _numbers() if bar >= BY_PART and (right > bar).sum() <= rate * millions)
    return {(way.wrote, way.meant): bar for way in ways}


def _numbers() -> Sequence[float]:
    return [STEP * step for step in range(MOST + 1)]
