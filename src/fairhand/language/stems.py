"""Words brought to their stems, so that *moorings* and *moored* are found together.

**Source**: M. F. Porter 1980, *An algorithm for suffix stripping*, Program 14(3): 130-137, with the author's two later
departures (*-bli* for *-abli*, and *-logi*), as search engines have it.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import lru_cache

_LONGEST = 64
"""Letters of the longest word that has a stem."""
_TWICE = re.compile(r"([^aeioulsz])\1\Z")

_STEP_2 = {
    "ational": "ate", "tional": "tion", "enci": "ence", "anci": "ance", "izer": "ize", "bli": "ble", "alli": "al",
    "entli": "ent", "eli": "e", "ousli": "ous", "ization": "ize", "ation": "ate", "ator": "ate", "alism": "al",
    "iveness": "ive", "fulness": "ful", "ousness": "ous", "aliti": "al", "iviti": "ive", "biliti": "ble", "logi": "log",
}  # fmt: skip
_STEP_3 = {"icate": "ic", "ative": "", "alize": "al", "iciti": "ic", "ical": "ic", "ful": "", "ness": ""}
_STEP_4 = dict.fromkeys(
    "al ance ence er ic able ible ant ement ment ent ion ou ism ate iti ous ive ize".split(),
    "",
)


def _longest_first(endings: Mapping[str, str]) -> tuple[tuple[str, str], ...]:
    return tuple(sorted(endings.items(), key=lambda each: -len(each[0])))


_RULES_2, _RULES_3, _RULES_4 = map(_longest_first, (_STEP_2, _STEP_3, _STEP_4))


@lru_cache(maxsize=65536)
def stem(word: str) -> str:
    """The stem of a word in small letters; figures and words of other scripts are their own.

    >>> [stem(word) for word in "moorings moored libraries relational 1912".split()]
    ['moor', 'moor', 'librari', 'relat', '1912']
    """
    if not 2 < len(word) <= _LONGEST or not (word.isascii() and word.isalpha()):
        return word
    word = _take_plural(word)
    word = _take_past(word)
    if word.endswith("y") and _has_vowel(word[:-1]):
        word = word[:-1] + "i"
    word = _replace(word, _RULES_2, 0)
    word = _replace(word, _RULES_3, 0)
    word = _replace(word, _RULES_4, 1)
    return _tidy(word)


def _take_plural(word: str) -> str:
    if word.endswith(("sses", "ies")):
        return word[:-2]
    return word[:-1] if word.endswith("s") and not word.endswith("ss") else word


def _take_past(word: str) -> str:
    if word.endswith("eed"):
        return word[:-1] if _measure(word[:-3]) else word
    ending = next((end for end in ("ed", "ing") if word.endswith(end)), "")
    left = word.removesuffix(ending) if ending else word
    if not ending or not _has_vowel(left):
        return word
    if left.endswith(("at", "bl", "iz")):
        return left + "e"
    if _TWICE.search(left):
        return left[:-1]
    return left + "e" if _measure(left) == 1 and _ends_short(left) else left


def _replace(word: str, rules: tuple[tuple[str, str], ...], least: int) -> str:
    """The word with the longest of the endings that it has replaced, where more than ``least`` syllables precede it."""
    for ending, instead in rules:
        if word.endswith(ending):
            left = word.removesuffix(ending)
            fits = _measure(left) > least and (ending != "ion" or left.endswith(("s", "t")))
            return left + instead if fits else word
    return word


def _tidy(word: str) -> str:
    if word.endswith("e"):
        left = word[:-1]
        measure = _measure(left)
        if measure > 1 or (measure == 1 and not _ends_short(left)):
            word = left
    return word[:-1] if word.endswith("ll") and _measure(word[:-1]) > 1 else word


def _plain(word: str) -> str:
    """The word's vowels as ``a`` and its consonants as ``b``; a *y* after a consonant is a vowel."""
    told: list[str] = []
    for letter in word:
        vowel = letter in "aeiou" or (letter == "y" and bool(told) and told[-1] == "b")
        told.append("a" if vowel else "b")
    return "".join(told)


def _measure(word: str) -> int:
    """How often consonants follow vowels."""
    return _plain(word).count("ab")


def _has_vowel(word: str) -> bool:
    return "a" in _plain(word)


def _ends_short(word: str) -> bool:
    """Whether it ends consonant, vowel, consonant, the last none of *w*, *x*, *y*."""
    return _plain(word).endswith("bab") and word[-1] not in "wxy"
