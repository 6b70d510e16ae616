"""A PDF's page as it looks, and words found again on it."""

from __future__ import annotations

import struct
import zlib
from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.errors import FileUnreadable
from fairhand.reading.found_again import find_again
from fairhand.reading.page_picture import MOST_DOTS, draw_page, find_on_page, measure_page
from fairhand.reading.pdf import read_pdf


def read_png(data: bytes) -> tuple[int, int, int, bytes]:
    """Width, height, kind of colour and dots of a PNG whose rows are not filtered."""
    assert data.startswith(b"\x89PNG\r\n\x1a\n")
    at, body, head = 8, b"", b""
    while at < len(data):
        (length,) = struct.unpack(">I", data[at : at + 4])
        name, part = data[at + 4 : at + 8], data[at + 8 : at + 8 + length]
        assert struct.unpack(">I", data[at + 8 + length : at + 12 + length])[0] == zlib.crc32(name + part)
        head, body = (part, body) if name == b"IHDR" else (head, body + part if name == b"IDAT" else body)
        at += 12 + length
    width, height, _, kind, *_ = struct.unpack(">IIBBBBB", head)
    return width, height, kind, zlib.decompress(body)


def test_a_page_is_drawn_as_a_picture(pdf: Callable[..., bytes]) -> None:
    """In grey where it has no colour, in colour where it has; black stands where the type is."""
    width, height, kind, dots = read_png(draw_page(pdf("The quay."), 0, "a.pdf"))
    assert (kind, len(dots)) == (0, height * (width + 1))
    assert 0 in dots[1:]
    assert read_png(draw_page(pdf("#text(fill: red)[The quay.]"), 0, "a.pdf"))[2] == 2


def test_each_line_stands_in_its_place(pdf: Callable[..., bytes]) -> None:
    """From the upper left, in points; words that run over a line's end are found with both their lines."""
    data = pdf(
        "#set text(size: 12pt)\nThe moorings were let by the year, and whoever had one was held to be a householder."
    )
    picture = measure_page(data, 0, "a.pdf")
    assert picture.width == pytest.approx(340.2, abs=0.5)
    assert picture.lines[0].text.startswith("The")
    tops = [line.top for line in picture.lines]
    assert tops == sorted(tops)
    assert all(line.left >= 0 and line.left + line.width <= picture.width for line in picture.lines)
    whole = " ".join(line.text for line in picture.lines)
    found = find_on_page(picture, whole)
    assert found is not None
    assert (found.first, found.last) == (picture.lines[0], picture.lines[-1])
    assert found.from_left == picture.lines[0].left
    assert find_on_page(picture, "nowhere at all") is None
    assert find_on_page(picture, "") is None


def test_a_turned_page_is_measured_as_it_is_shown(pdf: Callable[..., bytes]) -> None:
    """Its lines stand within it, upright type being higher than wide."""
    import io

    import pypdfium2

    document = pypdfium2.PdfDocument(pdf("The quay was sold in May."))
    document[0].set_rotation(90)
    out = io.BytesIO()
    document.save(out)
    picture = measure_page(out.getvalue(), 0, "a.pdf")
    assert all(
        line.left + line.width <= picture.width + 1 and line.top + line.height <= picture.height + 1
        for line in picture.lines
    )
    assert picture.lines[0].height > picture.lines[0].width


@pytest.mark.parametrize("number", [7, -9])
def test_a_page_that_is_not_there_is_told(pdf: Callable[..., bytes], number: int) -> None:
    """As is a file that is none."""
    with pytest.raises(FileUnreadable, match="cannot be shown"):
        draw_page(pdf("a"), number, "a.pdf")
    with pytest.raises(FileUnreadable, match="cannot be shown"):
        measure_page(b"%PDF-1.7 no", 0, "a.pdf")


def test_a_huge_page_is_drawn_small() -> None:
    """However wide the file says that it is."""
    import io

    import pypdfium2

    document = pypdfium2.PdfDocument.new()
    document.new_page(40, 14_000)
    out = io.BytesIO()
    document.save(out)
    width, height, *_ = read_png(draw_page(out.getvalue(), 0, "a.pdf"))
    assert width * height <= MOST_DOTS * 1.01


def test_words_of_the_picture_are_found_in_the_text(pdf: Callable[..., bytes]) -> None:
    """Each line as it is chosen on the page, in the text as it was extracted, hyphens at line ends and all."""
    data = pdf(
        '#set text(hyphenate: true, lang: "en")\n#set par(justify: true)\n'
        + "Unquestionably industrialisation transformed harbourmasters. " * 6
    )
    text = read_pdf(data, "a.pdf").texts[0]
    lines = measure_page(data, 0, "a.pdf").lines
    assert len(lines) > 4
    assert any(line.text == "-" for line in lines)
    for line in (one for one in lines if one.text != "-"):
        assert find_again(text, line.text) is not None, line.text


@given(st.text(), st.text(), st.text())
def test_what_stands_in_a_text_is_found_there(before: str, words: str, after: str) -> None:
    """With its surroundings, in its own place or in one where all of them agree as well."""
    text = before + words + after
    found = find_again(text, words, before, after)
    if found is not None:
        assert 0 <= found.start < found.end <= len(text)
    squeezed = [letter for letter in words if letter.isalnum()]
    if squeezed:
        assert found is not None


def test_of_two_places_the_one_with_the_same_surroundings() -> None:
    """As the annotation model has it."""
    text = "the tide turned at noon, and the tide turned again at night"
    found = find_again(text, "the tide turned", before="noon, and ", after=" again")
    assert found is not None
    assert found.start == 29
