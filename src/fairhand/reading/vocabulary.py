"""What a misspelled word of a query was meant to be, among the words that the sources have."""

from __future__ import annotations

from collections.abc import Mapping

_SHORT = 3
"""Letters of a word that is too short to be told from others."""
_LONG = 8
"""Letters from which on two faults are forgiven."""


def mend_word(word: str, vocabulary: Mapping[str, int]) -> str:
    """The word of the vocabulary that is nearest, the commonest of several; empty where none is near.

    One fault is forgiven (a letter too many, too few, another, or two that changed places), two in a long word.

    >>> mend_word("harbuor", {"harbour": 9, "arbour": 2, "quay": 4})
    'harbour'

    **Source**: Damerau 1964, *A technique for computer detection and correction of spelling errors*.
    """
    from rapidfuzz.distance import OSA
    from rapidfuzz.process import extract

    if len(word) <= _SHORT or not word.isalpha():
        return ""
    most = 2 if len(word) >= _LONG else 1
    near = extract(word, vocabulary.keys(), scorer=OSA.distance, score_cutoff=most, limit=24)
    if not near:
        return ""
    return str(min(near, key=lambda found: (found[1], found[0][0] != word[0], -vocabulary[found[0]], found[0]))[0])
