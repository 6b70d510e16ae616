"""Numbers in a form that no manual has: run on to their unit, with the sign and the word, with the wrong ending.

And one number with one noun in words and in figures, in the same paper.

**Source**: APA 7, 6.32–6.34, 6.44; Chicago 17, 9.2–9.7, 10.49; MLA 9, 2.126–2.130; the SI brochure, 5.4.3, on the blank
between a number and its unit (all from memory).
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from fairhand.copyedit.own_prose import OwnParagraph
from fairhand.model.span import Span

Kind = Literal["run on", "sign and word", "ending", "mixed"]
_UNITS = (
    "km|cm|mm|kg|mg|µg|μg|ml|mL|kHz|MHz|GHz|MB|GB|TB|kW|MW|GW|kWh|MWh|mph|lbs?|ft|hrs?|mins?|kilomet(?:er|re)s?|met(?:er|re)s?"
    "|kilograms?|grams?|miles|hours|minutes|days|weeks|months|years|percent"
)
_RUN_ON = re.compile(rf"(?<![\w.,/£$€–-])(\d+(?:[.,]\d+)*)({_UNITS})(?![\w²³/-])")
_FILM = re.compile(r"(?:8|16|35|70)mm|\d+mm(?= (?:film|lens|camera|gun|guns|shell|shells|cannon|mortar))")
_TWICE = re.compile(
    r"\$\d[\d,.]*(?: (?:thousand|million|billion|trillion))? (dollars)\b"
    r"|£\d[\d,.]*(?: (?:thousand|million|billion))? (pounds)\b"
    r"|€\d[\d,.]*(?: (?:thousand|million|billion))? (euros)\b|\d ?% (percent|per cent)\b"
)
_ENDING = re.compile(r"(?<![\w.,-])(?<!\d )(\d+)(st|nd|rd|th)\b")
_ENDS = {"1": "st", "2": "nd", "3": "rd"}
_WORDS = ("two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")
_IN_WORDS = re.compile(rf"\b({'|'.join(_WORDS)}) ([a-z]{{3,}}s)\b", re.IGNORECASE)
_IN_FIGURES = re.compile(r"\b([A-Za-z]+) ([2-9]|10) ([a-z]{3,}s)\b")
_BEFORE = frozenset(
    "of by the for are with only into from have were last then and or in to at as about between among all these those"
    " had has contains contain than first".split()
)
"""Words before a count; after others the figure may be a label: *pattern 5 samples*."""
_MEASURED = frozenset(
    "years months weeks days hours minutes seconds times percent degrees points miles metres meters".split()
)


@dataclass(frozen=True, slots=True)
class NumberForm:
    """A number in another form than it should have."""

    span: Span
    """Its place in the draft, with its unit or noun."""
    place: Span
    """What is to be put otherwise."""
    instead: str
    kind: Kind
    written: str
    """The words of the place."""


def find_number_forms(own: OwnParagraph) -> Iterator[NumberForm]:
    """The numbers of a paragraph that are in no manual's form.

    >>> [(f.written, f.instead) for f in find_number_forms(OwnParagraph("5km, $3 million dollars, the 22th.", 0, ()))]
    [('5km', '5 km'), ('$3 million dollars', '$3 million'), ('22th', '22nd')]
    """
    text = own.text

    def form(found: re.Match[str], place: Span, instead: str, kind: Kind) -> NumberForm:
        return NumberForm(Span(*found.span()).shifted(own.start), place.shifted(own.start), instead, kind, found[0])

    for found in _RUN_ON.finditer(text):
        if not _FILM.match(text, found.start()):
            yield form(found, Span(*found.span()), f"{found[1]} {found[2]}", "run on")
    for found in _TWICE.finditer(text):
        without = text[found.start() : found.start(found.lastindex or 0)].rstrip()
        yield form(found, Span(*found.span()), without, "sign and word")
    for found in _ENDING.finditer(text):
        number = found[1]
        end = "th" if number[-2:] in ("11", "12", "13") else _ENDS.get(number[-1], "th")
        if found[2] != end:
            yield form(found, Span(*found.span()), number + end, "ending")


def find_mixed_numbers(paragraphs: Sequence[OwnParagraph]) -> Iterator[NumberForm]:
    """Numbers to ten before one noun that stand in figures here and in words elsewhere; measures are let be.

    >>> found, = find_mixed_numbers([OwnParagraph("He saw four ships. Then 4 ships left.", 0, ())])
    >>> found.written, found.instead
    ('4 ships', 'four')
    """
    by_word = {
        (_WORDS.index(found[1].casefold()) + 2, found[2].casefold())
        for own in paragraphs
        for found in _IN_WORDS.finditer(own.text)
        if found[2].casefold() not in _MEASURED
    }
    told: set[tuple[int, str]] = set()
    for own in paragraphs:
        for found in _IN_FIGURES.finditer(own.text):
            key = int(found[2]), found[3].casefold()
            if found[1].casefold() not in _BEFORE or key not in by_word or key in told:
                continue
            told.add(key)
            span, place = Span(found.start(2), found.end()), Span(*found.span(2))
            written = own.text[span.start : span.end]
            yield NumberForm(span.shifted(own.start), place.shifted(own.start), _WORDS[key[0] - 2], "mixed", written)
