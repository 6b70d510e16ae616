"""A PDF that came back from a reader: its words, and the notes and marks that were put on them.

Numbers that stand before the lines are no part of the words.

**Source**: ISO 32000-2 (2020), section 12.5 (*Annotations*).
"""

from __future__ import annotations

import ctypes
import re
from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Any

from fairhand.errors import FileUnreadable
from fairhand.model.remark import Remark, RemarkKind, Returned
from fairhand.model.span import Span
from fairhand.reading.pdf import open_pdf
from fairhand.reading.pdfium import TURN

if TYPE_CHECKING:
    from pypdfium2 import PdfDocument, PdfPage

_TEXT, _STRUCK, _CARET = 1, 12, 14
_MARKS = frozenset({_TEXT, 3, 4, 5, 6, 7, 8, 9, 10, 11, _STRUCK, 13, _CARET, 15})
"""Kinds of annotation that a reader sets: not links, pop-ups, fields and what else belongs to the page."""
_PDF_DATE = re.compile(r"D:(\d{4})(\d\d)?(\d\d)?(\d\d)?(\d\d)?(\d\d)?(?:(Z)|([+-])(\d\d)'?(\d\d)?)?")
_FEWEST_NUMBERED = 3
"""Lines of a page that must begin with a number in the margin for those to be line numbers."""
_GAP_PT = 3.0
"""By so much such a number stands left of the text."""


@dataclass(frozen=True, slots=True)
class _Letter:
    """One character with its box, in points from the page's lower left."""

    char: str
    left: float
    bottom: float
    right: float
    top: float


def read_returned_pdf(data: bytes, file: str) -> Returned:
    """The words of the PDF, with every note and mark at its place.

    Words struck out are a deletion, words at a caret an insertion; whatever else was marked is a comment, which may
    have no words of its own.

    Raises:
        FileEncrypted: It asks for a password.
        FileUnreadable: It is broken or has no page.
        FileTooLarge: It has more pages than are read.
    """
    text = ""
    remarks: list[Remark] = []
    with TURN, open_pdf(data, file) as document:
        numbers = range(len(document))
        pages = [_without_numbers(_letters_of(_page(document, number, file))) for number in numbers]
        for number, letters in enumerate(_without_heads(pages)):
            remarks += (
                _shifted(one, len(text)) for one in _annotations(_page(document, number, file), letters, number)
            )
            text += "".join(one.char for one in letters) + "\n"
    return Returned(text, tuple(sorted(remarks, key=lambda one: (one.span.start, one.span.end))))


def _page(document: PdfDocument, number: int, file: str) -> PdfPage:
    import pypdfium2

    try:
        return document[number]
    except pypdfium2.PdfiumError as error:
        message = f"{file}: its sheet {number + 1} is damaged, and what is written there would be lost; get it again"
        raise FileUnreadable(message) from error


def _shifted(remark: Remark, by: int) -> Remark:
    return replace(remark, span=remark.span.shifted(by))


def _letters_of(page: PdfPage) -> list[_Letter]:
    """The characters of a page in reading order; a line's end is a blank."""
    import pypdfium2.raw as pdfium

    textpage = page.get_textpage()
    letters: list[_Letter] = []
    for index in range(textpage.count_chars()):
        code = pdfium.FPDFText_GetUnicode(textpage.raw, index)
        if code in (0, 10, 13):
            if code == 10 and letters:
                last = letters[-1]
                letters.append(_Letter(" ", last.right, last.bottom, last.right, last.top))
            continue
        letters.append(_Letter(chr(code), *textpage.get_charbox(index)))
    textpage.close()
    return letters


