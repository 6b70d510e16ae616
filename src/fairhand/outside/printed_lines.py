"""The pieces of print that OCR found on a page, put into lines again."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from statistics import median, quantiles

_SAME_LINE = 0.5
"""Heights of print by which the middles of two pieces of one line may differ."""
_OTHER_CELL = 1.5
"""Heights of print that part two cells of a row; a wide blank between words is less."""
_NEW_PARAGRAPH = 1.25
"""A distance between lines, as a multiple of the usual one, that begins a new paragraph."""

_FULL = 0.75
"""The share of half a page that a full line of a column fills."""
_LEAST_LINES = 5
"""Full lines that make a column."""


@dataclass(frozen=True, slots=True)
class Printed:
    """A piece of print in one line."""

    text: str
    """What it says."""
    corners: tuple[tuple[float, float], ...]
    """Its corners, x and y in pixels: top left, top right, bottom right, bottom left."""


@dataclass(frozen=True, slots=True)
class _Piece:
    """A piece on the page set straight."""

    text: str
    left: float
    right: float
    middle: float
    height: float


def lay_lines(printed: Sequence[Printed]) -> str:
    r"""The text of a page: a line for each line, cells parted by bars, a blank line between paragraphs.

    A page that lies askew is set straight first, by the slope of its lines.

    >>> def at(text: str, x: int, y: int) -> Printed:
    ...     return Printed(text, ((x, y), (x + 90, y), (x + 90, y + 20), (x, y + 20)))
    >>> lay_lines([at("40 marks", 300, 1), at("Argument", 0, 0), at("Form", 0, 25), at("Due Friday", 0, 80)])
    'Argument | 40 marks\nForm\n\nDue Friday'
    """
    return "\n\n".join(_lay_block(block) for block in _part_columns(_straighten(printed)))


def _part_columns(pieces: Sequence[_Piece]) -> list[list[_Piece]]:
    """The pieces in blocks, in reading order: a page in one column is one, a page in two is parted down its middle.

    Two columns are so many lines on either side that nearly fill it, as prose does and the cells of a table do not; a
    heading across both parts what is above it from what is below.
    """
    if not pieces:
        return []
    left, right = min(piece.left for piece in pieces), max(piece.right for piece in pieces)
    gutter = (left + right) / 2
    sides = [piece for piece in pieces if not piece.left < gutter < piece.right]
    for side in ([one for one in sides if one.right <= gutter], [one for one in sides if one.left >= gutter]):
        full = [one for one in side if one.right - one.left >= _FULL * (gutter - left)]
        if len(full) < _LEAST_LINES or 2 * len(full) < len(side):
            return [list(pieces)]
    blocks: list[list[_Piece]] = []
    before: bool | None = None
    for piece in sorted(pieces, key=lambda one: one.middle):
        across = piece.left < gutter < piece.right
        if across is not before:
            blocks += [[]] if across else [[], []]
        blocks[-2 if not across and piece.right <= gutter else -1].append(piece)
        before = across
    return [block for block in blocks if block]


def _lay_block(pieces: Sequence[_Piece]) -> str:
    """The text of pieces that stand in rows."""
    height = median(piece.height for piece in pieces)
    rows: list[list[_Piece]] = []
    for piece in sorted(pieces, key=lambda one: one.middle):
        if rows and piece.middle - median(one.middle for one in rows[-1]) <= _SAME_LINE * height:
            rows[-1].append(piece)
        else:
            rows.append([piece])
    middles = [median(piece.middle for piece in row) for row in rows]
    steps = [after - before for before, after in pairwise(middles)]
    usual = quantiles(steps, n=4, method="inclusive")[0] if len(steps) > 1 else 2 * height
    lines = [_join_row(rows[0], height)]
    for row, step in zip(rows[1:], steps, strict=True):
        lines += ["", _join_row(row, height)] if step > _NEW_PARAGRAPH * usual else [_join_row(row, height)]
    return "\n".join(lines)


def _straighten(printed: Sequence[Printed]) -> list[_Piece]:
    """The pieces turned back by the usual slope of the long ones."""
    wide = sorted((one for one in printed if one.text.strip()), key=_width)[-12:]
    slope = median(math.atan2(b[1] - a[1], b[0] - a[0]) for a, b in (one.corners[:2] for one in wide)) if wide else 0.0
    cosine, sine = math.cos(-slope), math.sin(-slope)
    pieces = []
    for one in printed:
        if text := " ".join(one.text.split()):
            xs = [x * cosine - y * sine for x, y in one.corners]
            ys = [x * sine + y * cosine for x, y in one.corners]
            pieces.append(_Piece(text, min(xs), max(xs), (min(ys) + max(ys)) / 2, max(max(ys) - min(ys), 1.0)))
    return pieces


def _width(one: Printed) -> float:
    return math.dist(*one.corners[:2])


def _join_row(row: Sequence[_Piece], height: float) -> str:
    pieces = sorted(row, key=lambda one: one.left)
    text = pieces[0].text
    for before, after in pairwise(pieces):
        text += (" | " if after.left - before.right > _OTHER_CELL * height else " ") + after.text
    return text
