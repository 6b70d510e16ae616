"""Photographed sheets: read once and told to be unsure; what cannot be read is told in one line."""

from __future__ import annotations

import io
import math
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.cli import main
from fairhand.desk.seen import see_file
from fairhand.errors import FileTooLarge, FileUnreadable
from fairhand.outside import printed_page
from fairhand.outside.letters import read_letters
from fairhand.outside.printed_lines import Printed, lay_lines
from fairhand.session.assignment import photographed
from fairhand.session.assignment.giving_sheets import give_sheet
from fairhand.session.assignment.sheets import read_sheets
from fairhand.session.texts import read_sheet

PHOTOGRAPH = b"\xff\xd8\xff\xe0 a sheet"


def piece(text: str, x: float, y: float, askew: float = 0.0) -> Printed:
    """A piece of print 20 pixels high, on a page turned about its corner by so many degrees."""
    turn = math.radians(askew)
    right, bottom = x + 10 * len(text), y + 20
    corners = ((x, y), (right, y), (right, bottom), (x, bottom))
    return Printed(
        text,
        tuple((a * math.cos(turn) - b * math.sin(turn), a * math.sin(turn) + b * math.cos(turn)) for a, b in corners),
    )


@pytest.fixture
def stand_in(monkeypatch: pytest.MonkeyPatch) -> list[bytes]:
    """OCR that reads one line off any picture; what it was asked to read is listed."""
    asked: list[bytes] = []

    def read(data: bytes) -> str:
        asked.append(data)
        return "Write 1,500 words."

    monkeypatch.setattr(photographed, "has_ocr", lambda: True)
    monkeypatch.setattr(photographed, "_read_apart", read)
    return asked


@pytest.mark.parametrize("askew", [-4.0, 0.0, 3.0])
def test_a_page_askew_has_its_lines(askew: float) -> None:
    """The cells of a row stand on one line, though one is lower on the picture than the next line's other cell."""
    pieces = [
        piece("Argument and its order", 0, 0, askew),
        piece("40 marks", 700, 0, askew),
        piece("Writing and its care for the reader", 0, 30, askew),
        piece("20 marks", 700, 30, askew),
    ]
    laid = "Argument and its order | 40 marks\nWriting and its care for the reader | 20 marks"
    assert lay_lines(pieces) == lay_lines(pieces[::-1]) == laid


def test_two_columns_are_read_one_after_the_other() -> None:
    """A heading across both stands before them; the cells of a table stay in their rows."""
    heading = piece("How to hand in, and when", 300, 0)
    left = [piece("a line of the left column, which is full", 0, 60 + 30 * row) for row in range(6)]
    right = [piece("a line of the right column, as full too.", 450, 60 + 30 * row) for row in range(6)]
    laid = [line for line in lay_lines([heading, *right, *left]).splitlines() if line]
    assert laid == [heading.text, *(one.text for one in left), *(one.text for one in right)]
    cells = [piece("Form", 0, 60 + 30 * row) for row in range(6)]
    assert lay_lines([*cells, *right]).splitlines() == ["Form | a line of the right column, as full too."] * 6


@given(st.lists(st.builds(piece, st.text(max_size=9), st.floats(0, 4e3), st.floats(0, 4e3), st.floats(-180, 180))))
def test_no_piece_is_lost(pieces: list[Printed]) -> None:
    """Wherever pieces stand, each one's words come out, and nothing else does."""
    words = [word for one in pieces for word in one.text.split()]
    laid = lay_lines(pieces)
    assert sorted(laid.replace("|", " ").split()) == sorted(" ".join(words).replace("|", " ").split())


