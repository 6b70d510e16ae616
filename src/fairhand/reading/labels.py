"""Page labels: as they are printed, counted on, compared and cited.

A label is letters before, a number (arabic or roman), letters after: ``12``, ``xiv``, ``B2``, ``S12``, ``12a``.

**Source**: ranges cut short (``150-59``): *MLA Handbook*, 9th ed., and *Chicago Manual of Style*, 17th ed., 9.61.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache

_DASH = "[-\u2010-\u2015\u2212]"
_LABEL = r"[A-Za-z]{0,4}\.?\d{1,7}(?:(?!ff?\b)[A-Za-z])?|[ivxlcdmIVXLCDM]{1,9}|[A-Z]"
_PARSED = re.compile(r"(?P<prefix>[A-Za-z]{0,4}\.?)(?P<number>\d{1,7})(?P<suffix>[A-Za-z]?)")
_ROMAN = re.compile(r"m{0,3}(?:cm|cd|d?c{0,3})(?:xc|xl|l?x{0,3})(?:ix|iv|v?i{0,3})", re.IGNORECASE)
_SAID = re.compile(r"\b(?:pages?|pp?|pgs?)(?:\b\.?|(?=\d))|\b(?:see|at|esp)\b\.?", re.IGNORECASE)
_RANGE = re.compile(
    rf"(?<![\w.])(?P<first>{_LABEL})(?:\s{{0,2}}(?:{_DASH}{{1,2}}|\bto\b)\s{{0,2}}(?P<last>{_LABEL}))?"
    r"(?P<ff>\s?ff?\b\.?)?(?:\s?nn?\.?\s?\d{1,3})?(?![\w])"
)
_VALUES = {"i": 1, "v": 5, "x": 10, "l": 50, "c": 100, "d": 500, "m": 1000}
_NUMERALS = (
    (1000, "m"), (900, "cm"), (500, "d"), (400, "cd"), (100, "c"), (90, "xc"),
    (50, "l"), (40, "xl"), (10, "x"), (9, "ix"), (5, "v"), (4, "iv"), (1, "i"),
)  # fmt: skip
LONGEST_RANGE = 3000
"""A range of more pages than this is a slip, and only its ends are kept."""


@dataclass(frozen=True, slots=True)
class PageLabel:
    """A page label taken apart."""

    prefix: str
    number: int
    suffix: str = ""
    roman: bool = False
    capital: bool = False
    """Whether a roman numeral stands in capitals."""

    def on(self, by: int) -> PageLabel:
        """The label ``by`` pages further on.

        >>> str(parse_label("B2").on(1)), str(parse_label("xiv").on(1))
        ('B3', 'xv')
        """
        return PageLabel(self.prefix, self.number + by, "" if by else self.suffix, self.roman, self.capital)

    def __str__(self) -> str:
        """The label as it is printed."""
        if not self.roman:
            return f"{self.prefix}{self.number}{self.suffix}"
        numeral = roman_numeral(self.number)
        return numeral.upper() if self.capital else numeral


def roman_numeral(number: int) -> str:
    """``number`` in small roman numerals; of numbers below 1, nothing.

    >>> roman_numeral(14)
    'xiv'
    """
    out = []
    for value, numeral in _NUMERALS:
        times, number = divmod(max(number, 0), value)
        out.append(numeral * times)
    return "".join(out)


def parse_label(text: str) -> PageLabel | None:
    """The label that ``text`` is, or None where it is none.

    >>> parse_label("S12")
    PageLabel(prefix='S', number=12, suffix='', roman=False, capital=False)
    """
    text = text.strip()
    if text and _ROMAN.fullmatch(text):
        values = [_VALUES[letter] for letter in text.lower()]
        total = sum(-v if v < after else v for v, after in zip(values, [*values[1:], 0], strict=True))
        return PageLabel("", total, "", roman=True, capital=text.isupper())
    found = _PARSED.fullmatch(text)
    return PageLabel(found["prefix"], int(found["number"]), found["suffix"]) if found else None


def page_key(label: str) -> str:
    """What two spellings of one label share.

    >>> page_key(" XIV") == page_key("xiv")
    True
    """
    parsed = parse_label(label)
    return str(parsed).lower() if parsed else label.strip().lower()


def expand_range(first: str, last: str) -> tuple[str, ...]:
    """All labels from ``first`` to ``last``, which may be cut short; of a range that cannot be, its ends.

    >>> expand_range("150", "52"), expand_range("xiv", "xvi"), expand_range("B2", "3")
    (('150', '151', '152'), ('xiv', 'xv', 'xvi'), ('B2', 'B3'))
    """
    low, high = parse_label(first), parse_label(last)
    if low is None or high is None or low.roman != high.roman:
        return (first, last)
    end = high.number
    if not low.roman and end < low.number and not high.prefix:
        digits = str(low.number)
        cut = str(end)
        end = int(digits[: max(0, len(digits) - len(cut))] + cut)
    if high.prefix not in ("", low.prefix) or not 0 < end - low.number <= LONGEST_RANGE:
        return (first,) if first == last else (first, last)
    return tuple(str(low.on(k)) for k in range(end - low.number + 1))


@lru_cache(maxsize=4096)
def labels_in(locator: str) -> tuple[str, ...]:
    """All page labels that a locator, or an entry's page range, names.

    >>> labels_in("pp. 102-3, 110"), labels_in("xiv"), labels_in("B2")
    (('102', '103', '110'), ('xiv',), ('B2',))
    """
    out: dict[str, None] = {}
    for found in _RANGE.finditer(_SAID.sub(" ", locator)):
        first, last = found["first"], found["last"]
        if parse_label(first) is None and len(first) > 1:
            continue
        labels = expand_range(first, last) if last else (first,)
        if found["ff"] and (low := parse_label(labels[-1])):
            labels = (*labels, str(low.on(1)))
        out.update(dict.fromkeys(labels))
    return tuple(out)
