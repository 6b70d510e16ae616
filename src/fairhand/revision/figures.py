"""The figures of a text: shares, sums of money, counts and years, in numerals or in words, with their values."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache
from typing import Literal

from fairhand.brief.numbers import number_value
from fairhand.model.span import Span

FigureKind = Literal["share", "money", "count", "small", "year"]
"""``small``: a count of twenty or less, a length of time or a measurement, of which prose is full."""

_UNITS = "one|two|three|four|five|six|seven|eight|nine"
_TENS = "twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety"
_TEENS = "ten|eleven|twelve|thirteen|fourteen|fifteen|sixteen|seventeen|eighteen|nineteen"
_BELOW = rf"(?:(?:{_TENS})(?:[- ](?:{_UNITS}))?|{_TEENS}|{_UNITS})"
_SPELT = rf"(?:{_BELOW}(?: (?:hundred|thousand)(?: (?:and )?{_BELOW})?)?)"
_NUMERAL = r"(?:\d{1,3}(?:,\d{3})+|\d+)(?:\.\d+)?"
_GREAT = {"thousand": 1e3, "million": 1e6, "billion": 1e9, "trillion": 1e12}
_PARTS = {
    "half": 2, "halves": 2, "third": 3, "quarter": 4, "fourth": 4, "fifth": 5, "sixth": 6, "seventh": 7, "eighth": 8,
    "ninth": 9, "tenth": 10, "twelfth": 12, "twentieth": 20, "hundredth": 100,
}  # fmt: skip
_DAYS = r"(?:January|February|March|April|May|June|July|August|September|October|November|December)"
_OF_A_WORK = (
    "[Cc]hapters?|[Aa]cts?|[Ss]cenes?|[Ff]igures?|[Tt]ables?|[Ll]ines?|[Pp]ages?|pp?\\.|[Vv]olumes?|[Pp]arts?|[Bb]ooks?"
    "|[Aa]rticles?|[Ss]ections?|[Ss]tanzas?|[Pp]aragraphs?|[Nn]os?\\.|[Nn]umbers?|[Rr]oute|[Hh]ighway|[Aa]ppendix"
    "|[Pp]hase"
    "|[Gg]rades?|[Tt]itle|[Ss]onnets?|[Pp]salms?|[Aa]mendments?|[Tt]ype|[Gg]roup|[Mm]odel|[Ww]ar|[Pp]atent"
    "|[Rr]esolution"
    "|COVID|ISO|DC|RFC|EU|UN"
)
"""What is numbered, and so named and not counted."""
_ORDINALS = "third|fourth|fifth|sixth|seventh|eighth|ninth|tenth|twelfth|twentieth|hundredth"
_NOT_A_THING = (
    r"of|to|or|and|but|in|on|at|by|for|as|than|the|a|that|who|whose|which|more|less|again|off|did|do|does|said|say|says"
    r"|think|thought|felt|feel|went|came|gave|took|made|knew|saw|live|got|lost|\w+(?:ed|ly)|will|would|can|could|may"
    r"|is|are|was|were|has|have|had|never|not|higher|lower|larger|smaller|greater|fewer|better|worse|longer|shorter"
    r"|faster|slower|older|younger|cheaper|dearer|bigger|heavier"
)
"""What follows a share, and not the thing that an ordinal counts: *a third of*, *a third were*, *a third more*."""
_NOT_A_FIGURE = re.compile(
    rf"\b{_DAYS}\.? \d{{1,2}}(?:st|nd|rd|th)?\b(?!,\d)|\b\d{{1,2}}(?:st|nd|rd|th)? (?:of )?{_DAYS}\b"
    r"|\b\d+(?:st|nd|rd|th)\b|\b\d{3,4}s\b|\b(?:\d{1,2}:\d\d|\d{1,2} ?[ap]\.?m\.?)(?!\w)"
    rf"|\b(?:{_OF_A_WORK})[- –]\d[\d,]*(?:\.\d+)?(?:[-–]\d+)*"
    r"|\b(?:first|second|other|latter|former|better|earlier|later|last|top|bottom|upper|lower) (?:half|third|quarter)\b"
    rf"|\b[Aa]n? (?:{_ORDINALS}) (?!(?:{_NOT_A_THING})\b)(?=[a-z])"
    rf"|\b(?:there (?:is|was|are|were|(?:has|had|have|may|might) (?:been|be))|and|or|is|was)"
    rf" an? (?:{_ORDINALS})(?=[.;:,?!])"
    r"|https?:\S+|\S+@\S+|\(\d{1,4}(?:[–-]\d{1,4})?\)|\[\d{1,3}(?:[–,-] ?\d{1,3}){0,6}\]"
    r"|\b[A-Z]\w+ \d+ (?:list|index)\b|\b[A-Za-z]+\d[\w.]*|\b\d+[A-Za-z]+\d*\b|\b24/7\b|\b\d{1,4}/\d{1,2}/\d{2,4}\b"
)
"""Dates, times, ordinals, decades, places in a work, and names with a number in them."""
_FIGURE = re.compile(
    rf"(?P<among>(?P<few>{_NUMERAL}|{_SPELT}) of (?:the |its |their |his |her |all |some )?(?P<many>{_NUMERAL}"
    rf"|{_SPELT})"
    r"(?![\w-]| (?:and|or) \w))|"
    rf"(?P<of>(?P<some>{_NUMERAL}|{_SPELT}) (?:out of(?: every)?|in(?: every)?) (?P<all>{_NUMERAL}|{_SPELT})(?![\w-]|"
    rf" (?:and|or) \w))"
    rf"|(?P<part>\b(?P<tops>an?|one|two|three|four|five|six|seven|eight|nine|\d)[- ](?P<part_of>"
    rf"half|halves|third|quarter|fourth|fifth|sixth|seventh|eighth|ninth|tenth|twelfth|twentieth|hundredth)s?\b"
    r"(?! (?:of a |an? )?(?:century|hour|time|place|party|person|world|generation|grade|year|draft|way|kind"
    r"|edition)\b))"
    rf"|(?P<halved>\bhalf (?:of|the|a million|a billion)\b)"
    rf"|(?P<times>\b(?:twice|thrice|(?:{_NUMERAL}|{_SPELT}) times) (?:as|the|more|less|higher|lower|larger|greater"
    rf"|likelier|that|those)\b"
    r"|\b(?:doubled|tripled|trebled|quadrupled|halved)\b)"
    rf"|(?P<plain>(?<![\w.,/:’'–-])(?P<sign>[$£€¥]|US\$|A\$|C\$)?\s?(?P<value>{_NUMERAL}|(?<![\w-]){_SPELT}(?![\w]))"
    r"(?P<great>[- ](?:hundred )?(?:thousand|million|billion|trillion))?"
    r"(?P<unit>\s?(?:%|‰)|[- ](?:per ?cent|percent(?:age)?(?: points?)?)\b"
    r"|[- ](?:dollars?|pounds?|euros?|cents?|pence|shillings?|francs?|marks?|guineas?|crowns?|rupees?|yen|yuan)\b"
    r"|[- ]?(?:[kcmμµn]?m[²³23]?|k?g|mg|ml|ha|km/h|°C?)(?![\w’'])"
    r"|[- ](?:yards?|feet|foot|inch(?:es)?|miles?|furlongs?|fathoms?)(?![\w’'])"
    r"|[- ](?:m\.?y|Ma|seconds?|minutes?|hours?|days?|nights?|weeks?|months?|years?|decades?|centur(?:y|ies)|times|ways"
    r"|o’clock|o'clock)\b"
    r"|[- ](?:[\w’'-]+ ){0,1}?(?:years?|months?|weeks?|days?)\b)?(?![\w]))",
    re.IGNORECASE,
)
_MONEY = re.compile(r"dollar|pound|euro|cent\b|cents|pence|shilling|franc|mark|guinea|crown|rupee|yen|yuan")
_MEASURE = re.compile(r"[kcmμµn]?m[²³23]?|k?g|mg|ml|ha|km/h|°c?|yards?|feet|foot|inch(?:es)?|miles?|furlongs?|fathoms?")
_TIME = re.compile(r"second|minute|m\.?y|ma\b|hour|day|night|week|month|year|decade|centur|times|ways|clock")
TELLING = 3
"""Digits, noughts at either end left out, of a figure that two texts hardly share by chance (from trial)."""
FEWEST_AMONG = 5
"""The least whole of which a part is told as a figure: *nine of the eleven*, and not *one of two*."""
SMALL = 20
"""The greatest count of which prose is full (from trial)."""


@dataclass(frozen=True, slots=True)
class Figure:
    """A figure and where it stands."""

    span: Span
    """In the text that was read."""
    kind: FigureKind
    value: float
    """A share as part of one; everything else as it is counted."""

    @property
    def is_telling(self) -> bool:
        """Whether two texts hardly have it by chance: three digits and more that are no noughts.

        >>> [figure.is_telling for figure in list_figures("38,600 pounds, 500 men and 20 percent")]
        [True, False, False]
        """
        return len(f"{self.value:.6g}".replace(".", "").strip("0").partition("e")[0]) >= TELLING


@lru_cache(maxsize=16384)
def list_figures(text: str) -> tuple[Figure, ...]:
    """The figures of a text in order; not dates, ordinals, or places in a work.

    **Source**: common practice; the kinds are our own.

    >>> [(f.kind, f.value) for f in list_figures("In 1923 four-fifths of 2,300 men earned £61, or 40 percent less.")]
    [('year', 1923.0), ('share', 0.8), ('count', 2300.0), ('money', 61.0), ('share', 0.4)]
    """
    hidden = _NOT_A_FIGURE.sub(lambda found: "\u2007" * len(found.group()), text)
    figures = (_read(found) for found in _FIGURE.finditer(hidden))
    return tuple(figure for figure in figures if figure is not None)


def _read(found: re.Match[str]) -> Figure | None:
    span = Span(found.start() + len(found.group()) - len(found.group().lstrip()), found.end())
    if found["among"]:
        few, many = _value(found["few"]), _value(found["many"])
        return Figure(span, "share", few / many) if FEWEST_AMONG <= many < 1000 * few and few < many else None
    if found["of"]:
        some, every = _value(found["some"]), _value(found["all"])
        if not 0 < some < every or some != int(some) or every - some > 1000:
            return None
        return Figure(span, "share", some / every)
    if found["part"]:
        of = _PARTS[found["part_of"].lower()]
        return Figure(span, "share", (1 if found["tops"].lower() in ("a", "an") else _value(found["tops"])) / of)
    if found["halved"]:
        great = found["halved"].lower().rpartition(" ")[2]
        return Figure(span, "count", 0.5 * _GREAT[great]) if great in _GREAT else Figure(span, "share", 0.5)
    if found["times"]:
        first = found["times"].split()[0].lower()
        named = {"twice": 2, "thrice": 3, "doubled": 2, "tripled": 3, "trebled": 3, "quadrupled": 4, "halved": 0.5}
        return Figure(span, "share", float(named[first] if first in named else _value(first)))
    value = _value(found["value"])
    great = (found["great"] or "").strip(" -").lower()
    for word in great.split():
        value *= 100 if word == "hundred" else _GREAT[word]
    return Figure(span, *_kind(found, value, great))


def _kind(found: re.Match[str], value: float, great: str) -> tuple[FigureKind, float]:
    unit = (found["unit"] or "").lower()
    if "%" in unit or "per" in unit or "‰" in unit:
        return "share", value / 100
    if found["sign"] or _MONEY.search(unit):
        return "money", value
    if _TIME.search(unit) or _MEASURE.fullmatch(unit.strip(" -")):
        return "small", value
    bare = found["value"].isdigit() and len(found["value"]) == 4 and not great
    if bare and 1000 <= value < 2100:
        return "year", value
    whole = value == int(value)
    return ("small" if whole and value <= SMALL else "count"), value


def _value(words: str) -> float:
    return float(number_value(words.replace("\u2007", " ")))


def holds(figures: Iterable[Figure], wanted: Figure, roughly: bool = False) -> bool:
    """Whether a figure of this value is among them, a share said in any way: *four-fifths*, *80 percent*, *.8*.

    Args:
        figures: Those of a source.
        wanted: That of the draft.
        roughly: Whether a twentieth more or less will do, where the draft says *about*.

    >>> holds(list_figures("Of the zinc 80 percent stayed."), list_figures("four-fifths of the zinc")[0])
    True
    """
    margin = 0.05 if roughly else 0.0005
    return any(
        abs(value - target) <= margin * max(abs(target), 1e-9)
        for figure in figures
        for value in said_as(figure)
        for target in said_as(wanted)
    )


def said_as(figure: Figure) -> tuple[float, ...]:
    """The values that a figure may be written as: a share as a part, and as a percentage."""
    return (figure.value, figure.value * 100) if figure.kind == "share" else (figure.value,)
