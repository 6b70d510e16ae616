"""A style's page, with the sheet's rules over it."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.fair_copy.document import Layout
from fairhand.fair_copy.faces import face_for
from fairhand.fair_copy.layout import (
    layout_for,
    layout_notes,
    lines_per_page,
    proof_layout,
    text_height_pt,
)
from fairhand.fair_copy.sheet_rules import FORMAT_RULES
from fairhand.model.requirement import Force, Requirement, Value
from fairhand.model.span import Span


def asks(what: str, value: Value = True, force: Force = "must") -> Requirement:
    """A format requirement."""
    return Requirement("format", {"what": what, "value": value}, "", Span(0, 0), force)


def laid(*requirements: Requirement, style: str = "mla-9") -> Layout:
    """The style's page under these requirements."""
    return layout_for(style, requirements)


@pytest.mark.parametrize(
    ("value", "margins"),
    [
        ("1 in", (72, 72, 72, 72)),
        ("one-inch", (72, 72, 72, 72)),
        ("2.5 cm", (70.87, 70.87, 70.87, 70.87)),
        ("25 mm", (70.87, 70.87, 70.87, 70.87)),
        ("2,54 cm", (72, 72, 72, 72)),
        ("1 in top, 1.5 in left", (72, 72, 72, 108)),
        ("2.5 cm, left 4 cm", (70.87, 70.87, 70.87, 113.39)),
        ("wide", (72, 72, 72, 72)),
    ],
)
def test_margins(value: str, margins: tuple[float, ...]) -> None:
    """Margins are read in inches, centimetres and millimetres, all alike or by side."""
    assert laid(asks("margins", value)).margins_pt == pytest.approx(margins, abs=0.01)


@pytest.mark.parametrize(
    ("value", "spacing"),
    [("double", 2), ("1.5", 1.5), ("one and a half", 1.5), ("single", 1), ("2", 2), ("1.15 lines", 1.15), ("airy", 2)],
)
def test_spacing(value: str, spacing: float) -> None:
    """The sheet's spacing holds for the text and for all that the style sets at the text's spacing."""
    layout = laid(asks("spacing", value))
    assert (layout.spacing, layout.list_spacing, layout.quote_spacing) == (spacing,) * 3


def test_closer_parts_stay_closer() -> None:
    """A wider text does not widen what its style sets single."""
    layout = laid(asks("spacing", "1.5"), style="chicago-notes-17")
    assert (layout.spacing, layout.quote_spacing, layout.note_spacing) == (1.5, 1, 1)


@pytest.mark.parametrize(
    ("value", "place"),
    [
        ("bottom centre", "bottom centre"),
        ("bottom center", "bottom centre"),
        ("footer", "bottom centre"),
        ("upper right", "top right"),
        ("top left", "top left"),
        ("centered", "top centre"),
        (True, "top right"),
    ],
)
def test_page_numbers(value: Value, place: str) -> None:
    """A page number goes where the sheet says; where it only wants one, where the style has it."""
    assert laid(asks("page-numbers", value)).page_number == place


def test_title_page_and_none() -> None:
    """A sheet adds a title page, or takes it away."""
    assert laid(asks("title-page")).first_page == "title-page"
    assert laid(asks("no-title-page"), style="apa-7").first_page == "heading"


def test_what_is_only_allowed_changes_nothing() -> None:
    """A rule that merely allows leaves the style's page."""
    assert laid(asks("title-page", force="may")) == layout_for("mla-9")


def test_font_and_size() -> None:
    """The face and size asked for are set; the PDF takes the face of the same widths."""
    layout = laid(asks("font", "Arial or Calibri"), asks("font-size", "11 pt"))
    assert (layout.font, layout.size_pt, face_for(layout.font)[0].name) == ("Arial", 11, "Arimo")


def test_missing_face_is_told() -> None:
    """Where no free face has the widths of the one asked for, the writer is told."""
    assert "Georgia" in layout_notes(laid(asks("font", "Georgia")))[0]


@pytest.mark.parametrize("style", ["mla-9", "apa-7", "chicago-notes-17", "chicago-author-date-18", "harvard", "ieee"])
@pytest.mark.parametrize("font", ["Times New Roman", "Arial", "Calibri", "Courier New"])
def test_lines_fill_the_page(style: str, font: str) -> None:
    """As many lines as fit stand on a page, and not one more."""
    layout = laid(asks("font", font), style=style)
    pitch = layout.spacing * face_for(font)[0].line * layout.size_pt
    assert 0 <= text_height_pt(layout) - lines_per_page(layout) * pitch < pitch


def test_proof_has_room_for_marks() -> None:
    """A proof numbers its lines and has an inch and a half on both sides."""
    proof = proof_layout(layout_for("mla-9"))
    assert proof.line_numbers
    assert (proof.margins_pt[1], proof.margins_pt[3]) == (108, 108)


@given(st.sampled_from(sorted(FORMAT_RULES)), st.one_of(st.text(max_size=40), st.none(), st.booleans(), st.integers()))
def test_any_value_lays_a_page(what: str, value: Value) -> None:
    """Whatever a sheet was read to ask, a page comes of it."""
    assert lines_per_page(laid(asks(what, value))) >= 1


@given(st.text(max_size=30))
def test_any_style_has_a_page(style: str) -> None:
    """A style without a page of its own gets a plain one."""
    assert layout_for(style).size_pt > 0
