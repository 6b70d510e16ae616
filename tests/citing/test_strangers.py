"""Authors named in the sentence who are on no list."""

from __future__ import annotations

import pytest

from fairhand.citing.recognise import recognise
from fairhand.manuscript.draft import read_manuscript


@pytest.mark.parametrize(
    ("sentence", "name"),
    [
        ("Quibbly (2011, 342) has calculated the cost.", "Quibbly"),
        ("I follow Quibbly (1974: 1), for whom the sea is salt.", "Quibbly"),
        ("One man told E. Quibbly (1987, 57) that it rained.", "Quibbly"),
        ("Quibbly (2018), who treats the garden as a field, agrees.", "Quibbly"),
        ("In Quibbly (2011, p. 4) the ferry sinks.", "Quibbly"),
    ],
)
def test_a_year_with_a_page_or_a_relative_clause_makes_an_author(sentence: str, name: str) -> None:
    """Common practice: a year and a page in one parenthesis cite whoever stands before it."""
    (mention,) = recognise(read_manuscript(sentence))
    assert mention.cites[0].names == (name,)


@pytest.mark.parametrize(
    "sentence",
    [
        "It rained in Lagos (2014) and elsewhere.",
        "The novel Emma (1815) is long.",
        "Jane Doe (1901–1970) was a painter.",
        "The towns of Texas (1990, 1995) grew.",
    ],
)
def test_a_year_alone_makes_none(sentence: str) -> None:
    """Places, titles and lives have years too."""
    assert recognise(read_manuscript(sentence)) == ()
