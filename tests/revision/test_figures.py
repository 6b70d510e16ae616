"""Figures in prose."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.revision.figures import holds, list_figures


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("cost 1.9 million dollars", [("money", 1_900_000)]),
        ("$1.5 billion and €40", [("money", 1.5e9), ("money", 40)]),
        ("half a million people", [("count", 500_000)]),
        ("ninety-three basements in six years", [("count", 93), ("small", 6)]),
        ("four out of five complaints, one in ten", [("share", 0.8), ("share", 0.1)]),
        ("two-thirds of the copper; a quarter of it", [("share", 2 / 3), ("share", 0.25)]),
        ("twice as likely", [("share", 2)]),
        (
            "A third agreed, a fifth of them gladly, and it fell by a tenth.",
            [("share", 1 / 3), ("share", 0.2), ("share", 0.1)],
        ),
        ("about 2,300 men in 1924", [("count", 2300), ("year", 1924)]),
        ("4,900 meals a day", [("count", 4900)]),
        ("two hundred yards off, 40 miles of wire and a 30-foot mast", [("small", 200), ("small", 40), ("small", 30)]),
    ],
)
def test_figures_are_read_with_their_values(text: str, told: list[tuple[str, float]]) -> None:
    """In numerals or words, with their signs and units."""
    found = list_figures(text)
    assert [figure.kind for figure in found] == [kind for kind, _ in told]
    assert [figure.value for figure in found] == pytest.approx([value for _, value in told])


@pytest.mark.parametrize(
    "text",
    [
        "On 9 June and on May 3 the nineteenth century's 1990s ended at 9:30.",
        "Chapter 12, act 3, lines 40–52, Table 2 and pp. 12–14 of volume 3.",
        "The second half of the book is the better one in which nobody speaks.",
        "A third effect is rarer, and of the two replies there had been a fourth.",
    ],
)
def test_dates_and_places_in_works_are_no_figures(text: str) -> None:
    """What a reader would not look up as a number is none; a lone *one* is only ever small."""
    assert [figure for figure in list_figures(text) if figure.kind != "small"] == []


@given(st.text())
def test_any_text_has_figures_within_it(text: str) -> None:
    """No text crashes the reader, and every figure stands where it is said to stand."""
    for figure in list_figures(text):
        assert 0 <= figure.span.start < figure.span.end <= len(text)


def test_a_share_is_the_same_however_it_is_said() -> None:
    """A part, a percentage and a count out of a count."""
    for text in ("80 percent", "80%", "four-fifths", "four out of five"):
        assert holds(list_figures(f"It was {text} of the men."), list_figures("four-fifths")[0])
    assert not holds(list_figures("It was 81 percent."), list_figures("four-fifths")[0])
    assert holds(list_figures("It was 81 percent."), list_figures("four-fifths")[0], roughly=True)
