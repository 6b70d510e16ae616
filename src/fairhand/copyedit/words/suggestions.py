"""What was meant by a word that is not in the dictionary: the likeliest words first.

**Source**: a slip is weighed as M. D. Kernighan, K. W. Church and W. A. Gale 1990 (*A spelling correction program
based on a noisy channel model*, COLING) weigh it: how likely the slip is, times how frequent the word. How likely each
slip is was set by hand: letters that sound alike, one doubled or not, two changed about, a neighbour on the keyboard.
"""

from __future__ import annotations

import re
from collections.abc import Collection
from functools import lru_cache

from fairhand.language.lexicon import LETTERS, Country, find_word, spelled_sounds, spelled_words, weigh_pair
from fairhand.language.sounding import sound_of

MOST = 5
"""As many as are offered."""
FREQUENCY = 0.03
"""How much a word gains by each unit of ``Lexeme.weight``: a word ten times as frequent makes up for 0.3 of a slip."""
NEIGHBOURS = 0.012
"""The same for each unit of ``weigh_pair`` with the word before or after."""
AT_HAND = 0.9
"""What a word gains that stands elsewhere in the draft or its sources."""
SOUND = 0.35
"""What it costs for each letter in which the sounds differ."""
BROKEN = 0.6
"""What it costs to part a word in two: *alot*."""
TOGETHER = 88
"""How often, by ``weigh_pair``, two words stand in a row that are offered for one."""
TOO_MANY = 0.15
"""What a letter too many costs over one that is missing."""
UNCOUNTED = 58
"""The weight that a word of one country's spelling is given where it was not counted."""
FURTHEST = 1.3
"""The heaviest difference between two countries' spellings of one word."""
NAME = 0.6
"""What it costs to take a word in small letters for a name."""
CHANGED_ABOUT = 0.5
"""What it costs to change two letters about."""
_KEYS = ("qwertyuiop", "asdfghjkl", "zxcvbnm")
_BESIDE = {
    (a, b)
    for row, keys in enumerate(_KEYS)
    for at, a in enumerate(keys)
    for b in (
        *keys[max(0, at - 1) : at + 2],
        *(_KEYS[row + 1][max(0, at - 1) : at + 1] if row < 2 else ""),
        *(_KEYS[row - 1][at : at + 2] if row else ""),
    )
}
_ALIKE = {frozenset(pair) for pair in "ck cs sz sx fv gj mn dt bp kq iy uw yj cz".split()}
_VOWELS = frozenset("aeiouy")
_SILENT = frozenset("ehugwpb")


@lru_cache(maxsize=1024)
def suggest_words(
    word: str, country: Country, before: str = "", after: str = "", at_hand: Collection[str] = frozenset()
) -> tuple[tuple[str, float], ...]:
    """The words that may have been meant, the likeliest first, each with how unlikely the slip is, from about 0 to 4.

    Args:
        word: As it was written.
        country: Whose spelling is offered.
        before: The word before it, in small letters, where there is one.
        after: The word after it.
        at_hand: Words that stand in the draft or its sources.

    >>> [word for word, _ in suggest_words("seperately", "US")][:1], suggest_words("alot", "US")[0][0]
    (['separately'], 'a lot')
    """
    plain = word.replace("’", "'")
    weighed = []
    for candidate in _candidates(plain.casefold(), plain[:1].isupper()):
        known = find_word(candidate.removesuffix("'s"))
        if known is None or not known.is_spelled(country) or "x" in known.kinds:
            continue
        slip = _slip(plain.casefold(), candidate.casefold())
        slip += NAME * (candidate[:1].isupper() and plain[:1].islower())
        slip += SOUND * _distance(sound_of(plain), sound_of(candidate))
        gain = FREQUENCY * weight_of(candidate) + AT_HAND * (candidate.casefold() in at_hand)
        gain += NEIGHBOURS * (weigh_pair(before, candidate) + weigh_pair(candidate, after))
        weighed.append((slip - gain, slip, candidate))
    for first, second in _halves(plain.casefold()):
        weighed.append((BROKEN - FREQUENCY * weigh_pair(first, second), BROKEN, f"{first} {second}"))
    weighed.sort()
    cased = [(_cased(candidate, word), slip) for _, slip, candidate in weighed]
    return tuple(dict(reversed(cased)).items())[::-1][:MOST] if cased else ()


_ENDINGS_APART = (("tre", "ter"), ("bre", "ber"), ("our", "or"))
"""What the two countries end a word with, where the other's ending may make a word that both know: *meters*."""


