"""A list of records changed."""

from __future__ import annotations

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.citing.csl_json import list_records, read_csl_json, write_csl_json
from fairhand.citing.entries import read_entry
from fairhand.citing.entry_list import drop_record, join_records, put_record
from fairhand.citing.ris import read_ris
from fairhand.errors import FileUnreadable
from fairhand.model.entry import Entry

RECORDS = st.lists(
    st.fixed_dictionaries({"title": st.sampled_from(["Salt", "Peat", "Fen"])}, optional={"id": st.sampled_from("ab")})
    | st.sampled_from(["faulty", 7, {}, {"id": "a"}]),
    max_size=5,
)


def entry(**record: object) -> Entry:
    """The entry of a record."""
    made, _ = read_entry(record, "here")
    assert made is not None
    return made


@given(RECORDS, RECORDS)
def test_what_joins_is_in_the_list_once(records: list[object], others: list[object]) -> None:
    """Everything that was there stands as it was and where it was; joining twice adds nothing; ids are unique."""
    found, _ = read_csl_json(json.dumps(others))
    longer, joined = join_records(records, found)
    assert longer[: len(records)] == records
    assert len(longer) == len(records) + len(joined.new)
    assert len(joined.new) + len(joined.there) == len(found)
    again, twice = join_records(longer, found)
    assert (again, twice.new) == (longer, ())


@given(RECORDS, st.data())
def test_one_record_is_changed_or_taken_out_alone(records: list[object], data: st.DataObject) -> None:
    """It is found by what it says and by its id; each other record stands."""
    entries, _ = read_csl_json(json.dumps(records))
    if not entries:
        return
    one = data.draw(st.sampled_from(entries))
    changed = put_record(records, one, {"id": one.id, "title": "Ebb"})
    assert len(changed) == len(records)
    assert sum(before != after for before, after in zip(records, changed, strict=True)) == 1
    left = drop_record(records, one)
    assert left is not None
    assert len(left) == len(records) - 1


def test_an_id_made_of_author_and_year_tells_no_work_from_another() -> None:
    """A second work of that author and year joins under an id of its own; the same one sent again does not."""
    there = [dict(entry(id="dun-2004", type="book", title="Peat", author=[{"family": "Dun"}], issued="2004").csl)]
    found, _ = read_ris("TY  - BOOK\nAU  - Dun, Eva\nTI  - Fen\nPY  - 2004\nER  - \n", "a.ris")
    longer, joined = join_records(there, found)
    assert joined.new == ("dun-2004-2",)
    assert join_records(longer, found)[1].there == ("dun-2004-2",)


def test_an_id_that_was_given_tells_a_work() -> None:
    """The record in the list may have been corrected there, and stays."""
    there = [{"id": "peat", "title": "Peat, corrected"}]
    assert join_records(there, [entry(id="peat", type="book", title="Peat")])[1].there == ("peat",)


def test_what_the_course_lists_is_there() -> None:
    """It does not join the paper's own list as well."""
    salt = entry(id="salt", type="book", title="Salt")
    assert join_records([], [salt], [salt])[1].there == ("salt",)


@pytest.mark.parametrize("text", ["{", '{"id": "a"}', "[" * 100_000, '"a"', "[1" + "0" * 5000 + "]"])
def test_what_is_no_list_is_refused(text: str) -> None:
    """Whatever it holds would be lost by writing to it."""
    with pytest.raises(FileUnreadable, match=r"^sources\.json: it is no list of records"):
        list_records(text)


@pytest.mark.parametrize("text", ["", " \n", "\ufeff[]", "[]"])
def test_an_empty_list_has_no_records(text: str) -> None:
    """Nor has an empty file."""
    assert list_records(text) == []


def test_half_a_letter_is_kept() -> None:
    """It stands in the file as the escape that it came as."""
    text = write_csl_json(list_records('[{"title": "\\ud800 Salt"}]'))
    assert text.encode().decode() == text
    assert list_records(text) == [{"title": "\ud800 Salt"}]
