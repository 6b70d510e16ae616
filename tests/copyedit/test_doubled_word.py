"""The same word twice running."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.copyedit.words.doubled_word import find_doubled_words


@pytest.mark.parametrize(
    ("text", "doubled"),
    [
        ("It rained on the the quay.", ["the the"]),
        ("The the quay.", ["The the"]),
        ("over the\nthe bridge", ["the\nthe"]),
        ("He said that that was so.", []),
        ("They had had enough.", []),
        ("the isle of Pago Pago", []),
        ("by and by, and and again", ["and and"]),
        ("the mother-in-law in law", []),
        ("it is, is it not", []),
        ("don’t don’t stop", ["don’t don’t"]),
        ("10 10 20", []),
        ("a than and", []),
        ("And I I went.", ["I I"]),
        ("drugs such as AS, and NOT and AND gates", []),
        ("the sum of k k terms", []),
        ("many many more, and very very old", []),
        ("a herd of *Bison bison bison*, or *B. bison bison*", []),
        ("*Bison bison* is is one", ["is is"]),
        ("the *tide tide*", ["tide tide"]),
        ("read in the The Times", []),
    ],
)
def test_doubled_words(text: str, doubled: list[str]) -> None:
    """Common practice: a word repeated with only space between; grammar and names let be."""
    assert [span.of(text) for span in find_doubled_words(text)] == doubled


@given(st.text())
def test_any_text_is_looked_through(text: str) -> None:
    """Places lie within the text."""
    assert all(0 <= span.start < span.end <= len(text) for span in find_doubled_words(text))
