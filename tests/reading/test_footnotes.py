"""Footnotes are told from the text above them."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.reading.footnotes import part_footnotes


def test_called_notes_are_told_apart() -> None:
    """Notes that are called in the text stand apart from it, and the figures that call them are gone."""
    page = "The quay was sold.7 It stood8 long.\n7See the ledger.\nIt is in the office.\n8 Lind, 12."
    text, notes_from = part_footnotes(page)
    assert text[:notes_from] == "The quay was sold. It stood long.\n"
    assert text[notes_from:] == "7See the ledger.\nIt is in the office.\n8 Lind, 12."


@pytest.mark.parametrize(
    "page",
    [
        "The quay was sold in May.\n3 Boats were bought.",
        "They counted 1,923 boats.\n3 Boats were bought.",
        "It stood for 12 years.\n12 Boats were bought.",
        "The share was 4.3 in all.\n3 Boats were bought.",
        "No notes at all.",
    ],
)
def test_uncalled_figures_begin_no_note(page: str) -> None:
    """A line that begins with a figure is a note only where the text above calls it."""
    assert part_footnotes(page) == (page, None)


@given(st.text(alphabet="ab 12.,\n)", max_size=200))
def test_words_are_kept(page: str) -> None:
    """Only figures are taken out, and the notes begin within the text."""
    text, notes_from = part_footnotes(page)
    assert [c for c in text if not c.isdecimal()] == [c for c in page if not c.isdecimal()]
    assert notes_from is None or 0 <= notes_from <= len(text)
