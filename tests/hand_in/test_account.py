"""``hand-in.toml`` read and changed."""

from __future__ import annotations

import tomllib

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.errors import FileUnreadable
from fairhand.hand_in.account import (
    Account,
    Handed,
    Mark,
    Returned,
    add_handed,
    put_name,
    put_receipt,
    put_returned,
    put_statement,
    read_account,
)

WORDS = st.text(st.characters(exclude_categories=["Cs", "Cc"]), min_size=1, max_size=30).map(str.strip).filter(bool)
ANYTHING = st.recursive(
    st.none() | st.booleans() | st.integers() | st.text(max_size=8),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=8), inner, max_size=3),
    max_leaves=12,
)


def read(text: str) -> Account:
    """What a text tells, which must be without fault."""
    account, problems = read_account(tomllib.loads(text))
    assert problems == ()
    return account


@given(WORDS, WORDS, st.booleans())
def test_what_is_put_in_is_read_as_it_was(words: str, receipt: str, anonymous: bool) -> None:
    """In whatever order; remarks stay, and what is put in again takes the place of what was there."""
    text = put_statement("# mine\n", "help", words)
    handed = Handed("2027-02-19T15:20:00+01:00", "fair/hand-in", 980, (("a.pdf", "ab"),))
    text = add_handed(put_name(text, anonymous=anonymous, called=words), handed)
    text = put_returned(
        put_receipt(text, receipt), Returned("2027-03-01", "68", (Mark("Form", "5/5", words),), (words,))
    )
    text = put_returned(text, Returned("2027-03-01", "70", (), (words,)))
    account = read(text)
    assert text.startswith("# mine\n")
    assert (account.statements, account.anonymous, account.called) == ({"help": words}, anonymous, words)
    assert account.handed[0].receipt == receipt
    assert account.returned == Returned("2027-03-01", "70", (), (words,))
    assert read(put_statement(text, "help", "")).statements == {}


@given(st.dictionaries(st.sampled_from(["statements", "anonymous", "called", "handed", "returned"]), ANYTHING))
def test_no_table_stops_the_reading(table: dict[str, object]) -> None:
    """Whatever stands under the keys that it knows."""
    read_account(table)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("statements = 3\n", "statements are no table"),
        ("[[handed\n", "it is not TOML"),
    ],
)
def test_a_file_that_must_be_mended_first_is_left_alone(text: str, says: str) -> None:
    """One line says what is wrong."""
    with pytest.raises(FileUnreadable, match=says):
        put_statement(text, "help", "Nobody.")
    for faulty in ("handed = 3\n", 'handed = ["a"]\n'):
        with pytest.raises(FileUnreadable, match="no list of tables"):
            put_receipt(faulty, "No. 7")