def _without_numbers(letters: list[_Letter]) -> list[_Letter]:
    """The characters without the numbers that stand in the margin before the lines."""
    lefts = sorted(one.left for one in letters if one.char.isalpha())
    if not lefts:
        return letters
    edge = lefts[len(lefts) // 50] - _GAP_PT
    numbered = {n for n, one in enumerate(letters) if one.char.isdigit() and one.right < edge}
    heights = {round(letters[n].bottom) for n in numbered}
    if len(heights) < _FEWEST_NUMBERED:
        return letters
    return [one for n, one in enumerate(letters) if n not in numbered]


def _without_heads(pages: Sequence[list[_Letter]]) -> Iterator[list[_Letter]]:
    """The pages without the line at their top, or foot, that most of them have, whatever number is in it."""
    outermost = [{end: _line_at(letters, end) for end in (max, min)} for letters in pages]
    told = Counter(key for lines in outermost for key in {_plain(line) for line in lines.values()})
    for letters, lines in zip(pages, outermost, strict=True):
        heads = [
            one
            for line in lines.values()
            if told[_plain(line)] > max(1, len(pages) // 2)
            for one in line
            if _plain(line)
        ]
        drop = {id(one) for one in heads}
        yield [one for one in letters if id(one) not in drop]


def _line_at(letters: list[_Letter], end: Callable[..., float]) -> list[_Letter]:
    """The characters of the highest or the lowest line."""
    inked = [one for one in letters if not one.char.isspace()]
    if not inked:
        return []
    height = end((one.bottom + one.top) / 2 for one in inked)
    size = max(one.top - one.bottom for one in inked)
    return [one for one in letters if abs((one.bottom + one.top) / 2 - height) < size / 2]


def _plain(line: list[_Letter]) -> str:
    """What a running line says on every page: without its number."""
    return re.sub(r"[\divxlc]+\W*$|^\W*\d+", "", "".join(one.char for one in line).strip()).strip() or "number"


def _annotations(page: PdfPage, letters: list[_Letter], number: int) -> Iterator[Remark]:
    import pypdfium2.raw as pdfium

    for index in range(pdfium.FPDFPage_GetAnnotCount(page.raw)):
        annotation = pdfium.FPDFPage_GetAnnot(page.raw, index)
        if not annotation:
            continue
        try:
            kind = pdfium.FPDFAnnot_GetSubtype(annotation)
            if kind in _MARKS:
                yield _read(annotation, kind, letters, f"{number + 1}.{index + 1}")
        finally:
            pdfium.FPDFPage_CloseAnnot(annotation)


def _read(annotation: Any, kind: int, letters: list[_Letter], name: str) -> Remark:
    said = _string(annotation, b"Contents").strip()
    boxes = _boxes(annotation)
    span = _covered(letters, boxes) if boxes else _nearest(letters, _rect(annotation), at_point=kind == _CARET)
    what: RemarkKind = "comment"
    if kind == _STRUCK and not said:
        what, said = "deletion", "".join(one.char for one in letters[span.start : span.end])
    elif kind == _CARET and said:
        what = "insertion"
    when = _date(_string(annotation, b"CreationDate") or _string(annotation, b"M"))
    own = _string(annotation, b"NM") or name
    return Remark(what, span, said, _string(annotation, b"T"), when, own, _answered(annotation))


def _answered(annotation: Any) -> str:
    """The name of the annotation that this one answers."""
    import pypdfium2.raw as pdfium

    other = pdfium.FPDFAnnot_GetLinkedAnnot(annotation, b"IRT")
    if not other:
        return ""
    try:
        return _string(other, b"NM")
    finally:
        pdfium.FPDFPage_CloseAnnot(other)


def _string(annotation: Any, key: bytes) -> str:
    import pypdfium2.raw as pdfium

    length = pdfium.FPDFAnnot_GetStringValue(annotation, key, None, 0)
    if length <= 2:
        return ""
    buffer = ctypes.create_string_buffer(length)
    pdfium.FPDFAnnot_GetStringValue(annotation, key, ctypes.cast(buffer, ctypes.POINTER(pdfium.FPDF_WCHAR)), length)
    return buffer.raw[: length - 2].decode("utf-16-le", "replace").replace("\r\n", "\n").replace("\r", "\n")


def _boxes(annotation: Any) -> list[tuple[float, float, float, float]]:
    """The boxes of the words that it is set on: left, bottom, right, top; none where it stands beside them."""
    import pypdfium2.raw as pdfium

    boxes = []
    for index in range(pdfium.FPDFAnnot_CountAttachmentPoints(annotation)):
        quad = pdfium.FS_QUADPOINTSF()
        if pdfium.FPDFAnnot_GetAttachmentPoints(annotation, index, quad):
            across, up = (quad.x1, quad.x2, quad.x3, quad.x4), (quad.y1, quad.y2, quad.y3, quad.y4)
            boxes.append((min(across), min(up), max(across), max(up)))
    return boxes


def _rect(annotation: Any) -> tuple[float, float, float, float]:
    import pypdfium2.raw as pdfium

    rect = pdfium.FS_RECTF()
    pdfium.FPDFAnnot_GetRect(annotation, rect)
    return rect.left, rect.bottom, rect.right, rect.top


def _covered(letters: list[_Letter], boxes: list[tuple[float, float, float, float]]) -> Span:
    """The characters whose middle lies in one of the boxes, from the first to the last."""
    inside = [
        n
        for n, one in enumerate(letters)
        if not one.char.isspace()
        for left, bottom, right, top in boxes
        if left <= (one.left + one.right) / 2 <= right and bottom <= (one.bottom + one.top) / 2 <= top
    ]
    return Span(inside[0], inside[-1] + 1) if inside else _nearest(letters, boxes[0], at_point=True)


def _nearest(letters: list[_Letter], rect: tuple[float, float, float, float], *, at_point: bool) -> Span:
    """The line beside a place on the page, or the point in it."""
    left, bottom, right, top = rect
    across, up = (left + right) / 2, (bottom + top) / 2
    inked = [n for n, one in enumerate(letters) if not one.char.isspace()]
    if not inked:
        return Span(len(letters), len(letters))

    def height(n: int) -> float:
        return abs((letters[n].bottom + letters[n].top) / 2 - up)

    line = min(inked, key=height)
    here = [
        n for n in inked if abs(letters[n].bottom - letters[line].bottom) <= (letters[line].top - letters[line].bottom)
    ]
    if at_point:
        nearest = min(here, key=lambda n: abs(letters[n].left - across))
        return Span(nearest, nearest)
    return Span(here[0], here[-1] + 1)


def _date(written: str) -> str:
    """A moment as ISO 8601 has it; empty where it is none.

    >>> _date("D:20270203100000+01'00'"), _date("soon")
    ('2027-02-03T10:00:00+01:00', '')
    """
    found = _PDF_DATE.match(written)
    if not found:
        return ""
    year, month, day, hour, minute, second = (found[n] or ("01" if n in (2, 3) else "00") for n in range(1, 7))
    zone = "Z" if found[7] else f"{found[8]}{found[9]}:{found[10] or '00'}" if found[8] else ""
    return f"{year}-{month}-{day}T{hour}:{minute}:{second}{zone}"
