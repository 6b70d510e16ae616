"""Numbers as sheets write them: figures, words, ranges, limits, "about", and tolerances."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache

_ONES = "one two three four five six seven eight nine".split()
_TEENS = "ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen".split()
_TENS = "twenty thirty forty fifty sixty seventy eighty ninety".split()
_VALUES: dict[str, int] = (
    {word: n for n, word in enumerate(_ONES, 1)}
    | {word: n for n, word in enumerate(_TEENS, 10)}
    | {word: 10 * n for n, word in enumerate(_TENS, 2)}
    | {"dozen": 12, "single": 1}
)
_SMALL = (
    r"(?:(?:twen|thir|for|fif|six|seven|eigh|nine)ty(?:[- ](?:one|two|three|four|five|six|seven|eight|nine))?"
    r"|(?:thir|four|fif|six|seven|eigh|nine)teen|ten|eleven|twelve|one|two|three|four|five|six|seven|eight|nine)"
)
_SPELT = rf"(?:(?:half )?a dozen|{_SMALL}(?: (?:hundred|thousand)(?: (?:and )?{_SMALL}(?: hundred)?)?)?)"

_FIGURES = r"\d{1,3}(?:,\d{3})+|\d{1,6}(?:\.\d{1,2})?"
NUMBER = rf"(?:{_FIGURES}|{_SPELT}(?![A-Za-z])(?: \(\d{{1,5}}\))?)"
"""A number in figures or words, as a regular expression without groups (lower case)."""
COUNT = rf"(?:{_FIGURES}|{_SMALL}(?![A-Za-z])(?: \(\d{{1,5}}\))?)"
"""The same of what is spelt out below a hundred only, as days, hours and points of type are."""

_LEAST = (
    r"at (?:the (?:very )?)?least|(?:no|not)(?: be)? (?:fewer|less) than|(?:an? )?(?:absolute )?minimum(?: (?:length"
    r"|word count|page count|number|number of words|number of pages|requirement|limit))?(?: of| is|:)?"
    r"|≥|>=|min\.?(?: of|:)?|(?:no|not|n't) under|n't (?:fewer|less) than"
)
_MOST = (
    r"at (?:the )?(?:very )?most|(?:no|not)(?: be)? (?:more|longer|greater) than"
    r"|(?:an? )?(?:absolute )?max(?:imum)?\.?(?: (?:length|word count|page count|number|number of words"
    r"|number of pages|requirement|limit))?(?: of| is|:)?"
    r"|≤|<=|up to|(?:not|never|cannot|can't|mustn't) (?:to )?(?:exceed|go over|go above|run over)|fewer than"
    r"|less than|under|(?:not|n't|never) (?:cite|use|quote|include|rely on|refer to|draw on) more than"
    r"|(?:in )?no (?:case|event)(?: be)? (?:longer|more) than"
    r"|(?:not|never|nobody should go|no one should go) over|limit(?:ed)? (?:of|to|is)|limit:|within|below"
)
_ABOUT = (
    r"about|around|approximately|approx\.?|roughly|circa|ca?\.|~|in the region of|something like|somewhere around"
    r"|of the order of|some"
)
_LEAST_AFTER = (
    r"or (?:more|longer|over)|(?:at (?:a |an )?(?:absolute |the )?)?minimum|at (?:the (?:very )?)?least|and (?:up"
    r"|over|above)|upwards?"
)
_MOST_AFTER = (
    r"or (?:fewer|less|under|shorter)|(?:at )?(?:an? )?(?:absolute )?max(?:imum)?\b|at (?:the )?(?:very )?most"
    r"|limit|and no more|at the (?:very )?outside"
)
_ABOUT_AFTER = r"or so|or thereabouts|approximately|approx\.?|\(approx\.?\)|roughly"


@dataclass(frozen=True, slots=True)
class Quantity:
    """A number of things, with what is said about it."""

    start: int
    """Where it begins in the text that was read, its limit word ("at least") included."""
    end: int
    """Where it ends, its unit and a limit word after that included."""
    low: int | float | None
    """The least number, or None where only a limit above is given."""
    high: int | float | None
    """The greatest number, or None where only a limit below is given."""
    about: bool
    """Whether the sheet says that the number is approximate."""
    unit: str
    """The unit's word as it stands in the text, or empty."""
    bare: bool
    """Whether it is one number with neither a limit word nor a range."""