def counterpart(word: str, country: Country) -> str:
    """The word as this country alone spells it, where the other spells it as written; empty where there is none.

    >>> [counterpart(word, "US") for word in ("tumour", "metres", "onwards")], counterpart("center", "GB")
    (['tumor', 'meters', ''], 'centre')
    """
    plain = word.replace("’", "'").casefold()
    for british, american in _ENDINGS_APART:
        theirs, ours = (british, american) if country == "US" else (american, british)
        regular = re.sub(theirs + r"(s?)\Z", ours + r"\1", plain)
        if regular != plain and (known := find_word(regular)) and known.is_spelled(country):
            return _cased(regular, word)
    mine = [each for each in _candidates(plain, is_name=False) if is_only(each, country)]
    nearest = min(mine, key=lambda each: (_slip(plain, each), each), default="")
    return _cased(nearest, word) if nearest and _slip(plain, nearest) <= FURTHEST else ""


def is_only(word: str, country: Country) -> bool:
    """Whether one country alone spells it so."""
    known = find_word(word)
    return known is not None and known.countries == LETTERS[country]


def weight_of(word: str) -> int:
    """How often a word was counted, in capitals or not; of two spellings one alone may have been."""
    found = [known for form in (word, word.casefold()) if (known := find_word(form))]
    return max((known.weight or UNCOUNTED * (len(known.countries) == 1) for known in found), default=0)


def _candidates(plain: str, is_name: bool) -> set[str]:
    """Words whose letters, or whose sound, are near."""
    from rapidfuzz import process
    from rapidfuzz.distance import OSA

    words = spelled_words()
    near = 2 if len(plain) < 6 else 3
    by_letters = process.extract(plain, words, scorer=OSA.distance, score_cutoff=near, limit=None)
    found = {each[0] for each in by_letters}
    if is_name:
        named = plain.capitalize()
        found |= {each[0] for each in process.extract(named, words, scorer=OSA.distance, score_cutoff=near, limit=None)}
    if len(plain) > 3 and plain.endswith("s") and "n" in getattr(find_word(plain[:-1]), "kinds", ""):
        found.add(f"{plain[:-1]}'s")
    sound = sound_of(plain)
    if len(sound) > 1 and not any(each[1] == 1 for each in by_letters):  # one letter off: no need to listen
        off = 0 if len(sound) < 4 else 1
        heard = process.extract(sound, spelled_sounds(), scorer=OSA.distance, score_cutoff=off, limit=None)
        found |= {words[at] for _, _, at in heard if abs(len(words[at]) - len(plain)) <= 4}
    return found


def _halves(plain: str) -> list[tuple[str, str]]:
    """The word parted in two that are very often written in a row."""
    parted = [(plain[:at], plain[at:]) for at in range(1, len(plain))]
    return [pair for pair in parted if weigh_pair(*pair) >= TOGETHER]


def _slip(wrote: str, meant: str) -> float:
    """How unlikely it is that one writes the one for the other: the cheapest way from word to word."""
    rows = [[0.0] * (len(meant) + 1) for _ in range(len(wrote) + 1)]
    for i in range(1, len(wrote) + 1):
        rows[i][0] = rows[i - 1][0] + _extra(wrote, i - 1) + TOO_MANY
    for j in range(1, len(meant) + 1):
        rows[0][j] = rows[0][j - 1] + _extra(meant, j - 1)
    for i in range(1, len(wrote) + 1):
        for j in range(1, len(meant) + 1):
            one, other = wrote[i - 1], meant[j - 1]
            best = rows[i - 1][j - 1] + _instead(one, other)
            best = min(best, rows[i - 1][j] + _extra(wrote, i - 1) + TOO_MANY, rows[i][j - 1] + _extra(meant, j - 1))
            if i > 1 and j > 1 and one == meant[j - 2] and wrote[i - 2] == other and one != other:
                best = min(best, rows[i - 2][j - 2] + CHANGED_ABOUT)
            rows[i][j] = best
    return rows[-1][-1] + (0.4 if wrote[:1] != meant[:1] else 0)


def _extra(word: str, at: int) -> float:
    """What a letter costs that is too many, or is missing."""
    letter = word[at]
    if letter in "'- ":
        return 0.45
    if letter in (word[at - 1 : at], word[at + 1 : at + 2]):
        return 0.45
    if letter in _VOWELS or letter in _SILENT:
        return 0.75
    return 1.0


@lru_cache(maxsize=1024)
def _instead(one: str, other: str) -> float:
    """What it costs to write one letter for another."""
    if one == other:
        return 0.0
    if {one, other} <= _VOWELS:
        return 0.6
    if frozenset((one, other)) in _ALIKE:
        return 0.75
    return 0.85 if (one, other) in _BESIDE else 1.15


def _distance(one: str, other: str) -> int:
    from rapidfuzz.distance import OSA

    return OSA.distance(one, other)


def _cased(candidate: str, word: str) -> str:
    """The candidate with a capital where the word has one."""
    if word[:1].isupper() and candidate[:1].islower():
        return candidate.upper() if word.isupper() and len(word) > 1 else candidate[:1].upper() + candidate[1:]
    return candidate
