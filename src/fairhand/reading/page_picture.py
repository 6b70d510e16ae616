"""A PDF's page as it looks: drawn, and where each of its lines stands, so that its words can be chosen on it.

What is drawn is bounded, whatever the file says of its size.
"""

from __future__ import annotations

import ctypes
import struct
import zlib
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from typing import TYPE_CHECKING

from fairhand.errors import FileUnreadable
from fairhand.model.span import Span
from fairhand.reading.found_again import find_again
from fairhand.reading.pdfium import TURN

if TYPE_CHECKING:
    from pypdfium2 import PdfPage

WIDE = 1152
"""Dots across a picture: twice the width at which it is shown."""
MOST_DOTS = 6_000_000
"""The most that is drawn of one page."""
MOST_LINES = 2000
_SIGNS = dict.fromkeys(range(32), " ") | {0x02: "-", 0xFFFE: "-", 0x7F: " "}
"""What PDFium gives for a hyphen at a line's end, and signs that no page can show."""
_FINE = 100
"""Parts of a point in which places are measured."""


@dataclass(frozen=True, slots=True)
class Line:
    """A line of type, or a part of one, in points from the page's upper left."""

    text: str
    left: float
    top: float
    width: float
    height: float

    def along(self, share: float) -> float:
        """How far from the left a share of its letters reaches."""
        return self.left + self.width * share


@dataclass(frozen=True, slots=True)
class PagePicture:
    """The look of one page."""

    width: float
    """In points."""
    height: float
    lines: tuple[Line, ...]


@dataclass(frozen=True, slots=True)
class Marked:
    """Where some words stand on a page: their first line and their last, and how far along each."""

    first: Line
    from_left: float
    last: Line
    to_left: float


def measure_page(data: bytes, number: int, file: str) -> PagePicture:
    """The size of a page and the lines on it, in reading order as PDFium gives it.

    Args:
        data: The PDF's bytes.
        number: Which page, from 0.
        file: What the file is called in messages.

    Raises:
        FileUnreadable: The page cannot be shown.
    """
    with _opened(data, number, file) as (page, width, height):
        text = page.get_textpage()
        lines = []
        for at in range(min(text.count_rects(), MOST_LINES)):
            box = text.get_rect(at)
            said = " ".join(text.get_text_bounded(*box).translate(_SIGNS).split())
            if said:
                lines.append(Line(said, *_place(page, box, width, height)))
        return PagePicture(width, height, tuple(lines))


def draw_page(data: bytes, number: int, file: str) -> bytes:
    """The page as a PNG; in grey where it has no colour.

    Args:
        data: The PDF's bytes.
        number: Which page, from 0.
        file: What the file is called in messages.

    Raises:
        FileUnreadable: The page cannot be shown.
    """
    with _opened(data, number, file) as (page, width, height):
        scale = min(WIDE / width, (MOST_DOTS / (width * height)) ** 0.5)
        bitmap = page.render(scale=scale, rev_byteorder=True, prefer_bgrx=False)
        try:
            return _write_png(bitmap.width, bitmap.height, bitmap.n_channels, bitmap.stride, bytes(bitmap.buffer))
        finally:
            bitmap.close()


def find_on_page(picture: PagePicture, words: str) -> Marked | None:
    """Where some words stand on the page; None where they do not.

    >>> page = PagePicture(100, 100, (Line("The quay was", 10, 10, 60, 9), Line("sold in May.", 10, 20, 60, 9)))
    >>> found = find_on_page(page, "quay was sold")
    >>> found.from_left, found.last.text, found.to_left
    (30.0, 'sold in May.', 30.0)
    """
    starts: list[int] = []
    length = 0
    for line in picture.lines:
        starts.append(length)
        length += len(line.text) + 1
    place = find_again("\n".join(line.text for line in picture.lines), words)
    if place is None:
        return None
    first, last = (max(n for n, start in enumerate(starts) if start <= at) for at in (place.start, place.end - 1))
    return Marked(
        picture.lines[first],
        _reach(picture.lines[first], Span(starts[first], place.start)),
        picture.lines[last],
        _reach(picture.lines[last], Span(starts[last], place.end)),
    )


def _reach(line: Line, letters: Span) -> float:
    return line.along(min(len(letters) / len(line.text), 1.0))


@contextmanager
def _opened(data: bytes, number: int, file: str) -> Iterator[tuple[PdfPage, float, float]]:
    """A page with its width and height."""
    import pypdfium2

    with TURN:
        try:
            document = pypdfium2.PdfDocument(data)
            try:
                page = document[number]
                width, height = page.get_size()
                if not (1 <= width <= 20_000 and 1 <= height <= 20_000):
                    raise FileUnreadable(f"{file}: page {number + 1} has no size that can be shown; read its text")
                yield page, width, height
            finally:
                document.close()
        except (pypdfium2.PdfiumError, IndexError) as error:
            message = f"{file}: page {number + 1} cannot be shown; read its text, or get it again"
            raise FileUnreadable(message) from error


def _place(
    page: PdfPage, box: tuple[float, float, float, float], width: float, height: float
) -> tuple[float, float, float, float]:
    """A box of the file's own coordinates as left, top, width and height on the page as it is shown."""
    import pypdfium2.raw as pdfium

    def shown(x: float, y: float) -> tuple[float, float]:
        across, down = ctypes.c_int(), ctypes.c_int()
        wide, high = int(width * _FINE), int(height * _FINE)
        pdfium.FPDF_PageToDevice(page, 0, 0, wide, high, 0, x, y, ctypes.byref(across), ctypes.byref(down))
        return across.value / _FINE, down.value / _FINE

    (x, y), (other_x, other_y) = shown(box[0], box[1]), shown(box[2], box[3])
    return min(x, other_x), min(y, other_y), abs(x - other_x), abs(y - other_y)


def _write_png(width: int, height: int, channels: int, stride: int, dots: bytes) -> bytes:
    """**Source**: W3C Portable Network Graphics, second edition, sections 5 and 11."""
    rows = [dots[at : at + width * channels] for at in range(0, height * stride, stride)]
    flat = b"".join(rows)
    red, green, blue = flat[::channels], flat[1 % channels :: channels], flat[2 % channels :: channels]
    grey = red == green == blue
    if grey:
        rows = [red[at : at + width] for at in range(0, width * height, width)]
    head = struct.pack(">IIBBBBB", width, height, 8, 0 if grey else 2, 0, 0, 0)
    matter = zlib.compress(b"".join(b"\0" + row for row in rows), 6)
    parts = ((b"IHDR", head), (b"IDAT", matter), (b"IEND", b""))
    return b"\x89PNG\r\n\x1a\n" + b"".join(
        struct.pack(">I", len(body)) + name + body + struct.pack(">I", zlib.crc32(name + body)) for name, body in parts
    )
