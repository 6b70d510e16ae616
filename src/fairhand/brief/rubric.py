"""The rubric: what is marked, and how much each criterion weighs."""

from __future__ import annotations

import re
from dataclasses import dataclass

from fairhand.brief.layout import Passage, Sheet
from fairhand.brief.wording import ask
from fairhand.model.requirement import Requirement

_UNIT = r"(?P<unit>%|per ?cent|percent|points?|marks?|pts?\.?)"
_CELL = re.compile(rf"\(?(?P<n>\d{{1,3}}(?:\.\d)?) ?(?:{_UNIT})?(?: each)?\)?(?: ?/ ?\d+)?", re.IGNORECASE)
_BRACKET = re.compile(
    rf"(?P<name>[^\W\d_](?:[\w'/&-]|[ ](?!and the |graded|three criteria)){{1,70}}?) ?[(\[](?:worth "
    rf"|up to )?(?P<n>\d{{1,3}}(?:\.\d)?) ?(?:{_UNIT})?[)\]]",
    re.IGNORECASE,
)
_LISTED = re.compile(
    rf"(?:^|[:,;/.(]|\band\b)[ ]*(?P<name>[^\W\d_](?:[\w'&()-]|[ /]){{1,70}}?)[ ]?(?::|-|–|=|—|[ ])[ ]?"
    rf"(?P<n>\d{{1,3}}(?:\.\d)?)(?: ?{_UNIT})?(?=[ ]*(?:$|[,;/.)](?!\d)|and\b))",
    re.IGNORECASE,
)
_AHEAD = re.compile(
    rf"(?P<n>\d{{1,3}}(?:\.\d)?) ?{_UNIT}(?: for| of the (?:grade|mark) for| on|:| -)?(?: the"
    rf"| your)? (?P<name>[^\W\d_](?:[\w'/&-]|[ ](?!and \d)){{1,60}})",
    re.IGNORECASE,
)
_KEY = re.compile(
    r"\b(?:rubric|grad(?:ing|ed|es?)|mark(?:s|ed|ing)?|points|criteri\w+|assess(?:ment|ed)|weight\w*|evaluat\w+|scor\w+"
    r"|how (?:it|the \w+) (?:is|will be))\b",
    re.IGNORECASE,
)
_HEADER_POINTS = re.compile(r"\b(?:points?|marks?|pts|score)\b", re.IGNORECASE)
_HEADER_PERCENT = re.compile(r"\b(?:weight(?:ing)?|percent(?:age)?|%|per cent)\b", re.IGNORECASE)
_NOT = re.compile(
    r"\b(?:total|of (?:the |your )?(?:course|module|final|overall|unit)|late|per day|each day|leeway|tolerance"
    r"|course grade|extra credit|out of|exam(?:ination)?|deduct\w*|off\b|penalt\w*|minus|participation"
    r"|attendance)\b",
    re.IGNORECASE,
)
_LATE = re.compile(
    r"\b(?:late(?:ness)?|after the (?:deadline|due)|overdue|penalt\w+|capped|first day|hours"
    r"|each (?:further|additional))\b",
    re.IGNORECASE,
)
"""What tells of lateness weighs nothing in a rubric, for all its numbers."""
_PAIR = re.compile(
    rf"(?:[A-Z]\w+(?: \w+){{0,2}}: )?(?P<name>[^\W\d_][\w'&/ -]{{1,60}}?)[ :]+(?P<n>\d{{1,3}}) ?{_UNIT}", re.IGNORECASE
)
"""A cell that holds a criterion and its weight."""
_HEADED = re.compile(r"^(?:points|marks|grading|total|rubric|criteria)\b", re.IGNORECASE)
_AWARDED = re.compile(
    r"^.{0,60}?\b(?:awarded|given|graded|marked|assessed|based|evaluated|weighed|mark|grade)\b.{0,20}?\b(?:for|on"
    r"|criteria:?|weighs?)\b:? ",
    re.IGNORECASE,
)
_LEADING = re.compile(
    r"^(?:and|or|the|for|on|criteria|graded on|marked on|weighs?|weigh|examiners weigh|of which|with|are|is"
    r"|three criteria)\s+",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True)
class _Weight:
    name: str
    number: float
    unit: str
    passage: Passage
    start: int
    end: int


def _unit(word: str | None, header: str) -> str:
    if word:
        return "percent" if word[0] == "%" or word.lower().startswith("per") else "points"
    return header


def _name(words: str) -> str:
    words = _AWARDED.sub("", words)
    previous = ""
    while previous != words:
        previous, words = words, _LEADING.sub("", words.strip(" \t,.;:-–*•")).strip()
    return words


def _pairs(passage: Passage, pairs: list[re.Match[str]], header: str) -> list[_Weight]:
    """The weights in a row of which each cell holds a criterion and its weight."""
    out, at = [], 0
    for pair in pairs:
        start = passage.text.index(pair.group(), at)
        at = start + len(pair.group())
        unit = _unit(pair["unit"], header)
        out.append(_Weight(_name(pair["name"]), float(pair["n"]), unit, passage, start + pair.start("name"), at))
    return out


