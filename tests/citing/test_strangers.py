"""Authors named in the sentence who are on no list."""

from __future__ import annotations

import pytest

from fairhand.citing.recognise import recognise
from fairhand.citing.resolve import resolve
from fairhand.manuscript.draft import read_manuscript
from fairhand.model.entry import Entry, Issued, Name

LISTED = (Entry("marl", "book", "Lamps", authors=(Name("Marl", "Ruth"),), issued=Issued(1998)),)
HABIT = "It is so (Marl, 1998)."


def strangers(habit: str, sentence: str) -> list[str]:
    """What a sentence cites, in a draft that cites the listed source first or does not."""
    draft = read_manuscript(f"{habit}\n\n{sentence}\n")
    found = recognise(draft, LISTED)
    return [one.span.of(draft.text) for one in found if one.span.start > len(habit)]


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
        "In May (2020) it rained.",
        "The novel Emma (1815) is long, and the film Tower (1958) describes one.",
        "Her master's Tower (1958) suggests a fall.",
        "*Tower* (1958) argues that all fall.",
        "Queen Anne (1702) wrote to him.",
        "Jane Doe (1901–1970) was a painter.",
        "World War II (1939–1945) ended it.",
        "The Treaty of Rome (1957) states as much.",
        "The census of England (1851) notes nine.",
        "The towns of Texas (1990, 1995) grew.",
        "The data of WallNet (2009) were used in Stata (2019).",
        "Ghana (1957) gained independence first.",
    ],
)
@pytest.mark.parametrize("habit", ["", HABIT])
def test_a_year_alone_makes_none(habit: str, sentence: str) -> None:
    """Places, months, titles, rulers, treaties, data and lives have years too, whatever the draft's own habit."""
    assert strangers(habit, sentence) == []


@pytest.mark.parametrize(
    "sentence",
    [
        "The QVC (2023) puts the number at nine.",
        "Quibbly's first study (2019) found little.",
        "This was shown by Quibbly (2019) and later by others.",
        "The work of Quibbly (2019) is older.",
        "Following Quibbly (2019), I take the wall as given.",
        "Quibbly (2019) is right that walls fall.",
        "Quibbly (2019) finds little.",
        "For Quibbly (2019), walls are talk.",
        "It draws on Quibbly (2019) and on maps.",
        "van den Quibbly (2019) finds little.",
    ],
)
def test_some_words_make_an_author_only_where_the_draft_cites_by_year(sentence: str) -> None:
    """*Lind (2019) finds* and *Lagos (2014) finds* look alike; in a paper cited by author and year it is an author."""
    assert strangers("", sentence) == []
    assert len(strangers(HABIT, sentence)) == 1


@pytest.mark.parametrize(
    "sentence",
    [
        "Quibbly (2019) argues that walls fall.",
        "As Quibbly (2019) shows, walls fall.",
        "Quibbly (2019), in a note on walls, claims that they fall.",
        "According to Quibbly (2019), walls fall.",
        "Quibbly’s (2019) study found little.",
        "The historian Quibbly (2019) lists nine walls.",
        "The Wall Survey Board (2019) lists nine walls.",
    ],
)
def test_plain_words_make_an_author_in_any_draft(sentence: str) -> None:
    """A verb of saying, *according to*, a possessive, a calling or a body that does something."""
    assert len(strangers("", sentence)) == 1


def test_another_of_that_surname_is_not_taken_for_the_listed_one() -> None:
    """An initial that is not the listed author's makes a source that is missing, not a wrong year."""
    draft = read_manuscript("A sailor told E. Marl (1987, 57) that it rained.")
    mentions = recognise(draft, LISTED)
    (resolved,) = resolve(draft, mentions, LISTED)
    assert (resolved.entry, resolved.trouble) == (None, "unknown")