def test_a_photograph_is_read_once_for_a_paper(tmp_path: Path, stand_in: list[bytes]) -> None:
    """Its words are kept by its content, and told to be unsure each time."""
    (tmp_path / "brief.jpg").write_bytes(PHOTOGRAPH)
    sheet = see_file(tmp_path / "brief.jpg", "brief.jpg")
    first, again = read_sheet(sheet, tmp_path), read_sheet(sheet, tmp_path)
    assert first == again
    assert first[0] == "Write 1,500 words."
    assert str(first[1][0]) == "brief.jpg: read by OCR, which misreads; hold it against the sheet"
    assert len(stand_in) == 1


def test_a_photograph_alone_leaves_nothing_behind(tmp_path: Path, stand_in: list[bytes]) -> None:
    """A sheet that is looked at before there is a paper makes no folder beside it."""
    (tmp_path / "sheet.jpg").write_bytes(PHOTOGRAPH)
    brief, _ = read_sheets(tmp_path / "sheet.jpg")
    assert [one.id for one in brief.requirements] == ["length.paper"]
    assert [path.name for path in tmp_path.iterdir()] == ["sheet.jpg"]


def test_without_the_extra_it_is_said_what_to_do(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """One line: what, where, and the two ways on."""
    monkeypatch.setattr(photographed, "has_ocr", lambda: False)
    (tmp_path / "sheet.jpg").write_bytes(PHOTOGRAPH)
    with pytest.raises(SystemExit) as ended:
        main(["brief", str(tmp_path / "sheet.jpg")])
    assert ended.value.code == 2
    assert capsys.readouterr().err == (
        "fairhand: sheet.jpg: it is a photograph, and nothing here reads its words; "
        "install the extra for it (pip install 'fairhand[ocr]'), or type the sheet, or paste it, as text\n"
    )


def test_a_photograph_not_read_stands_beside_sheets_that_are(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """It is kept among the sheets, and the rest of the brief is read."""
    monkeypatch.setattr(photographed, "has_ocr", lambda: False)
    (tmp_path / "paper.toml").write_text("", encoding="utf-8")
    give_sheet(tmp_path, "sheet.txt", b"Write 1,500 words.")
    give_sheet(tmp_path, "rubric.jpg", PHOTOGRAPH)
    brief, problems = read_sheets(tmp_path)
    assert [one.id for one in brief.requirements] == ["length.paper"]
    assert any(one.where == "brief/rubric.jpg" and "photograph" in one.what for one in problems)


def test_a_broken_picture_is_told(tmp_path: Path) -> None:
    """Its name, that it cannot be opened, and what to do."""
    pytest.importorskip("rapidocr", reason="the extra for OCR is not installed: pip install 'fairhand[ocr]'")
    with pytest.raises(FileUnreadable, match=r"^sheet.jpg: it is no picture .*; save it again as JPEG or PNG$"):
        photographed.read_photograph(PHOTOGRAPH, "sheet.jpg")
    assert read_letters(PHOTOGRAPH) == ""


def test_a_picture_of_too_many_pixels_is_not_unpacked(monkeypatch: pytest.MonkeyPatch) -> None:
    """What it would unpack to is known before it is."""
    image = pytest.importorskip("PIL.Image", reason="the extra for OCR is not installed: pip install 'fairhand[ocr]'")
    kept = io.BytesIO()
    image.new("1", (300, 200)).save(kept, "PNG")
    monkeypatch.setattr(printed_page, "_MOST_PIXELS", 50_000)
    with pytest.raises(FileTooLarge, match="pixels"):
        printed_page.read_printed(kept.getvalue())


def test_an_empty_page_has_no_words() -> None:
    """That nothing was read is said, and what to do."""
    image = pytest.importorskip("PIL.Image", reason="the extra for OCR is not installed: pip install 'fairhand[ocr]'")
    pytest.importorskip("rapidocr", reason="the extra for OCR is not installed: pip install 'fairhand[ocr]'")
    kept = io.BytesIO()
    image.new("L", (300, 200), 255).save(kept, "PNG")
    with pytest.raises(FileUnreadable, match="no words could be read"):
        photographed.read_photograph(kept.getvalue(), "blank.png")
