"""A record made of what a file says, where each field came from, and the same work noticed twice."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.citing.described import list_missing, origins_of, record_of
from fairhand.citing.entries import read_entry
from fairhand.citing.entry_form import fill_record
from fairhand.citing.identifiers import find_identifier
from fairhand.citing.same_work import find_doubles
from fairhand.model.description import Description, Field
from fairhand.model.entry import Entry

SAID = Description(
    {
        "type": Field("article-journal", "its citation tags"),
        "title": Field("Ebb and flow", "its citation tags"),
        "author": Field(("Ada van der Lind", "Marsh, Bo", "Harbour Museum"), "its citation tags"),
        "issued": Field("2016/09/01", "its meta tags"),
        "ISSN": Field("1234-5678", "its citation tags"),
    }
)


def made(**record: object) -> Entry:
    """An entry of a record."""
    entry, _ = read_entry({"type": "book", **record}, "here")
    assert entry is not None
    return entry


def lind(title: str, year: int, **more: object) -> Entry:
    """A book by Lind."""
    return made(title=title, author=[{"family": "Lind"}], issued={"date-parts": [[year]]}, **more)


def test_the_record_has_each_field_with_its_origin() -> None:
    """Names are turned, dates read; a field that the writer corrects has no origin any more."""
    record = record_of(SAID)
    assert record["author"] == [
        {"family": "van der Lind", "given": "Ada"},
        {"family": "Marsh", "given": "Bo"},
        {"literal": "Harbour Museum"},
    ]
    assert record["issued"] == {"date-parts": [[2016, 9, 1]]}
    assert origins_of(record)["issued"] == "its meta tags"
    corrected = fill_record(record, {"title": "Ebb, and flow"}, "article-journal")
    assert set(origins_of(corrected)) == set(origins_of(record)) - {"title"}


def test_what_is_missing_is_told() -> None:
    """Of an article its journal; of what is of no known kind, the kind."""
    assert list_missing(made(**record_of(SAID))) == ("the journal",)
    assert "what kind of work it is" in list_missing(made(type="document", title="Salt"))


@pytest.mark.parametrize(
    ("one", "other", "why"),
    [
        (lind("Salt roads of the north", 2001), lind("Salt Roads of the North.", 2002), "the same title and author"),
        (lind("Salt roads of the north", 2001), lind("Salt raods of the north", 2001), "the same title and author"),
        (lind("A", 2001, DOI="10.5555/X"), lind("B", 2009, URL="https://doi.org/10.5555/x"), "the same DOI"),
        (lind("A", 2001, ISBN="0-8044-2957-X"), lind("B", 2001, ISBN="9780804429573"), "the same ISBN"),
        (lind("A", 2001, PMID="7"), lind("B", 2001, PMID=7), "the same PMID"),
        (lind("Salt roads of the north", 2001), lind("Salt roads of the north", 2011), ""),
        (lind("Salt roads of the north 1", 2001), lind("Salt roads of the north 2", 2001), ""),
        (lind("Salt roads part II of it", 2001), lind("Salt roads part I of it", 2001), ""),
        (lind("Tides", 2001), lind("Tibes", 2001), ""),
        (lind("Salt roads", 2001), made(title="Salt roads", author=["Dun"], issued="2001"), ""),
        (lind("Salt", 2001, DOI="10.5555/a"), lind("Salt", 2001, DOI="10.5555/b"), ""),
    ],
)
def test_the_same_work_is_noticed(one: Entry, other: Entry, why: str) -> None:
    """By DOI, ISBN or PMID; else by title, author and year with a little room, and not a volume for its fellow."""
    assert [double.why for double in find_doubles([one, other])] == ([why] if why else [])


def test_of_many_records_of_one_work_each_is_told_once() -> None:
    """With the first of them, however many there are."""
    many = [made(id=str(n), title="Salt roads of the north", author=["Lind"], issued="2001") for n in range(5)]
    assert [(double.new, double.there) for double in find_doubles(many)] == [(str(n), "0") for n in range(1, 5)]


def test_chapters_of_one_book_are_not_one_work() -> None:
    """They share its ISBN."""
    book = {"ISBN": "9780306406157", "type": "chapter"}
    assert not find_doubles([lind("First of the chapters", 2001, **book), lind("The second one", 2001, **book)])


@given(st.text(max_size=60))
def test_no_text_crashes_the_search_for_a_number(text: str) -> None:
    """What is no identifier is none; what is one is found again when it is written out."""
    found = find_identifier(text)
    assert found is None or find_identifier(str(found)) == found
