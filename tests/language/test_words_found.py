"""Words of running prose."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from fairhand.language.words import words


def test_a_word_keeps_its_inner_marks() -> None:
    """Apostrophes, hyphens and decimal points inside a word belong to it, and forms compare alike."""
    assert [word.text for word in words("Half-days don’t pay: 1,200.50 'quoted' words’")] == [
        "Half-days",
        "don’t",
        "pay",
        "1,200.50",
        "quoted",
        "words",
    ]
    assert words("DON’T")[0].key == words("don't")[0].key


@given(st.text())
def test_words_stand_where_they_say(text: str) -> None:
    """Each word is the text of its span, in order and apart."""
    at = 0
    for word in words(text):
        assert word.span.of(text) == word.text
        assert word.span.start >= at
        at = word.span.end
