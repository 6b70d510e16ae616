"""Readability figures: what they reckon, and in what range; a figure says nothing of whether the paper is good."""

from __future__ import annotations

import math
import re
from functools import lru_cache

_LETTERS = re.compile(r"[^a-z]")
_GROUP = re.compile(r"[aeiouy]+")
_SILENT = re.compile(r"[^laeiouy]e$|[^dtaeiouy]ed$|[^aeioulsxzc]es$")
"""A vowel at the end that is not heard."""
_TWO = re.compile(
    r"ia[ln]?$|i[ao](?![nu])|eo(?!u|ple)|eat(?:e|ing)|ua[lt]|uou|[^aeiou]ier|ism$|i[ou]m$|dea|rea(?=te)|[^q]uo"
)
"""Vowels beside each other that are heard apart, or a syllable without any."""


def flesch(words: float, sentences: float, syllables: float) -> float:
    """Reading ease, about 100 for the easiest to 0 for the hardest prose; academic prose lies mostly from 10 to 50.

    **Source**: R. Flesch 1948, *A new readability yardstick*, Journal of Applied Psychology 32.

    >>> round(flesch(600, 30, 960), 1)
    51.2
    """
    return 206.835 - 1.015 * words / sentences - 84.6 * syllables / words


def flesch_kincaid(words: float, sentences: float, syllables: float) -> float:
    """A year of American schooling, about 0 to 18 and over; academic prose lies mostly from 12 to 18.

    **Source**: J. P. Kincaid and others 1975, *Derivation of new readability formulas*.

    >>> round(flesch_kincaid(600, 30, 960), 1)
    11.1
    """
    return 0.39 * words / sentences + 11.8 * syllables / words - 15.59


def smog(long_words: int, sentences: int) -> float:
    """A year of American schooling by words of three syllables and more; meant for thirty sentences or more.

    **Source**: G. H. McLaughlin 1969, *SMOG grading*, Journal of Reading 12.

    >>> round(smog(67, 30), 2)
    11.67
    """
    return 1.0430 * math.sqrt(long_words * 30 / sentences) + 3.1291


def dale_chall(unfamiliar_percent: float, sentence_words: float) -> float:
    """A score from about 4 (a child of ten) to 10 (a graduate), by the share of words off a list of familiar ones.

    **Source**: E. Dale and J. S. Chall 1948, *A formula for predicting readability*; the list is not shipped, so that
    the figure is not shown.

    >>> round(dale_chall(12.5, 20), 2)
    6.6
    """
    return 0.1579 * unfamiliar_percent + 0.0496 * sentence_words + (3.6365 if unfamiliar_percent > 5 else 0)


@lru_cache(maxsize=16384)
def count_syllables(word: str) -> int:
    """The syllables of a word, by its groups of vowels; right for about nine words in ten.

    **Source**: common practice.

    >>> [count_syllables(word) for word in "tide library created people water harbour idea".split()]
    [1, 3, 3, 2, 2, 2, 3]
    """
    plain = _LETTERS.sub("", word.casefold())
    groups = len(_GROUP.findall(plain))
    silent = groups > 1 and _SILENT.search(plain) is not None
    return max(1, groups - silent + len(_TWO.findall(plain)))
