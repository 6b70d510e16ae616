"""Sentences of academic prose."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.language.sentences import split_sentences


@pytest.mark.parametrize(
    "text",
    [
        "So Lind et al. (2019, pp. 3–5) say.|Others differ.",
        "“It ran.” (Orr 12).|It stopped.",
        "“It ran” (Orr et al., n.d., p. 4).|It stopped.",
        "It ended. (Orr 2019, 2)|Then it began.",
        "It ended.[12]|Then it began.",
        "It ended. [3–5]|Then it began.",
        "It ended.12|Then it began.",
        "See Fig. 2 and vol. 3, no. 4, e.g. the map (cf. Orr).|It is old.",
        "He said no.|The end.",
        "J. R. Orr wrote it.|St. John’s was near.",
        "The first bell. . . .|He that comes late is fined.",
        "It was late . . . and dark.",
        "It was late . . . Orr writes.",
        "“Why?” he asked.|“Because!” she said.",
        "It was (as he wrote. And he wrote much.) a lie.|So be it.",
        "Dr. Orr met Prof. Lind at 5 p.m. in the U.S. Senate.|He left.",
        "1. The first point stands.|It is short.",
        "Is it so?|Yes!|No…|Perhaps.",
        "He “stopped.”|“Then” he left.",
    ],
)
def test_sentences_end_where_a_reader_ends_them(text: str) -> None:
    """Citations, abbreviations, initials, ellipses, brackets and note numbers do not mislead; a bar marks the ends."""
    expected = text.split("|")
    joined = " ".join(expected)
    assert [span.of(joined) for span in split_sentences(joined)] == expected


@given(st.text(alphabet="aB1 .?!…()[]“”'\"\n-", max_size=60))
def test_sentences_cover_all_but_blanks(text: str) -> None:
    """Nothing but blanks stands between the sentences of any text."""
    at = 0
    for span in split_sentences(text):
        assert at <= span.start < span.end
        assert not text[at : span.start].strip()
        at = span.end
    assert not text[at:].strip()