def number_value(words: str) -> int | float:
    """The value of a number matched by `NUMBER`.

    >>> number_value("2,500"), number_value("Twenty-five"), number_value("two thousand five hundred")
    (2500, 25, 2500)
    """
    words = words.lower().split(" (")[0].replace(",", "")
    if words == "half a dozen":
        return 6
    if words[0].isdigit():
        value = float(words)
        return int(value) if value.is_integer() else value
    total, part = 0, 0
    for word in re.split(r"[- ]", words):
        if word == "hundred":
            part *= 100
        elif word == "thousand":
            total, part = part * 1000, 0
        else:
            part += _VALUES.get(word, 0)
    return total + part


@lru_cache(maxsize=64)
def _quantity_pattern(unit: str) -> re.Pattern[str]:
    link = rf"(?: ?(?:-|—) ?|[- ](?:to|or)[- ]|,? (?:and|but|to)(?: \w+)? (?P<cap>{_MOST}) ?)"
    unit_group = rf"(?:[- ]?(?P<unit>{unit})\b(?!-))" if unit else ""
    inner_unit = rf"(?:[- ]?(?:{unit})\b)?" if unit else ""
    return re.compile(
        rf"(?<![\w/.:$£€#])"
        rf"(?:(?:(?P<least>{_LEAST})|(?P<most>{_MOST})|(?P<about>{_ABOUT})) ?(?:about |the )?)?"
        rf"(?:(?P<between>between|from) )?"
        rf"(?<![\w/:,$£€#])(?P<a>{NUMBER})(?![\d/:%]|(?:st|nd|rd|th)\b|,\d)"
        rf"(?: ?(?:±|\+ ?/ ?-) ?(?P<spread>{_FIGURES})(?! ?%| ?per))?(?P<plus>\+(?= ?[A-Za-z,;]"
        rf"|$))?(?:{inner_unit}(?:{link}|(?P<and> and ))(?P<b>{NUMBER})(?![\d/:%]|,\d))?"
        rf"{unit_group}"
        rf"(?:,? \(?(?:(?P<least_after>{_LEAST_AFTER})|(?P<most_after>{_MOST_AFTER})"
        rf"|(?P<about_after>{_ABOUT_AFTER}))(?!\w)\)?)?",
        re.IGNORECASE,
    )


def find_quantities(text: str, unit: str = "") -> list[Quantity]:
    """The quantities in ``text``, in order; with ``unit`` (a regular expression) only those of that unit.

    >>> [(q.low, q.high, q.about) for q in find_quantities("about 1,200 to 1,500 words", "words?")]
    [(1200, 1500, True)]
    >>> [(q.low, q.high) for q in find_quantities("no fewer than four, or 2 at most")]
    [(4, None), (None, 2)]
    """
    pattern = _quantity_pattern(unit)
    found: list[Quantity] = []
    at = 0
    while match := pattern.search(text, at):
        found.append(_read_quantity(match))
        at = found[-1].end
    return found


