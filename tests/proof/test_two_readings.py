"""Two readings of one proof, and what neither saw."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from fairhand.model.proof_mark import ProofSign
from fairhand.model.span import Span
from fairhand.proof.two_readings import TwoReadings, match_marks, range_of_errors, unseen_by_polya

Mark = tuple[ProofSign, Span]


def test_the_same_is_the_same_place_and_kind() -> None:
    """One strikes out what the other writes anew; a change of type at the same words is another error."""
    ours: list[Mark] = [("delete", Span(10, 14)), ("italic", Span(30, 40)), ("query", Span(50, 60))]
    theirs: list[Mark] = [("substitute", Span(12, 20)), ("substitute", Span(30, 40)), ("query", Span(50, 60))]
    assert match_marks(ours, theirs) == (TwoReadings(2, 2, 1), ((0, 0),))


def test_each_error_counts_once() -> None:
    """Marked twice by one reader, it is one; each mark is matched with the one that agrees best."""
    ours: list[Mark] = [("delete", Span(10, 14)), ("insert", Span(10, 14)), ("delete", Span(20, 24))]
    theirs: list[Mark] = [("delete", Span(19, 24)), ("delete", Span(12, 15))]
    assert match_marks(ours, theirs) == (TwoReadings(2, 2, 2), ((0, 1), (2, 0)))


counts = st.tuples(st.integers(0, 60), st.integers(0, 60), st.integers(0, 60)).map(
    lambda each: TwoReadings(each[0], each[1], min(each))
)


@given(counts)
def test_the_range_never_goes_below_what_was_found(readings: TwoReadings) -> None:
    """And holds Pólya's estimate wherever there is enough to tell."""
    low, high = range_of_errors(readings)
    assert readings.found <= low <= high
    unseen = unseen_by_polya(readings)
    if readings.enough and unseen is not None:
        assert low - 1 <= readings.found + unseen <= high + 1


places = st.builds(lambda at, length: Span(at, at + length), st.integers(0, 80), st.integers(1, 9))
marks = st.lists(st.tuples(st.sampled_from(("delete", "italic", "query")), places), max_size=8)


@given(marks, marks)
def test_whoever_comes_first(ours: list[Mark], theirs: list[Mark]) -> None:
    """No more are shared than either found, and no mark is matched twice."""
    readings, pairs = match_marks(ours, theirs)
    assert readings.both == len(pairs) <= min(readings.first, readings.second)
    assert len({i for i, _ in pairs}) == len({j for _, j in pairs}) == len(pairs)
