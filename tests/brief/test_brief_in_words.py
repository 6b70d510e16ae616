"""Requirements in plain words, the sheet with its marks, and the writer's corrections."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.brief.correcting import list_fields, read_corrections
from fairhand.brief.kinds import KINDS
from fairhand.brief.marked_sheet import mark_sheet
from fairhand.brief.read import read_brief
from fairhand.brief.telling import name_requirement, tell_requirement
from fairhand.errors import FairhandError
from fairhand.model.requirement import Requirement
from fairhand.model.span import Span

SHEET = """History 12: The Canal
Due Monday, March 1, 2027, at noon. Submit it by email.

Write about 1,500 words, excluding footnotes, and hold to them. Use Chicago style (notes and
bibliography). Cite no more than ten sources, at least three of them articles from 2015 or later.
Include two maps. Each day late costs a third of a letter grade; nothing is taken after four days.
Describe what you see at the lock-keeper's house.
"""

VALUES = st.one_of(
    st.none(), st.booleans(), st.integers(), st.floats(allow_nan=False), st.text(max_size=12), st.just(("a", "b"))
)


def test_each_requirement_is_said_in_plain_words() -> None:
    """Numbers, days and rules as one says them, without the names of keys."""
    told = {r.id: tell_requirement(r) for r in read_brief([("a.txt", SHEET)]).requirements}
    assert told["length.paper"] == "about 1,500 words; footnotes are not counted"
    assert told["due.final"] == "on Monday 1 March 2027, 12:00"
    assert told["style"] == "Chicago, notes and bibliography"
    assert told["sources.any"].startswith("at most 10 sources")
    assert told["submit.email"] == "by e-mail"
    assert "a grade off for each day; refused after 4 days" in told["late"]


@given(st.data())
def test_any_values_can_be_told(data: st.DataObject) -> None:
    """Whatever the writer corrected a value to, it is told, and shown in its field."""
    row = data.draw(st.sampled_from(KINDS))
    asked = Requirement(row.kind, {name: data.draw(VALUES) for name in row.names}, "", Span(0, 0))
    assert name_requirement(asked)
    assert isinstance(tell_requirement(asked), str)
    assert read_corrections(asked, {}) == {}
    assert len(list_fields(asked)) == len(row.names)


@given(
    st.text(alphabet="ab .\n-•\t0", max_size=80),
    st.lists(st.tuples(st.integers(0, 80), st.integers(0, 80)), max_size=6),
)
def test_the_pieces_are_the_sheet(text: str, spans: list[tuple[int, int]]) -> None:
    """Whatever is marked, and however it overlaps, no word is lost or doubled, and each mark has its note."""
    asked = [Requirement("task", {}, "", Span(min(s), max(s)), "must", "a", str(n)) for n, s in enumerate(spans)]
    sheet = mark_sheet("a", text, asked, text.split("."))
    assert "".join(piece.text for piece in sheet.pieces).replace("\n", " ") == text.replace("\n", " ")
    assert sorted(n for piece in sheet.pieces for n in piece.notes) == list(range(len(sheet.places)))


def test_what_was_not_understood_is_marked_in_the_sheet() -> None:
    """Its place is shown, with nothing that it asks."""
    brief = read_brief([("a.txt", SHEET)])
    sheet = mark_sheet("a.txt", SHEET, brief.requirements, brief.unread)
    unread = [place.span.of(SHEET) for place in sheet.places if not place.requirements]
    assert "Describe what you see at the lock-keeper's house." in unread


def test_wrapped_lines_are_joined_and_others_kept() -> None:
    """A line that only ran out of room goes on; a heading, an item and a row of a table stay lines of their own."""
    text = "Length\nWrite your paper in no more than fifteen hundred words and in good time,\nplease.\n\n- one\n- two\n"
    shown = "".join(piece.text for piece in mark_sheet("a", text, ()).pieces)
    assert shown == text.replace("time,\nplease", "time, please")


def test_words_that_ask_several_things_are_one_place() -> None:
    """Five headings in one sentence are one mark."""
    text = "Use these headings: Ships; Ports; Crews."
    brief = read_brief([("a", text)])
    (place,) = mark_sheet("a", text, brief.requirements).places
    assert len(place.requirements) == 3


def test_what_is_not_counted_is_corrected_in_both_its_lists() -> None:
    """The wider list follows the exact one; emptied, everything counts."""
    asked = Requirement("length", {"excludes": ("headings",), "uncounted": ("headings",)}, "", Span(0, 0))
    assert read_corrections(asked, {"uncounted": "tables, headings"}) == {
        "uncounted": ("headings", "tables"),
        "excludes": ("figures", "headings"),
    }
    assert read_corrections(asked, {"uncounted": " "}) == {"uncounted": (), "excludes": ()}
    assert "excludes" not in [one.name for one in list_fields(asked) if one.usual]


@pytest.mark.parametrize(
    ("kind", "written", "says"),
    [
        ("length", {"min": "many"}, "at least: “many” is not a number"),
        ("due", {"on": "next week"}, "day: “next week” is not a day"),
        ("due", {"at": "25:00"}, "hour: “25:00” is not an hour"),
        ("length", {"about": "perhaps"}, "only about: “perhaps” is not yes or no"),
        ("length", {"unit": " "}, "unit: it cannot be left empty"),
        ("length", {"unit": "lines"}, "unit: “lines” is not one of words, pages"),
        ("length", {"colour": "blue"}, "colour: it is no value of a length"),
    ],
)
def test_a_correction_that_is_none_is_refused(kind: str, written: dict[str, str], says: str) -> None:
    """The field is named, and what may stand in it."""
    values = {"unit": "words", "min": 900, "about": True} if kind == "length" else {"on": "2027-03-01", "at": None}
    asked = Requirement(kind, values, "", Span(0, 0))  # type: ignore[arg-type]
    with pytest.raises(FairhandError, match=says):
        read_corrections(asked, written)
