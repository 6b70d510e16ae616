"""Type on the page: face, size, spacing, margins, indents."""

from __future__ import annotations

import re
from collections.abc import Iterator

from fairhand.brief.hit import Hit
from fairhand.brief.layout import Sentence
from fairhand.brief.numbers import COUNT, number_value

_FACES = (
    "Times New Roman", "Times", "Arial", "Calibri", "Cambria", "Garamond", "EB Garamond", "Georgia", "Helvetica",
    "Verdana", "Courier New", "Courier", "Palatino Linotype", "Palatino", "Book Antiqua", "Bookman Old Style",
    "Century Schoolbook", "Century", "Baskerville", "Aptos", "Tahoma", "Trebuchet MS", "Lucida Sans Unicode",
    "Lucida Sans", "Computer Modern", "Liberation Serif", "Liberation Sans", "Gill Sans", "Open Sans", "Noto Serif",
    "Noto Sans", "Source Serif", "Constantia", "Didot", "Bodoni", "Caslon", "Minion Pro", "Charter", "Carlito",
    "Tinos", "Arimo", "Franklin Gothic", "Futura",
)  # fmt: skip
_FACE = re.compile(
    r"\b(?:" + "|".join(f"(?i:{f})" if " " in f else f for f in sorted(_FACES, key=len, reverse=True)) + r"|TNR)\b"
)
_WRITTEN = {face.lower(): face for face in _FACES} | {"tnr": "Times New Roman"}
_FACED = re.compile(rf"{_FACE.pattern},? (?P<n>[89]|1\d|2[0-4])(?!\d|\.\d|[ -]?(?:pt|point|inch|cm|pages|words))")
_SIZE = re.compile(
    rf"(?<![\d.,])(?P<a>{COUNT})[- ]?(?:pt\b|point\b)(?! (?:scale|lead))|\b(?:font |type "
    rf"|letter )?size:? (?:of )?(?P<b>\d{{1,2}})(?![\d.]\d| ?pages)",
    re.IGNORECASE,
)
_SPACING_WORDS = r"(?P<w{0}>double|single|triple|1\.15|1\.5|one[- ]and[- ]a[- ]half|1½|2\.0|1\.0|2)"
_SPACING = re.compile(
    rf"\b{_SPACING_WORDS.format(1)}(?:-| )?(?:line[- ])?spac(?:ed|ing|e)\b|\b(?:line[- ])?spacing(?: (?:of|at|is"
    rf"|should be|must be))?:?\s(?:of )?{_SPACING_WORDS.format(2)}\b"
    rf"|\bspaced (?:at )?{_SPACING_WORDS.format(3)}\b|\b{_SPACING_WORDS.format(4)} lines?\b(?= spac)",
    re.IGNORECASE,
)
_LENGTH = (
    r"(?P<{0}>\d{{1,2}}(?:\.\d{{1,2}})?|one[- ]and[- ]a[- ]half|one|two|half an|half"
    r"|an?)[- ]?(?P<{1}>in(?:ch(?:es)?)?\b\.?|\"|''|cm\b|mm\b|centimet(?:re|er)s?)"
)
_MARGINS = re.compile(
    rf"{_LENGTH.format('a', 'ua')}(?:[- ](?:wide |page )?margins?\b|(?: \w+)? margins?)|\bmargins?(?: (?:should be"
    rf"|must be|are|is|of(?: at least)?|set (?:at|to)|all round|on all sides"
    rf"|at least)){{0,2}}:?\s{{0,2}}\(?(?:of )?{_LENGTH.format('b', 'ub')}",
    re.IGNORECASE,
)
_INDENT = re.compile(
    rf"\bindent(?:ed|ation|s)?\b(?: (?:the )?(?:first line|each paragraph|paragraphs?|of|by|to|is|should be|must be"
    rf"|are)){{0,4}}:?\s{{0,2}}{_LENGTH.format('a', 'ua')}|{_LENGTH.format('b', 'ub')}[- ](?:paragraph "
    rf"|first-line )?indent",
    re.IGNORECASE,
)


def _measure(number: str, unit: str) -> str:
    number = number.lower().replace("-", " ")
    words = {"one": 1.0, "two": 2.0, "an": 1.0, "a": 1.0, "half": 0.5, "half an": 0.5, "one and a half": 1.5}
    value = words[number] if number in words else float(number)
    unit = unit.lower().strip(".")
    short = "cm" if unit.startswith("c") else "mm" if unit == "mm" else "in"
    return f"{value:g} {short}"


def _either(match: re.Match[str]) -> str:
    return _measure(match["a"] or match["b"], match["ua"] or match["ub"])


def find_faces(sentence: Sentence) -> Iterator[Hit]:
    """The typefaces that a sentence names, each as its maker writes it."""
    text = sentence.text
    for match in _FACE.finditer(text):
        name = _WRITTEN[match.group().lower()]
        near = text[max(0, match.start() - 40) : match.end() + 40]
        if name in {"Times", "Century", "Charter", "Georgia", "Caslon", "Futura"} and not re.search(
            r"\b(?:font|typeface|pt|point|type|size)\b", near
        ):
            continue
        yield "font", name, match.start(), match.end()


def find_sizes(sentence: Sentence) -> Iterator[Hit]:
    """The size of type, in points."""
    text = sentence.text
    for match in _FACED.finditer(text):
        yield "font-size", f"{int(match['n'])} pt", match.start(), match.end()
        return
    for match in _SIZE.finditer(text):
        size = number_value(match["a"] or match["b"])
        near = text[max(0, match.start() - 45) : match.end() + 40]
        if not 6 <= size <= 30 or not (
            _FACE.search(near)
            or re.search(r"pt\b", match.group(), re.IGNORECASE)
            or re.search(
                r"\b(?:font|typed?|typeface|text|serif|characters|lettering|spac(?:ed|ing))\b",
                f"{near} {sentence.context}",
                re.IGNORECASE,
            )
        ):
            continue
        if other := re.search(r"\b(\d{1,2})(?:pt| ?point)? or $", text[: match.start()]):
            yield "font-size", f"{other[1]} pt", other.start(), match.end()
        yield "font-size", f"{size:g} pt", match.start(), match.end()
        if later := re.match(r"(?:pt| ?point)? or (\d{1,2})\b(?! ?(?:pages|words))", text[match.end() :]):
            yield "font-size", f"{later[1]} pt", match.start(), match.end() + later.end()
        return


def find_spacing(sentence: Sentence) -> Iterator[Hit]:
    """The line spacing."""
    names = {
        "double": "double",
        "2": "double",
        "2.0": "double",
        "single": "single",
        "1.0": "single",
        "triple": "triple",
        "1.15": "1.15",
    }
    for match in _SPACING.finditer(sentence.text):
        word = next(w for w in (match["w1"], match["w2"], match["w3"], match["w4"]) if w).lower()
        yield "spacing", names.get(word, "1.5"), match.start(), match.end()
        return


def find_margins(sentence: Sentence) -> Iterator[Hit]:
    """The margins, in the unit of the sheet."""
    for match in _MARGINS.finditer(sentence.text):
        yield "margins", _either(match), match.start(), match.end()
        return


def find_indents(sentence: Sentence) -> Iterator[Hit]:
    """The indent of a paragraph's first line; hanging indents and quotations are left alone."""
    match = _INDENT.search(sentence.text)
    if match and not re.search(
        r"hanging|quotation|quote", sentence.text[max(0, match.start() - 40) : match.end()], re.IGNORECASE
    ):
        yield "paragraph-indent", _either(match), match.start(), match.end()
