"""What the manuals ask of a record before it is set, whatever the reference list that it came from."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.citing.mends import mend_record
from fairhand.citing.ordering import order_items, title_key
from fairhand.citing.records import Item
from fairhand.citing.style_rules import rules_of
from fairhand.model.entry import Entry


def mended(style: str, **fields: object) -> dict[str, object]:
    """A book's record as a style has it."""
    csl = {"type": "book", "title": "Salt", **{name.replace("_", "-"): value for name, value in fields.items()}}
    return mend_record(Entry("a", "book", csl=csl), rules_of(style))


@pytest.mark.parametrize(
    ("publisher", "mla"),
    [
        ("Duke University Press", "Duke UP"),
        ("University of Chicago Press", "U of Chicago P"),
        ("University Press of Mississippi", "UP of Mississippi"),
        ("The Macmillan Company", "Macmillan"),
        ("Simon & Schuster, Inc.", "Simon and Schuster"),
        ("Harbour & Co., Ltd.", "Harbour"),
        ("MIT Press", "MIT Press"),
        ("Beacon Press", "Beacon Press"),
        ("Thomas Y. Crowell", "Thomas Y. Crowell"),
        ("Incline Books", "Incline Books"),
    ],
)
def test_publishers_in_mla(publisher: str, mla: str) -> None:
    """University presses are abbreviated, words of business dropped. **Source**: MLA 9, 5.61–5.64."""
    assert mended("mla-9", publisher=publisher)["publisher"] == mla


@pytest.mark.parametrize(
    ("given_", "doi"),
    [
        ("https://doi.org/10.1000/182", "10.1000/182"),
        ("doi:10.1000/182", "10.1000/182"),
        ("https://10.1126/science.1", "10.1126/science.1"),
        ("10.1000/182", "10.1000/182"),
    ],
)
def test_a_doi_stands_bare(given_: str, doi: str) -> None:
    """Whatever was put before it. **Source**: APA 7, 9.35."""
    assert mended("apa-7", DOI=given_)["DOI"] == doi


@pytest.mark.parametrize(
    ("edition", "number"),
    [("2nd ed.", "2"), ("4th edition", "4"), ("Third", "3"), ("Rev. ed.", "Rev."), (7, "7"), ("1", None)],
)
def test_editions(edition: object, number: str | None) -> None:
    """An edition is a number, a first edition is not named. **Source**: MLA 9, 5.51; CMOS 17, 14.113."""
    assert mended("mla-9", edition=edition).get("edition") == number


def test_one_mark_parts_the_halves_of_a_title() -> None:
    """A question mark takes no colon, and no full stop ends a title. **Source**: CMOS 17, 14.96."""
    assert mended("apa-7", title="Whose Tide Is It?: A Query.")["title"] == "Whose Tide Is It? A Query"
    assert mended("apa-7", title="Salt in the U.S.")["title"] == "Salt in the U.S."


def test_pages_lose_their_label() -> None:
    """Dashes of any kind are a range. **Source**: common practice of reference lists."""
    assert mended("apa-7", page="pp. 73–88")["page"] == "73-88"


def test_a_publisher_is_not_said_twice() -> None:
    """The author's own press is left out in APA and MLA, and stays in Chicago. **Source**: APA 7, 9.29; MLA 9, 5.65."""
    board = {"publisher": "The Salt Board", "author": [{"literal": "Salt Board"}]}
    assert "publisher" not in mended("apa-7", **board)
    assert "publisher" not in mended("mla-9", **board)
    assert "publisher" in mended("chicago-notes-17", **board)


@pytest.mark.parametrize(
    ("style", "genre"),
    [("apa-7", "Doctoral dissertation"), ("mla-9", "PhD dissertation"), ("chicago-notes-17", "PhD diss.")],
)
def test_a_dissertation_has_the_manuals_word(style: str, genre: str) -> None:
    """**Source**: APA 7, 10.6; MLA 9, 5.68; CMOS 17, 14.215."""
    assert mended(style, type="thesis", genre="Ph.D. dissertation")["genre"] == genre


def test_a_catalogue_is_no_database() -> None:
    """The database that an article was read in is kept; where its record came from is not."""
    article = {"type": "article-journal", "container_title": "Tides"}
    assert "source" not in mended("mla-9", source="DOI.org (Crossref)", **article)
    assert mended("mla-9", archive="Quay Archive Online", **article)["source"] == "Quay Archive Online"


def test_short_titles_drop_their_article() -> None:
    """In Chicago and MLA, not in APA. **Source**: CMOS 17, 14.33; MLA 9, 6.10."""
    assert mended("chicago-notes-17", title="The Tide: A Life")["title-short"] == "Tide"
    assert mended("apa-7", title="The Tide: A Life")["title-short"] == "The Tide"
    assert "title-short" not in mended("apa-7", title="The Tide")


def test_the_order_of_the_list() -> None:
    """One author stands before the same with another; titles lose their article; undated works come first.

    **Source**: APA 7, 9.44–9.49.
    """
    ame, bone = {"family": "Ame", "given": "A."}, {"family": "Bone", "given": "B."}
    items: list[Item] = [
        {"type": "book", "title": "A Zebra", "author": [ame], "issued": {"date-parts": [[2016]]}},
        {"type": "book", "title": "The Aardvark", "author": [ame], "issued": {"date-parts": [[2016]]}},
        {"type": "book", "title": "Both", "author": [ame, bone], "issued": {"date-parts": [[1990]]}},
        {"type": "book", "title": "Undated", "author": [ame]},
        {"type": "book", "title": "An Acre"},
    ]
    ordered = order_items(items, "name-date")
    assert [item["title"] for item in ordered] == ["An Acre", "Undated", "The Aardvark", "A Zebra", "Both"]


@given(st.text(max_size=40))
def test_any_title_has_a_place(title: str) -> None:
    """A key is small letters and single spaces."""
    key = title_key(title)
    assert key == " ".join(key.split())


@given(
    st.sampled_from(["mla-9", "apa-7", "chicago-notes-17", "ieee"]),
    st.dictionaries(
        st.sampled_from(
            ["title", "publisher", "page", "edition", "DOI", "URL", "genre", "source", "number", "language"]
        ),
        st.text(max_size=30),
    ),
)
def test_any_record_can_be_mended(style: str, fields: dict[str, object]) -> None:
    """No words in a record break a mend, and the entry is not touched."""
    before = dict(fields)
    mended(style, **fields)
    assert fields == before
