"""Words taken a few at a time, and how much of one text stands in another."""

from __future__ import annotations

from collections.abc import Sequence


def shingles(words: Sequence[str], size: int) -> list[tuple[str, ...]]:
    """Every run of ``size`` words, in order.

    >>> shingles("the tide came in".split(), 3)
    [('the', 'tide', 'came'), ('tide', 'came', 'in')]
    """
    return list(zip(*(words[k:] for k in range(size)), strict=False))


def containment(draft: Sequence[str], source: Sequence[str], size: int) -> float:
    """The share of the draft's different shingles that stand in the source too; 0 where it has none.

    **Source**: A. Z. Broder 1997, *On the resemblance and containment of documents*; P. Clough and M. Stevenson 2011,
    *Developing a corpus of plagiarised short answers*, section 5.

    >>> containment("the tide came in".split(), "and the tide came".split(), 2)
    0.6666666666666666
    """
    own = set(shingles(draft, size))
    return len(own.intersection(shingles(source, size))) / len(own) if own else 0.0


def winnow(hashes: Sequence[int], window: int) -> list[tuple[int, int]]:
    """The least hash of every window, the rightmost where several are least, each with its place and told once.

    Any match of ``window + size - 1`` words is among them, where the hashes are of shingles of ``size`` words.

    **Source**: S. Schleimer, D. Wilkerson and A. Aiken 2003, *Winnowing: local algorithms for document fingerprinting*.

    >>> winnow([5, 3, 8, 3, 9], 3)
    [(3, 1), (3, 3)]
    """
    chosen: list[tuple[int, int]] = []
    for first in range(len(hashes) - window + 1):
        at = min(range(first, first + window), key=lambda k: (hashes[k], -k))
        if not chosen or chosen[-1][1] != at:
            chosen.append((hashes[at], at))
    return chosen
