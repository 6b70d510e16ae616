"""Passes and marks as they are kept, beside stets and whatever else is annotated."""

from __future__ import annotations

import json
from typing import get_args

from hypothesis import given
from hypothesis import strategies as st

from fairhand.model.proof_mark import Fate, Medium, ProofMark, ProofPass, ProofSign
from fairhand.model.stet import Stet
from fairhand.proof.marks_file import add_mark, read_marks
from fairhand.proof.pass_file import drop_line, put_line, read_passes
from fairhand.reading.annotation_form import find_fault

words = st.text(st.characters(codec="utf-8"), max_size=20)
marks = st.builds(
    ProofMark,
    st.just("urn:m"),
    words,
    st.sampled_from(get_args(ProofSign)),
    words,
    words,
    words,
    st.sampled_from(("draft.md", "fair copy")),
    words,
    st.integers(1, 999),
    st.integers(0, 99),
    st.just("2027-02-01T10:00:00+00:00"),
    st.sampled_from(get_args(Fate)),
    words,
)
passes = st.builds(
    ProofPass,
    st.just("urn:p"),
    st.sampled_from(get_args(Medium)),
    words,
    words,
    st.just("2027-02-01T10:00:00+00:00"),
    st.sampled_from(("", "2027-02-01T11:00:00+00:00")),
    st.sampled_from(((0, 0), (3, 12))),
    words,
    words,
)


@given(marks, passes)
def test_what_is_kept_is_read_again(mark: ProofMark, one: ProofPass) -> None:
    """Whatever was written in them."""
    text = put_line(put_line("", one), mark)
    assert read_passes(text) == ((one,), (mark,))
    assert text.count("\n") == 2


@given(marks, passes)
def test_each_line_is_a_web_annotation(mark: ProofMark, one: ProofPass) -> None:
    """Held against the rules of the W3C Web Annotation Data Model that notes are held against."""
    for line in put_line(put_line("", one), mark).rstrip("\n").split("\n"):
        assert find_fault(json.loads(line)) == ""


def test_stets_and_strange_lines_stand_as_they_were() -> None:
    """A mark changed or taken back leaves every other line alone, those that cannot be read too."""
    before = add_mark("", Stet("doubled-word", "had had", "He ", " enough.")) + "{broken\n[]\n"
    mark = ProofMark("urn:m", "urn:p", "delete", "very")
    text = put_line(before, mark)
    assert text.startswith(before)
    assert read_marks(text)[0][0].exact == "had had"
    assert drop_line(put_line(text, mark), "urn:m") == before
    assert read_passes(before) == ((), ())
