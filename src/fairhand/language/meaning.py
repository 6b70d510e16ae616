"""How alike in meaning texts are, by a small sentence encoder where one is installed.

It is optional, for its size. Without it there is no answer, and whoever asks goes by words and says so.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from typing import TYPE_CHECKING, Protocol

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Array = NDArray[np.float32]

MOST_KEPT = 20_000
"""Texts whose meanings are remembered."""


class Encoder(Protocol):
    """What makes numbers of texts."""

    def encode(self, texts: list[str], /) -> Array:
        """A row for each text, each of length one."""


class Meanings:
    """What texts mean to one encoder; a text that was read once is not read again."""

    def __init__(self, encoder: Encoder) -> None:
        """No text is read yet."""
        self._encoder = encoder
        self._known: dict[str, Array] = {}

    def read(self, texts: Sequence[str]) -> Array:
        """A row for each text."""
        import numpy as np

        new = [text for text in dict.fromkeys(texts) if text not in self._known]
        if len(self._known) + len(new) > MOST_KEPT:
            self._known.clear()
            new = list(dict.fromkeys(texts))
        if new:
            self._known.update(zip(new, self._encoder.encode(new), strict=True))
        return np.stack([self._known[text] for text in texts])


@lru_cache(maxsize=1)
def find_meanings() -> Meanings | None:
    """The encoder that is installed; None where none is."""
    try:
        from fairhand.language.minilm import MiniLM

        return Meanings(MiniLM())
    except ModuleNotFoundError:
        return None


def liken(texts: Sequence[Sequence[str]], meanings: Meanings) -> list[list[float]]:
    """How alike in meaning each text is to each other, beside what all of them share: from −1 to 1, about 0 by chance.

    What a set of texts has in common says nothing of how they part, so their mean is taken away first.

    Args:
        texts: Each text in one or more wordings, which count alike.
        meanings: The encoder.

    **Source**: taking the mean away: Mu and Viswanath 2018, *All-but-the-Top*.
    """
    import numpy as np

    if not texts:
        return []
    flat = meanings.read([wording for wordings in texts for wording in wordings])
    starts = np.cumsum([0, *(len(wordings) for wordings in texts)])[:-1]
    sums = np.add.reduceat(flat, starts)
    apart = sums - sums.mean(0)
    apart /= np.linalg.norm(apart, axis=1, keepdims=True).clip(1e-6)
    found: list[list[float]] = (apart @ apart.T).tolist()
    return found
