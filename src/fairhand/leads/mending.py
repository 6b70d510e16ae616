"""Entries of a list without numbers set right by their years: in most lists each entry has one, early or late in it.

A piece without a year belongs to the entry before it where years stand early, and to the one after it where they stand
late. An entry with two years is two where a line in it begins as the others do, and each half has its year.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence
from itertools import pairwise
from statistics import median

from fairhand.leads.line_features import start_of

_YEAR = re.compile(
    r"(?<![\d/.-])(?:1[5-9]|20)\d\d[a-z]?(?![\d/-])|\bn\.\s?d\.|\b(?:in press|forthcoming)\b", re.IGNORECASE
)
_ADDRESS = re.compile(r"(?:https?://|www\.|doi:?\s?|10\.\d{4,9}/)\S+", re.IGNORECASE)
_OPEN_ADDRESS = re.compile(r"(?:https?://|doi:?\s?|10\.\d{4,9}/)\S*[^.\s]$", re.IGNORECASE)
_TAIL = re.compile(r"(?=\S*\d)(?=\S*[./-])[\w./()-]{4,}(?:\s|$)")
"""What an address may go on with on the next line: one word with digits and signs in it."""
_UNLIKELY = ("small", "digit", "other")
_ODD = 0.1
"""The share of entries that begin in a form below which none is likely to."""
_ENDS = re.compile(r"(?:[.”)\d]|https?://\S+|10\.\d{4,9}/\S+)$")
_MOST_HAVE = 0.85
"""The share of entries that must have a year before the others are set right by it."""
_FEWEST = 5
_EARLY, _LATE = 0.45, 0.55
"""Where in an entry its year stands, from 0 to 1, for it to be early or late."""
_LONGEST = 700
_MOST_LINES = 40
"""Lines of an entry that are looked through for the beginning of another."""


def mend_starts(texts: Sequence[str], begins: Sequence[int]) -> list[int]:
    """The lines on which entries begin, those that cannot be so left out and those that were missed put in.

    Args:
        texts: The lines of the list.
        begins: The numbers of the lines on which entries seem to begin, the first among them.
    """
    begins = _without_strays(texts, begins)
    ends = [*begins[1:], len(texts)]
    entries = [_joined(texts, start, end) for start, end in zip(begins, ends, strict=True)]
    places = [found.start() / len(entry) if (found := _YEAR.search(entry)) else None for entry in entries]
    dated = [place for place in places if place is not None]
    if len(entries) < _FEWEST or len(dated) < _MOST_HAVE * len(entries):
        return list(begins)
    place = median(dated)
    gone = set()
    for n, (entry, has) in enumerate(zip(entries, places, strict=True)):
        if has is not None:
            continue
        if place < _EARLY and n and places[n - 1] is not None and len(entries[n - 1]) + len(entry) < _LONGEST:
            gone.add(begins[n])
        elif place > _LATE and n + 1 < len(entries) and len(entry) + len(entries[n + 1]) < _LONGEST:
            gone.add(begins[n + 1])
    kept = [start for start in begins if start not in gone]
    return sorted({*kept, *_missed(texts, kept)})


def _joined(texts: Sequence[str], start: int, end: int) -> str:
    """Some lines as one, without the addresses in them, whose numbers may look like years."""
    return _ADDRESS.sub(" ", " ".join(texts[start:end]))


def _without_strays(texts: Sequence[str], begins: Sequence[int]) -> list[int]:
    """The beginnings without those that go on with an address, and those in a form that hardly any other has."""
    forms = [start_of(texts[n]) for n in begins]
    times = Counter(forms)
    odd = {form for form in _UNLIKELY if times[form] < _ODD * len(forms)}
    kept = []
    for n, form in zip(begins, forms, strict=True):
        goes_on = n > 0 and _OPEN_ADDRESS.search(texts[n - 1]) and _TAIL.match(texts[n])
        if n == begins[0] or not (goes_on or (form in odd and len(begins) >= _FEWEST)):
            kept.append(n)
    return kept


def _missed(texts: Sequence[str], begins: Sequence[int]) -> list[int]:
    """Lines within an entry that begin as entries of this list do, after a full stop, each half with a year."""
    times = Counter(start_of(texts[n]) for n in begins)
    usual = {form for form in times if times[form] >= 0.25 * len(begins)} - {"small", "digit", "other", "quoted"}
    found = []
    for start, end in pairwise([*begins, len(texts)]):
        for n in range(start + 1, min(end, start + _MOST_LINES)):
            ended = _ENDS.search(texts[n - 1]) is not None
            if not ended or start_of(texts[n]) not in usual:
                continue
            before, after = _joined(texts, start, n), _joined(texts, n, end)
            if _YEAR.search(before) and _YEAR.search(after) and len(before) > 40 and len(after) > 40:
                found.append(n)
                break
    return found
