from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.citing.locators import read_places


@pytest.mark.parametrize(
    ("text", "kind", "place"),
    [
        ("p. 102", "page", "102"),
        ("pp. 3–5", "page", "3–5"),
        ("pp. 33, 35, and 40–41", "page", "33, 35, and 40–41"),
        ("102", "page", "102"),
        ("150-59", "page", "150-59"),
        ("xiv–xvi", "page", "xiv–xvi"),
        ("B2", "page", "B2"),
        ("341n2", "page", "341n2"),
        ("33ff.", "page", "33ff."),
        ("514a", "page", "514a"),
        ("line 5", "line", "5"),
        ("lines 5–7", "line", "5–7"),
        ("ll. 5-7", "line", "5-7"),
        ("1.2.34–36", "act", "1.2.34–36"),
        ("III.ii.34", "act", "III.ii.34"),
        ("act 1, scene 2", "act", "1, scene 2"),
        ("2.45-50", "act", "2.45-50"),
        ("chap. 3", "chapter", "3"),
        ("ch. 3", "chapter", "3"),
        ("Chapter 3", "chapter", "3"),
        ("sec. 2.1", "section", "2.1"),
        ("§ 12", "section", "12"),
        ("para. 6", "paragraph", "6"),
        ("paras. 4–5", "paragraph", "4–5"),
        ("¶ 4", "paragraph", "4"),
        ("12:34", "time", "12:34"),
        ("1:02:03–1:03:10", "time", "1:02:03–1:03:10"),
        ("2:45", "volume", "2:45"),
        ("vol. 2", "volume", "2"),
        ("fig. 3", "figure", "3"),
        ("Table 2", "table", "2"),
        ("n. 3", "note", "3"),
    ],
)
def test_each_kind_of_place_is_read(text: str, kind: str, place: str) -> None:
    """The forms that the three manuals give, with their labels or without, whole."""
    found, after = read_places(text, 0, len(text))
    assert found is not None
    assert (found.locator.kind, found.locator.text) == (kind, place)
    assert after == len(text)


@pytest.mark.parametrize("text", ["and so on", "p < .05", "33%", "5°", "page", "mixed"])
def test_what_is_no_place_is_not_read(text: str) -> None:
    """Measures and words are no pages."""
    assert read_places(text, 0, len(text)) == (None, 0)


@given(st.text(alphabet="p. 0123456789-–:,nxivlABch§¶", max_size=40))
def test_a_place_lies_within_the_text(text: str) -> None:
    """Whatever is read was there."""
    found, after = read_places(text, 0, len(text))
    assert 0 <= after <= len(text)
    if found is not None:
        assert found.locator.text in text
        assert found.locator.span.of(text).endswith(found.locator.text.rstrip()) or found.locator.within
