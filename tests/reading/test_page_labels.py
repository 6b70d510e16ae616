"""Page labels and ranges, as citations and entries write them."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.reading.labels import expand_range, labels_in, page_key, parse_label, roman_numeral


@pytest.mark.parametrize(
    ("locator", "labels"),
    [
        ("102", ("102",)),
        ("p. 102", ("102",)),
        ("p102", ("102",)),
        ("pp. 3–5", ("3", "4", "5")),
        ("150-59", ("150", "151", "152", "153", "154", "155", "156", "157", "158", "159")),
        ("117–18", ("117", "118")),
        ("100–104", ("100", "101", "102", "103", "104")),
        ("1496–500", tuple(map(str, range(1496, 1501)))),
        ("xiv–xvi", ("xiv", "xv", "xvi")),
        ("XIV", ("XIV",)),
        ("B2", ("B2",)),
        ("A1, A14", ("A1", "A14")),
        ("S12-S14", ("S12", "S13", "S14")),
        ("12, 15, and 20–21", ("12", "15", "20", "21")),
        ("45ff.", ("45", "46")),
        ("12a", ("12a",)),
        ("345n12", ("345",)),
        ("345 n. 12", ("345",)),
        ("pages 7 to 9", ("7", "8", "9")),
        ("101--103", ("101", "102", "103")),
        ("", ()),
        ("n. pag.", ()),
        ("103-101", ("103", "101")),
    ],
)
def test_locators_name_their_labels(locator: str, labels: tuple[str, ...]) -> None:
    """Ranges are expanded, cut ones completed, letters and roman numerals kept."""
    assert labels_in(locator) == labels


def test_labels_count_on_in_their_own_kind() -> None:
    """Roman stays roman, letters stay."""
    labels = map(parse_label, ("xiv", "XIX", "B2", "S12", "9"))
    assert [str(label.on(1)) for label in labels if label] == ["xv", "XX", "B3", "S13", "10"]


@given(st.integers(1, 3999))
def test_roman_numerals_are_read_back(number: int) -> None:
    """A numeral written is the number read."""
    label = parse_label(roman_numeral(number))
    assert label is not None
    assert (label.number, label.roman) == (number, True)


@given(st.text())
def test_any_locator_is_read(text: str) -> None:
    """No text stops the reader, and a key is the same whichever way a label is spelt."""
    for label in labels_in(text):
        assert page_key(label) == page_key(f" {label.upper()} ")


@given(st.integers(1, 9999), st.integers(1, 200))
def test_cut_ranges_are_completed(first: int, length: int) -> None:
    """A range written in full or with its end cut to the changed digits is the same range."""
    last = str(first + length)
    full = expand_range(str(first), last)
    assert len(full) == length + 1
    common = 0
    while common < len(last) - 1 and len(last) == len(str(first)) and last[common] == str(first)[common]:
        common += 1
    assert expand_range(str(first), last[common:]) == full
