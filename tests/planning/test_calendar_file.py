"""The plan as a calendar file."""

from __future__ import annotations

import datetime as dt

from hypothesis import given
from hypothesis import strategies as st

from fairhand.model.plan import PaperDue, Plan, Sitting, Step
from fairhand.planning.calendar_file import OCTETS, escape_text, fold_line, write_calendar

NOW = dt.datetime(2027, 2, 8, 12, tzinfo=dt.UTC)
HOUR = dt.timedelta(hours=1)


def _free(_: dt.datetime) -> float:
    return 0.0


def calendar(hours: list[int], at: dt.datetime = NOW) -> bytes:
    """A step's sittings at some hours, and its paper."""
    step = Step("mills/draft", "mills", "write the draft", 60, why="Half of it is unwritten; begin, then go on.")
    sittings = tuple(Sitting(step.id, NOW + n * HOUR, NOW + (n + 1) * HOUR) for n in hours)
    papers = [PaperDue("mills", NOW + 90 * HOUR, _free, title="Mills, Tides"), PaperDue("locks", None, _free)]
    return write_calendar(Plan(sittings, ()), {step.id: step}, papers, at, "Robin")


def lines_named(name: str, data: bytes) -> list[str]:
    """The values of one property."""
    return [line.partition(":")[2] for line in data.decode().split("\r\n") if line.startswith(f"{name}:")]


@given(st.text())
def test_no_line_is_longer_than_75_octets_and_none_is_lost(text: str) -> None:
    """Unfolded, a line is what it was, and each piece is whole text by itself."""
    plain = text.encode("utf-8", "replace").decode().replace("\r", "").replace("\n", "")
    folded = fold_line(plain)
    pieces = folded.removesuffix(b"\r\n").split(b"\r\n")
    assert all(len(piece) <= OCTETS for piece in pieces)
    assert "".join(piece.decode()[n > 0 :] for n, piece in enumerate(pieces)) == plain


@given(st.text())
def test_a_value_stays_on_its_line(text: str) -> None:
    """No letter of it ends the line or begins another property."""
    escaped = escape_text(text)
    assert not set(escaped) & set("\r\n\x00")
    assert all(escaped[n - 1] == "\\" for n, one in enumerate(escaped) if one in ";,")


def test_a_sitting_that_was_moved_keeps_its_uid() -> None:
    """A later calendar has the higher sequence, so that what it moves is moved."""
    before, after = calendar([1, 30]), calendar([2, 40], NOW + HOUR)
    assert lines_named("UID", before) == lines_named("UID", after)
    assert len(set(lines_named("UID", before))) == 3
    assert int(lines_named("SEQUENCE", before)[0]) < int(lines_named("SEQUENCE", after)[0])


def test_a_due_hour_lasts_no_time_and_a_paper_without_one_has_none() -> None:
    """The due hour says so."""
    found = calendar([1])
    assert lines_named("SUMMARY", found) == [r"Mills\, Tides: write the draft", r"Due: Mills\, Tides"]
    assert len(lines_named("DTEND", found)) == 1
