"""Notes and marks that a reader put on a PDF come in with their words, author and time."""

from __future__ import annotations

import contextlib
import ctypes
import io
from collections.abc import Callable

import pypdfium2
import pypdfium2.raw as pdfium
import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.errors import FairhandError
from fairhand.model.remark import Returned
from fairhand.reading.returned_pdf import read_returned_pdf

Box = tuple[float, float, float, float]


def box_of(page: pypdfium2.PdfPage, words: str) -> Box:
    """Where some words stand on a page: left, bottom, right, top."""
    textpage = page.get_textpage()
    text = "".join(chr(pdfium.FPDFText_GetUnicode(textpage.raw, n)) for n in range(textpage.count_chars()))
    start = text.index(words)
    boxes = [textpage.get_charbox(n) for n in range(start, start + len(words))]
    return (
        min(one[0] for one in boxes),
        min(one[1] for one in boxes),
        max(one[2] for one in boxes),
        max(one[3] for one in boxes),
    )


def put(page: pypdfium2.PdfPage, kind: int, box: Box, *, on_words: bool = True, **said: str) -> None:
    """An annotation on a page."""
    annotation = pdfium.FPDFPage_CreateAnnot(page.raw, kind)
    left, bottom, right, top = box
    rect = pdfium.FS_RECTF(left, top, right, bottom)
    pdfium.FPDFAnnot_SetRect(annotation, rect)
    if on_words:
        quad = pdfium.FS_QUADPOINTSF(left, top, right, top, left, bottom, right, bottom)
        pdfium.FPDFAnnot_AppendAttachmentPoints(annotation, quad)
    for key, value in said.items():
        text = ctypes.create_string_buffer(value.encode("utf-16-le") + b"\0\0")
        wide = ctypes.cast(text, ctypes.POINTER(pdfium.FPDF_WCHAR))
        pdfium.FPDFAnnot_SetStringValue(annotation, key.encode(), wide)
    pdfium.FPDFPage_CloseAnnot(annotation)


def marked(data: bytes, mark: Callable[[pypdfium2.PdfPage], None]) -> bytes:
    """A PDF with marks on its first page."""
    document = pypdfium2.PdfDocument(data)
    mark(document[0])
    kept = io.BytesIO()
    document.save(kept)
    return kept.getvalue()


def told(returned: Returned) -> list[tuple[str, str, str]]:
    """Kind, the words marked, and what is said."""
    return [(one.kind, one.span.of(returned.text), one.said) for one in returned.remarks]


def test_marks_on_words_are_read(pdf: Callable[..., bytes]) -> None:
    """Words lit up with a note, words struck out, and a place where something is put in."""

    def mark(page: pypdfium2.PdfPage) -> None:
        put(page, pdfium.FPDF_ANNOT_HIGHLIGHT, box_of(page, "ground"), Contents="Naïve: what?", T="Ines Mora",
            CreationDate="D:20270203100000+01'00'")  # fmt: skip
        put(page, pdfium.FPDF_ANNOT_STRIKEOUT, box_of(page, "slowly"), T="Ines Mora")
        left, bottom, _, top = box_of(page, "stopped")
        put(page, pdfium.FPDF_ANNOT_SQUARE, (left - 1, bottom, left + 1, top), on_words=False, Contents="then ")
        put(page, pdfium.FPDF_ANNOT_LINK, box_of(page, "mill"))

    data = marked(pdf("The mill ground slowly and stopped."), mark)
    caret = data.replace(b"/Subtype/Square", b"/Subtype/Caret ")  # PDFium reads carets, and makes none
    returned = read_returned_pdf(caret, "x.pdf")
    assert told(returned) == [
        ("comment", "ground", "Naïve: what?"),
        ("deletion", "slowly", "slowly"),
        ("insertion", "", "then"),
    ]
    assert (returned.remarks[0].by, returned.remarks[0].when) == ("Ines Mora", "2027-02-03T10:00:00+01:00")
    assert returned.text[returned.remarks[2].span.start :].startswith("stopped")


def test_a_note_beside_a_line_is_on_that_line(pdf: Callable[..., bytes]) -> None:
    """A note stuck on the page, with no words chosen, is about the line that it stands beside."""

    def mark(page: pypdfium2.PdfPage) -> None:
        _, bottom, _, top = box_of(page, "second")
        put(page, pdfium.FPDF_ANNOT_TEXT, (5, bottom, 20, top), on_words=False, Contents="Really?")

    data = marked(pdf("The first line.\n\nThe second line.\n\nThe third line."), mark)
    assert told(read_returned_pdf(data, "x.pdf")) == [("comment", "The second line.", "Really?")]


def test_a_page_without_words_keeps_its_notes(pdf: Callable[..., bytes]) -> None:
    """Nothing is lost where there is nothing to stand on."""

    def mark(page: pypdfium2.PdfPage) -> None:
        put(page, pdfium.FPDF_ANNOT_TEXT, (5, 5, 20, 20), on_words=False, Contents="Empty?")

    assert told(read_returned_pdf(marked(pdf(""), mark), "x.pdf")) == [("comment", "", "Empty?")]


def test_what_is_no_pdf_is_refused() -> None:
    """In one line."""
    for data in (b"", b"PK", b"%PDF-1.7 and nothing"):
        with pytest.raises(FairhandError) as refused:
            read_returned_pdf(data, "x.pdf")
        assert "x.pdf: it is broken" in str(refused.value)


@given(st.lists(st.tuples(st.integers(0, 10**6), st.integers(0, 255)), min_size=1, max_size=12))
def test_a_damaged_pdf_is_read_or_refused(pdf: Callable[..., bytes], damage: list[tuple[int, int]]) -> None:
    """Nothing else happens, wherever its bytes are wrong."""

    def mark(page: pypdfium2.PdfPage) -> None:
        put(page, pdfium.FPDF_ANNOT_HIGHLIGHT, box_of(page, "ground"), Contents="What?")

    data = bytearray(marked(pdf("The mill ground slowly.", "It stopped."), mark))
    for at, byte in damage:
        data[at % len(data)] = byte
    with contextlib.suppress(FairhandError):
        returned = read_returned_pdf(bytes(data), "x.pdf")
        assert all(0 <= one.span.start <= one.span.end <= len(returned.text) for one in returned.remarks)