def _row(passage: Passage, header: str) -> list[_Weight]:
    """The weight in a row of a table: a cell of words, then (or before) a cell of figures."""
    cells = [c.strip() for c in passage.text.split("\t")]
    start = 0
    if (
        len(cells) >= 3
        and passage.key
        and not _CELL.fullmatch(cells[1])
        and _CELL.fullmatch(cells[2])
        and _KEY.search(cells[0])
    ):
        start = passage.text.index("\t") + 1
        cells = cells[1:]
    paired = [_PAIR.fullmatch(cell) for cell in cells]
    if len(paired) > 1 and all(paired):
        return _pairs(passage, [pair for pair in paired if pair], header)
    numbers = [(i, m) for i, c in enumerate(cells) if (m := _CELL.fullmatch(c))]
    if not numbers:
        return []
    i, match = next(((i, m) for i, m in numbers if i > 0), numbers[0])
    name = cells[0] if i > 0 else cells[1] if len(cells) > 1 else ""
    if not any(c.isalpha() for c in name):
        return []
    end = passage.text.index(cells[i], start) + len(cells[i]) if i > 0 else len(passage.text)
    return [_Weight(_name(name), float(match["n"]), _unit(match["unit"], header), passage, start, end)]


def _weights(passage: Passage, header: str) -> list[_Weight]:
    if passage.kind == "row":
        return _row(passage, header)
    text = passage.text
    if not any(c.isdigit() for c in text):
        return []
    pattern_hits: list[re.Match[str]] = list(_BRACKET.finditer(text))
    if not pattern_hits:
        listed = list(_LISTED.finditer(text))
        united = [hit for hit in listed if hit["unit"]]
        whole = len(listed) == 1 and listed[0].start() == 0 and listed[0].end() >= len(text) - 1
        pattern_hits = united if len(united) >= 2 else listed if whole or len(listed) >= 3 else []
    if (
        not pattern_hits
        and len(ahead := list(_AHEAD.finditer(text))) >= 1
        and (len(ahead) >= 2 or ahead[0].start() == 0)
    ):
        pattern_hits = ahead
    out = []
    for match in pattern_hits:
        name = _name(match["name"])
        if name:
            shift = match["name"].rfind(name)
            start = match.start("name") + max(shift, 0) if match.start("n") > match.start("name") else match.start()
            out.append(_Weight(name, float(match["n"]), _unit(match["unit"], header), passage, start, match.end()))
    return out


def find_rubric(sheet: Sheet) -> list[Requirement]:
    """The criteria with their weights, where two or more stand together."""
    groups: list[list[_Weight]] = []
    header = ""
    gap = 0
    for passage in sheet.passages:
        if passage.kind == "heading" and _HEADED.search(passage.text):
            header = (
                "percent"
                if _HEADER_PERCENT.search(passage.text)
                else "points"
                if _HEADER_POINTS.search(passage.text)
                else ""
            )
            groups.append([])
            continue
        where = f"{passage.heading} | {passage.lead}"
        if passage.kind == "heading" or (passage.kind == "row" and not any(c.isdigit() for c in passage.text)):
            header = (
                "percent"
                if _HEADER_PERCENT.search(passage.text)
                else "points"
                if _HEADER_POINTS.search(passage.text)
                else header
                if passage.kind == "row"
                else ""
            )
        if not header and passage.key and _KEY.search(passage.key):
            header = "points" if _HEADER_POINTS.search(passage.key) else ""
        weights = [
            w
            for w in _weights(passage, header if _KEY.search(where) or header else "")
            if not (_NOT.search(w.name) or _HEADED.fullmatch(w.name))
        ]
        if passage.kind != "row" and _LATE.search(f"{passage.key} {passage.heading} {passage.text}"):
            weights = []
        if weights and _NOT.search(passage.text) and len(weights) < 2:
            weights = []
        if not weights:
            gap += 1
            if gap > 1 or passage.kind == "heading":
                groups.append([])
            continue
        gap = 0
        if not groups:
            groups.append([])
        if len(weights) >= 3:
            # A list in one passage is a rubric by itself.
            groups += [weights, []]
        else:
            groups[-1] += weights
    found = []
    for group in groups:
        bare = all(not w.unit for w in group)
        total = sum(w.number for w in group)
        keyed = any(
            _KEY.search(f"{w.passage.context} {w.passage.text[max(0, w.start - 200) : w.start]}") for w in group
        )
        if len(group) < 2 or not (keyed or total == 100):
            continue
        if (len({w.unit for w in group}) > 1 and total != 100) or (
            bare and not (keyed and total % 5 == 0 and (len(group) > 2 or total == 100))
        ):
            continue
        for w in group:
            weight = int(w.number) if w.number.is_integer() else w.number
            found.append(
                ask(
                    sheet,
                    "rubric",
                    {"criterion": w.name, "weight": weight, "unit": w.unit or "points"},
                    w.passage.span(w.start, w.end),
                )
            )
    return found
