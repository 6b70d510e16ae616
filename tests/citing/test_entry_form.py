"""A record in the fields of a form, and back."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.citing.entries import TYPES
from fairhand.citing.entry_form import FIELDS, TYPES_ASKED, fields_of, fill_record, tell_field

JSON = st.recursive(
    st.none() | st.booleans() | st.integers() | st.text(max_size=12),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=8), inner, max_size=3),
    max_leaves=6,
)
NAME = st.fixed_dictionaries(
    {}, optional={part: st.text(max_size=8) for part in ("family", "given", "suffix", "literal", "dropping-particle")}
)
RECORD = st.dictionaries(st.sampled_from([*FIELDS, "id", "note"]), JSON | st.lists(NAME, max_size=3), max_size=6)


@given(RECORD)
def test_a_record_that_was_only_looked_at_is_as_it_was(record: dict[str, object]) -> None:
    """Sent back as it was shown, nothing in it changes, whatever a line of type cannot hold."""
    shown = {field.name: tell_field(record, field).replace("\n", "\r\n") for field in fields_of("book", record)}
    assert fill_record(record, shown, "book") == {**record, "type": "book"}


@given(st.dictionaries(st.sampled_from(sorted(FIELDS)), st.text(max_size=30)))
def test_what_was_written_is_shown_again(written: dict[str, str]) -> None:
    """What a record shows makes the same record when it is written anew."""
    saved = fill_record({"id": "a"}, written, "book")
    shown = {name: tell_field(saved, FIELDS[name]) for name in written}
    assert fill_record({"id": "a"}, shown, "book") == saved


@pytest.mark.parametrize(
    ("written", "value"),
    [
        ("2019", {"date-parts": [[2019]]}),
        ("2019-05-31", {"date-parts": [[2019, 5, 31]]}),
        ("May 2019", {"date-parts": [[2019, 5]]}),
        ("31 May 2019", {"date-parts": [[2019, 5, 31]]}),
        ("Sept. 3, 2019", {"date-parts": [[2019, 9, 3]]}),
        ("2019-31-05", {"literal": "2019-31-05"}),
        ("2019-02-30", {"literal": "2019-02-30"}),
        ("Spring 2019", {"literal": "Spring 2019"}),
        ("in press", {"literal": "in press"}),
    ],
)
def test_a_date_is_read_as_it_is_written(written: str, value: dict[str, object]) -> None:
    """In figures or in words; what is no day stays as it was written."""
    assert fill_record({}, {"issued": written}, "book")["issued"] == value


@pytest.mark.parametrize(
    ("written", "value"),
    [
        ("Lind, Ada", {"family": "Lind", "given": "Ada"}),
        ("King, Martin Luther, Jr.", {"family": "King", "given": "Martin Luther", "suffix": "Jr."}),
        ("Plato", {"literal": "Plato"}),
        ("Plato,", {"literal": "Plato"}),
        ("Harbour Board", {"literal": "Harbour Board"}),
        ("Department of Parks, Leeds", {"literal": "Department of Parks, Leeds"}),
    ],
)
def test_a_name_is_read_as_it_is_written(written: str, value: dict[str, str]) -> None:
    """Surname first for a person; a body whole."""
    assert fill_record({}, {"author": written}, "book")["author"] == [value]


def test_names_that_stay_keep_what_a_line_cannot_hold() -> None:
    """One author added: the particle of the other is still a particle."""
    before = {"author": [{"family": "Berg", "given": "Ida", "non-dropping-particle": "van den"}]}
    after = fill_record(before, {"author": "van den Berg, Ida\r\nLind, Ada"}, "book")
    assert after["author"] == [*before["author"], {"family": "Lind", "given": "Ada"}]


def test_each_type_is_one_of_the_standard() -> None:
    """And each is asked for an author, a title and a date."""
    assert set(TYPES_ASKED) <= TYPES
    for kind in TYPES_ASKED:
        assert {"author", "title", "issued"} <= {field.name for field in fields_of(kind)}
