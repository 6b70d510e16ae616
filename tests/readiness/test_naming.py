"""How sources are named to the writer."""

from __future__ import annotations

from fairhand.model.entry import Entry, Issued, Name
from fairhand.readiness.naming import name_entries

VESK = (Name("Vesk", "Ida"),)


def test_works_of_one_year_are_told_apart_by_their_letters() -> None:
    """The letters are those of the list, given out by title."""
    entries = [Entry(t, "book", title=t, authors=VESK, issued=Issued(1990)) for t in ("Tolls", "Fares")]
    assert name_entries(entries) == {"Tolls": "Vesk (1990b)", "Fares": "Vesk (1990a)"}


def test_namesakes_are_told_apart_by_an_initial_whatever_their_years() -> None:
    """As a citation of them must be."""
    one = Entry("one", "book", title="Tolls", authors=VESK, issued=Issued(1990))
    other = Entry("other", "book", title="Locks", authors=(Name("Vesk", "Jon"),), issued=Issued(2001))
    assert name_entries([one, other]) == {"one": "I. Vesk (1990)", "other": "J. Vesk (2001)"}


def test_a_name_that_needs_no_help_stays_short() -> None:
    """A body, an editor and a title stand as they are."""
    entries = [
        Entry("board", "report", title="Rates", authors=(Name(literal="Toll Board"),), issued=Issued(1980)),
        Entry("orr", "book", title="Fares", editors=(Name("Orr", "Tam"),)),
        Entry("none", "webpage", title="Gates"),
    ]
    assert name_entries(entries) == {"board": "Toll Board (1980)", "orr": "Orr", "none": "“Gates”"}
