"""Words brought to their stems."""

from __future__ import annotations

import sqlite3

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.language.content_words import list_stems, list_words
from fairhand.language.stems import stem

EXAMPLES = {
    "caresses": "caress", "ponies": "poni", "ties": "ti", "cats": "cat", "feed": "feed", "agreed": "agre",
    "plastered": "plaster", "bled": "bled", "motoring": "motor", "sing": "sing", "conflated": "conflat",
    "troubled": "troubl", "sized": "size", "hopping": "hop", "falling": "fall", "hissing": "hiss", "failing": "fail",
    "filing": "file", "happy": "happi", "sky": "sky", "relational": "relat", "conditional": "condit",
    "rational": "ration", "digitizer": "digit", "vietnamization": "vietnam", "operator": "oper",
    "hopefulness": "hope", "triplicate": "triplic", "formative": "form", "electrical": "electr", "revival": "reviv",
    "allowance": "allow", "adjustable": "adjust", "replacement": "replac", "adoption": "adopt", "probate": "probat",
    "rate": "rate", "cease": "ceas", "controlling": "control", "roll": "roll",
}  # fmt: skip


@pytest.mark.parametrize(("word", "its"), EXAMPLES.items())
def test_the_published_examples(word: str, its: str) -> None:
    """Porter 1980, the examples beside each rule, through all steps (from memory)."""
    assert stem(word) == its


@given(st.lists(st.text("abceghiylnorstuz", min_size=1, max_size=18), min_size=1, max_size=60, unique=True))
def test_it_agrees_with_the_reference_library(words: list[str]) -> None:
    """SQLite's own Porter tokenizer, on any letters."""
    base = sqlite3.connect(":memory:")
    base.execute("CREATE VIRTUAL TABLE f USING fts5(t, tokenize='porter ascii')")
    base.execute("CREATE VIRTUAL TABLE v USING fts5vocab(f, 'instance')")
    base.executemany("INSERT INTO f(rowid, t) VALUES (?, ?)", enumerate(words))
    theirs = dict(base.execute("SELECT doc, term FROM v"))
    assert [stem(word) for word in words] == [theirs[number] for number in range(len(words))]


@given(st.text())
def test_any_text_has_words(text: str) -> None:
    """No word is empty or holds a blank, and no content word is left that was not a word."""
    words = list_words(text)
    assert all(word and not any(letter.isspace() for letter in word) for word in words)
    assert len(list_stems(text)) <= len(words)
