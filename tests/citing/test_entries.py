"""Records become entries; what is wrong in one is told, and the rest is kept."""

from __future__ import annotations

import json

from hypothesis import given
from hypothesis import strategies as st

from fairhand.citing.csl_json import read_csl_json, write_csl_json
from fairhand.citing.entries import read_entry
from fairhand.citing.records import clean_record

JSON = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=12),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=8), inner, max_size=3),
    max_leaves=8,
)
FIELDS = st.sampled_from(
    ["id", "type", "title", "author", "editor", "issued", "page", "DOI", "container-title", "volume"]
)
RECORD = st.dictionaries(FIELDS, JSON, max_size=8)


def test_the_named_fields_are_read_off_the_record() -> None:
    """Names with particles, dates, pages and addresses stand in the entry, titles without markup."""
    entry, problems = read_entry(
        {
            "id": "berg",
            "type": "chapter",
            "title": "Reading <i>Salt</i>",
            "author": [
                {"family": "Berg", "given": "Ida", "non-dropping-particle": "van den"},
                {"literal": "Salt Board"},
            ],
            "issued": {"date-parts": [["1999", 5]]},
            "original-date": {"raw": "1890"},
            "page": "xi-xiv",
        },
        "here",
    )
    assert problems == ()
    assert entry is not None
    assert entry.title == "Reading Salt"
    assert [name.surname for name in entry.authors] == ["van den Berg", "Salt Board"]
    assert (entry.issued.year, entry.issued.month, entry.original_year) == (1999, 5, 1890) if entry.issued else False


def test_a_date_in_words_is_kept_in_words() -> None:
    """A year is found in it where one stands."""
    entry, _ = read_entry({"id": "a", "type": "book", "title": "T", "issued": {"literal": "circa 1850"}}, "")
    assert entry is not None
    assert entry.issued is not None
    assert (entry.issued.year, entry.issued.literal) == (1850, "circa 1850")


def test_each_fault_is_told_with_its_place() -> None:
    """A wrong type, name or date costs that field alone."""
    entry, problems = read_entry(
        {"id": "a", "type": "bok", "title": "T", "author": [7], "issued": {"date-parts": 4}}, "r 3"
    )
    assert entry is not None
    assert {problem.where for problem in problems} == {"r 3"}
    assert [next(word for word in ("type", "author", "issue") if word in str(problem)) for problem in problems] == [
        "type",
        "author",
        "issue",
    ]


@given(RECORD)
def test_any_record_is_read_or_told(record: dict[str, object]) -> None:
    """No record crashes the reader; what has nothing to cite is told."""
    entry, problems = read_entry(record, "here")
    assert entry is not None or problems


@given(RECORD)
def test_a_cleaned_record_is_safe_for_the_engine(record: dict[str, object]) -> None:
    """Only text, names and dates are left, and cleaning twice changes nothing."""
    cleaned = clean_record(record)
    json.dumps(cleaned, allow_nan=False)
    assert clean_record(cleaned) == cleaned


@given(st.lists(RECORD, max_size=4))
def test_what_is_written_is_read_back(records: list[dict[str, object]]) -> None:
    """Each field of each record survives being written and read, and ids are unique."""
    entries, _ = read_csl_json(json.dumps(records))
    again, problems = read_csl_json(write_csl_json(entry.csl for entry in entries))
    assert [dict(entry.csl) for entry in again] == [dict(entry.csl) for entry in entries]
    assert not any("id" in problem.what.split() for problem in problems)
    assert len({entry.id for entry in entries}) == len(entries)