def _read_quantity(match: re.Match[str]) -> Quantity:
    a = number_value(match["a"])
    second = match["b"]
    end = match.end()
    if second and match["and"] and not match["between"]:
        # "five and two of them": two numbers, no range; the second is found by whoever reads on.
        second, end = None, match.start("and")
    b = number_value(second) if second else None
    if b is not None and b < a:
        b, end = None, match.end("a")
    groups = match.groupdict() if end == match.end() else match.groupdict() | dict.fromkeys(_AFTER)
    about = bool(groups["about"] or groups["about_after"])
    low: int | float | None = a
    high: int | float | None = a if b is None else b
    if groups["spread"] and b is None:
        low, high = a - number_value(groups["spread"]), a + number_value(groups["spread"])
    elif groups["least"] or groups["least_after"] or groups["plus"]:
        high = b
    elif groups["cap"]:
        low, high = None, b
    elif groups["most"] or groups["most_after"]:
        low = None if b is None else a
    return Quantity(
        start=match.start(),
        end=end,
        low=low,
        high=high,
        about=about,
        unit=(groups.get("unit") or "").lower(),
        bare=b is None and low == high,
    )


_AFTER = ("least_after", "most_after", "about_after")
_TOLERANCE = re.compile(
    rf"(?:\+ ?/ ?-|±|plus or minus|give or take|with a (?:margin|tolerance|leeway) of|(?:tolerance|leeway|margin)"
    rf" (?:of|is):?|within) ?(?P<a>{NUMBER}|half a|an?) ?(?P<of>%|per ?cent|words?|pages?|(?= ?[.,;()]|$))"
    rf"|(?P<b>{NUMBER}) ?(?:%|per ?cent) (?:either (?:way|side)|above or below|over or under"
    rf"|(?:leeway|tolerance|margin)\b)",
    re.IGNORECASE,
)


_OVER = re.compile(
    rf"(?P<n>{NUMBER}) ?(?P<of>%|per ?cent|words?|pages?) (?:above|over|more|longer|in excess)\b"
    rf"|\b(?:by (?:no more than |at most |up to |not more than )|overrun of (?:up to )?)(?P<n2>{NUMBER}) ?"
    r"(?P<of2>%|per ?cent|words?|pages?)|(?<![\d/])\+ ?(?P<n3>\d{1,3}) ?(?P<of3>%)",
    re.IGNORECASE,
)
_UNDER = re.compile(
    rf"(?P<n>{NUMBER}) ?(?P<of>%|per ?cent|words?|pages?) (?:below|under|less|shorter|short)\b"
    r"|(?<![\d+])[-–] ?(?P<n3>\d{1,3}) ?(?P<of3>%)",
    re.IGNORECASE,
)
_NO_LEAST = re.compile(r"\bno (?:lower|minimum|least)\b|\bthere is no minimum\b", re.IGNORECASE)


def _width(match: re.Match[str], number: float) -> float:
    """How much a tolerance on one side is, in the unit of ``number``."""
    groups = match.groupdict()
    amount = number_value(next(v for name, v in groups.items() if v and name.startswith("n")))
    unit = next(v for name, v in groups.items() if v and name.startswith("of"))
    return round(number * amount / 100) if unit[0] in "%pP" and not unit.lower().startswith("page") else amount


def find_tolerance(text: str, number: float) -> tuple[float | None, float | None, re.Match[str]] | None:
    """The least and greatest number within the tolerance that ``text`` grants; None where it grants none.

    >>> find_tolerance("2,500 words +/- 10%", 2500)[:2]
    (2250, 2750)
    >>> find_tolerance("10 % above; no lower limit", 2000)[:2], find_tolerance("up to 5 % over is allowed", 2000)[:2]
    ((None, 2200), (2000, 2100))
    """
    match = _TOLERANCE.search(text)
    if match:
        amount = (match["a"] or match["b"]).lower()
        width = {"half a": 0.5, "a": 1, "an": 1}.get(amount) or number_value(amount)
        if match["b"] or re.match(r"%|per", match["of"], re.IGNORECASE):
            width = round(number * width / 100)
        return number - width, number + width, match
    over, under = _OVER.search(text), _UNDER.search(text)
    first = over or under
    if not first:
        return None
    low = number - _width(under, number) if under else None if _NO_LEAST.search(text) else number
    return low, number + _width(over, number) if over else number, first
