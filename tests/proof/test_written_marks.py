"""Marks from a printed proof, as they are written down."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.proof.written_marks import WrittenMark, read_written


@pytest.mark.parametrize(
    ("line", "mark"),
    [
        ('3.12 "recieve" / receive', WrittenMark(3, 12, "recieve", "substitute", "receive")),
        ("3.12 “recieve” /receive", WrittenMark(3, 12, "recieve", "substitute", "receive")),
        ('p. 3, line 12 "very" delete', WrittenMark(3, 12, "very", "delete")),
        ('7 "note" insert of it', WrittenMark(1, 7, "note", "insert", "of it")),
        ('7 "it" (2) Italic', WrittenMark(1, 7, "it", "italic", "", 2)),
        ('7 "which year" query 1926 or 1931?', WrittenMark(1, 7, "which year", "query", "1926 or 1931?")),
        ('7 "which year" ?', WrittenMark(1, 7, "which year", "query")),
        ('7 "only is" transpose', WrittenMark(1, 7, "only is", "transpose")),
        ('7 "However" new paragraph', WrittenMark(1, 7, "However", "new paragraph")),
        ('7 "Quay" lower-case', WrittenMark(1, 7, "Quay", "lower case")),
    ],
)
def test_a_mark_is_read(line: str, mark: WrittenMark) -> None:
    """Page and line, the words, and the sign by any of its names, with what it needs."""
    assert read_written(line) == ((mark,), ())


def test_the_page_holds_until_another_is_given() -> None:
    """So that a page of marks is typed with its number once."""
    marks, faults = read_written('2.1 "a" delete\n4 "b" delete\n\n3.1 "c" delete\n2 "d" delete')
    assert [(one.page, one.line) for one in marks] == [(2, 1), (2, 4), (3, 1), (3, 2)]
    assert faults == ()


@pytest.mark.parametrize(
    ("line", "why"),
    [
        ("12 recieve / receive", "is not understood"),
        ('12 "recieve" /', "needs its new matter"),
        ('12 "" delete', "it marks no words"),
        ('12 "very" delete it', "after delete nothing is written"),
        ('12 "very" upside down', "is not understood"),
    ],
)
def test_what_is_no_mark_is_said_with_its_line(line: str, why: str) -> None:
    """Which line, what is wrong, and how it is written; the other lines are read all the same."""
    marks, (fault,) = read_written(f'1 "a" delete\n{line}\n2 "b" delete')
    assert len(marks) == 2
    assert fault.where == "mark 2"
    assert why in str(fault)
    assert "3.12" in str(fault)


@given(st.text(max_size=200))
def test_no_list_crashes_the_reader(text: str) -> None:
    """Each line that is not empty is a mark or a fault."""
    marks, faults = read_written(text)
    assert len(marks) + len(faults) == sum(bool(line.strip()) for line in text.split("\n"))
