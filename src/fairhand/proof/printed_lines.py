"""The lines of a proof as they were printed, each with its number and its type, read off its PDF.

A line's number is what stands before the text's left edge; the running head and foot are left out.
"""

from __future__ import annotations

import ctypes
from collections.abc import Sequence
from dataclasses import dataclass, field
from functools import lru_cache
from typing import TYPE_CHECKING

from fairhand.reading.pdfium import TURN

if TYPE_CHECKING:
    from pypdfium2 import PdfDocument

_SAME_LINE = 0.45
"""Share of the type's size within which two characters stand on one line, figures raised for notes included."""
_RAISED = 0.75
"""Share of the line's size below which a character is a raised or lowered figure."""


@dataclass(frozen=True, slots=True)
class Run:
    """Type of one kind."""

    text: str
    styles: tuple[str, ...] = ()
    """Out of ``italic``, ``bold`` and ``superscript``."""


@dataclass(frozen=True, slots=True)
class PrintedLine:
    """One line of one page."""

    page: int
    """As it is numbered; 0 for a title page that is not."""
    number: int
    """As it is printed beside it, from 1 on each page; 0 where none is, as beside a table or a footnote."""
    runs: tuple[Run, ...]
    left_pt: float
    """How far its first character stands from the left edge of the text."""
    top_pt: float
    """How far its foot stands from the top of the page."""

    @property
    def text(self) -> str:
        """What it says."""
        return "".join(run.text for run in self.runs)


@dataclass
class _Row:
    """A line under way."""

    base: float
    size: float
    left: float
    runs: list[tuple[str, tuple[str, ...]]] = field(default_factory=list)


@lru_cache(maxsize=4)
def read_printed_lines(
    pdf: bytes, margins_pt: tuple[float, float, float, float], first: int = 1
) -> tuple[PrintedLine, ...]:
    """The lines of every page in order.

    Args:
        pdf: A proof that was set here.
        margins_pt: The page's margins: top, right, bottom, left.
        first: The number of its first page: 0 where that is a title page without one.
    """
    import pypdfium2

    with TURN:
        document = pypdfium2.PdfDocument(pdf)
        try:
            pages = range(len(document))
            return tuple(line for number in pages for line in _read_page(document, number, margins_pt, number + first))
        finally:
            document.close()


def _read_page(
    document: PdfDocument, index: int, margins_pt: tuple[float, float, float, float], folio: int
) -> list[PrintedLine]:
    from pypdfium2 import raw

    page = document[index]
    height = page.get_height()
    top, _, bottom, left = margins_pt
    text = page.get_textpage()
    rows: list[_Row] = []
    numbers: list[tuple[float, str]] = []
    row: _Row | None = None
    x, y = ctypes.c_double(), ctypes.c_double()
    name, flags = ctypes.create_string_buffer(128), ctypes.c_int()
    for at in range(text.count_chars()):
        letter = chr(raw.FPDFText_GetUnicode(text, at))
        if letter in "\r\n\0":
            continue
        if letter == " " and raw.FPDFText_IsGenerated(text, at) == 1:
            if row:
                row.runs.append((letter, row.runs[-1][1]))
            continue
        raw.FPDFText_GetCharOrigin(text, at, x, y)
        if not bottom - 2 < y.value <= height - top:
            continue
        if x.value < left - 2:
            numbers.append((y.value, letter))
            continue
        size = raw.FPDFText_GetFontSize(text, at)
        raw.FPDFText_GetFontInfo(text, at, name, 128, flags)
        if row is None or abs(row.base - y.value) > _SAME_LINE * max(size, row.size):
            row = _Row(y.value, size, x.value)
            rows.append(row)
        elif size > row.size:  # it began with a raised figure, as a footnote does
            row.size, row.base = size, y.value
        row.runs.append((letter, _styles_of(name.value, raised=size < _RAISED * row.size)))
    page.close()
    return [
        PrintedLine(folio, _number_at(numbers, row.base), runs, row.left - left, height - row.base)
        for row in rows
        if (runs := _join(row.runs))
    ]


@lru_cache(maxsize=256)
def _styles_of(face: bytes, *, raised: bool) -> tuple[str, ...]:
    """The styles that a face's name tells, as ``ABCDEF+Tinos-BoldItalic``."""
    said = face.decode("ascii", "replace")
    styles = [style for style, named in (("italic", "Italic"), ("bold", "Bold")) if named in said]
    return (*styles, "superscript") if raised else tuple(styles)


def _number_at(numbers: Sequence[tuple[float, str]], base: float) -> int:
    """The number that stands beside a line."""
    figures = "".join(letter for height, letter in numbers if abs(height - base) < 2 and letter.isdigit())
    return int(figures[:5]) if figures else 0


def _join(letters: Sequence[tuple[str, tuple[str, ...]]]) -> tuple[Run, ...]:
    """The characters of one kind together, without the blank at the line's end."""
    runs: list[Run] = []
    for letter, styles in letters:
        if runs and (runs[-1].styles == styles or not letter.strip()):
            runs[-1] = Run(runs[-1].text + letter, runs[-1].styles)
        else:
            runs.append(Run(letter, styles))
    if runs:
        runs[-1] = Run(runs[-1].text.rstrip(), runs[-1].styles)
    return tuple(Run(_whole(run.text), run.styles) for run in runs if run.text)


def _whole(text: str) -> str:
    """The text with its characters whole: PDFium gives those beyond the first plane in two halves."""
    return text.encode("utf-16-le", "surrogatepass").decode("utf-16-le", "replace")
