"""The lines of a sheet, grouped into passages as the eye groups them."""

from __future__ import annotations

import re
from dataclasses import dataclass, field, replace
from itertools import pairwise

_RULE = re.compile(r"[\s\-=_+*|.~#<>]{3,200}")
_QUOTE_PREFIX = re.compile(r">+\s?")
_ARROWS = re.compile(r"^[ \t]*>>[ \t]*\S", re.MULTILINE)
_QUOTES = re.compile(r"^[ \t]*>(?![>])", re.MULTILINE)
_MARKER = re.compile(
    r"(?:\[[ xX]?\]|_{2,12}|[-*•◦▪●‣–—☐□]{1,2}|#{1,6}|\(?(?:\d{1,2}|[A-Za-z]|[ivx]{1,5})[.):])\s+(?=\S)"
    r"|\d{1,2}(?:\.\d{1,2}){1,3}\.?\s+(?=[A-Z])|[•◦▪●‣☐□]|\*(?=[^\s*][^*\n]*$)"
)
GAP = re.compile(
    r"[ \u00a0]*(?:\.{3,200}|(?:\. ){3,100}\.?|…{2,60}|\||\t|(?<= )\.\.(?= ))[ \t|.\u00a0]*"
    r"|(?<![.?!:;,\s])[ \u00a0]{2,}|(?<=[.,;])[ \u00a0]{3,}"
)
"""What parts the cells of a row: dots, a bar, a tab, or a wide blank."""

_DATE = re.compile(
    r"(?:Mon|Tue|Wed|Thu|Fri|Sat|Sun)[a-z]{0,6}[ ,]|(?:Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov"
    r"|Dec)[a-z]{0,6}\.? \d|\d{1,2}/\d{1,2}\b|\d{1,2} [A-Z][a-z]{2,8}\b[ ,:-]"
)
_LONGEST_ROW = 120
_SHORTEST_WRAPPED = 45
_LONGEST_WRAPPED = 130
_LABEL = re.compile(r"[A-Z][\w '’/&()-]{0,38}:\s")


@dataclass(frozen=True, slots=True)
class Line:
    """One line with words on it."""

    start: int
    """First code point after indent and marker."""
    end: int
    """Code point after its last visible one."""
    indent: int
    """Columns before its marker or first word."""
    marker: str
    """Its bullet or number, or empty."""
    text: str
    """Its words."""
    column: int
    """Column of its second cell, where it has several; else -1."""
    gap: int
    """Column of its last cell, where it has several; else -1."""
    shouted: bool
    """Whether it stands out by its capitals."""


@dataclass
class Block:
    """Lines that the eye reads as one: a heading, an item, a row of a table, or a paragraph."""

    lines: list[Line] = field(default_factory=list)
    after_blank: bool = False


def _read_line(text: str, start: int, end: int, *, arrowed: bool = False) -> Line | None:
    raw = text[start:end]
    if not raw.strip() or (_RULE.fullmatch(raw) and not any(c.isalnum() for c in raw)):
        return None
    at = len(raw) - len(raw.lstrip())
    if prefix := _QUOTE_PREFIX.match(raw, at):
        at = prefix.end()
    at += len(raw[at:]) - len(raw[at:].lstrip(" \t|"))
    indent = at
    arrow = prefix.group().strip() if prefix and arrowed else ""
    marker = None if arrow else _MARKER.match(raw, at)
    if marker:
        at = marker.end()
    stop = len(raw.rstrip("| \t\r\n\f\v\x1c\x1d\x1e\x85\u2028\u2029"))
    if stop <= at:
        return None
    barred = raw.count("|", at, stop) > 1
    gaps = list(GAP.finditer(raw, at, stop)) if barred or stop - at <= _LONGEST_ROW else []
    words = raw[at:stop]
    return Line(
        start=start + at,
        end=start + stop,
        indent=indent,
        marker=marker.group().strip() if marker else arrow,
        text=words,
        column=gaps[0].end() if gaps else -1,
        gap=gaps[-1].end() if gaps else -1,
        shouted=words.isupper() and sum(c.isalpha() for c in words) >= 3,
    )


def _width(lines: list[Line | None]) -> int:
    """The column at which the sheet's lines are wrapped; 0 where each line is a paragraph.

    Only a line whose sentence the next line carries on, in lower case, tells that lines are wrapped at all.
    """
    pairs = [(line, after) for line, after in pairwise(lines) if line and after and not after.marker]
    wrapped = [
        line.indent + len(line.text)
        for line, after in pairs
        if len(line.text) >= _SHORTEST_WRAPPED and after.text[0].islower()
    ]
    if not wrapped or max(wrapped) > _LONGEST_WRAPPED:
        return 0
    most = max(wrapped) + 8
    return max(length for line, _ in pairs if (length := line.indent + len(line.text)) <= most)


def _continues(previous: Line, line: Line, block: Block, width: int) -> bool:
    """Whether ``line`` carries on the sentence of the line before it."""
    if line.marker or width == 0 or line.shouted != previous.shouted:
        return False
    first = block.lines[0]
    if previous.gap >= 0:
        return line.gap < 0 and line.indent >= previous.gap - 2
    if first.gap >= 0 and line.gap < 0:
        return line.indent >= first.gap - 2 and not _breaks(previous, line, width)
    if line.gap >= 0:
        return False
    if (
        first.marker
        and line.indent <= first.indent
        and not (line.text[0].islower() and previous.text[-1] not in ".?!:")
    ):
        return False
    return not _breaks(previous, line, width)


def _breaks(previous: Line, line: Line, width: int) -> bool:
    """Whether the writer ended the line on purpose: the next word would have fitted."""
    room = width - previous.indent - len(previous.text)
    fits = len(line.text.split(None, 1)[0]) + 1 < room - 4
    if _DATE.match(line.text) and fits:
        return True
    if _LABEL.match(line.text) and (fits or previous.text[-1] in ".;!?:"):
        return True
    if abs(line.indent - previous.indent) >= 2 and previous.text[-1] in ".?!:" and fits:
        return True
    return (
        fits and (line.text[0].isupper() or not line.text[0].isalpha()) and (room > 24 or previous.text[-1] in ".?!:;")
    )


def read_blocks(text: str) -> list[Block]:
    """The blocks of ``text``, in order; every visible code point of a line lies in exactly one."""
    lines: list[Line | None] = []
    at = 0
    # Two arrows begin an item where none quotes a letter that is answered.
    arrowed = bool(_ARROWS.search(text)) and not _QUOTES.search(text)
    for raw in text.splitlines(keepends=True):
        lines.append(_read_line(text, at, at + len(raw), arrowed=arrowed))
        at += len(raw)
    if 2 * sum(line.shouted for line in lines if line) > sum(line is not None for line in lines):
        # Where all is written in capitals, capitals are no sign of a heading.
        lines = [line and replace(line, shouted=False) for line in lines]
    width = _width(lines)
    blocks: list[Block] = []
    blank = True
    for line in lines:
        if line is None:
            blank = True
            continue
        if blank or not blocks or not _continues(blocks[-1].lines[-1], line, blocks[-1], width):
            blocks.append(Block([line], after_blank=blank))
        else:
            blocks[-1].lines.append(line)
        blank = False
    return blocks
