"""The writer's word on pairs of sources."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.errors import FileUnreadable
from fairhand.evidence.rulings import drop_ruling, put_ruling, read_rulings
from fairhand.evidence.support import weigh_support
from fairhand.model.entry import Entry, Name
from fairhand.model.point import Point, Points, Support
from fairhand.model.ruling import Ruling

APART = Ruling("lind", "marsh", independent=True)
POINTS = Points("", (Point("p1", "Ebbs scour.", "main", (Support("lind"), Support("marsh"))),))


def entries(*names: str) -> dict[str, Entry]:
    """Two sources by the people named."""
    return {i: Entry(i, "book", i, authors=(Name(n, "Ada"),)) for i, n in zip(("lind", "marsh"), names, strict=True)}


def test_a_dependence_is_overruled() -> None:
    """What looks like one witness counts as two where the writer says so, and is still shown."""
    (seen,) = weigh_support(POINTS, entries("Lind", "Lind"), {})
    (ruled,) = weigh_support(POINTS, entries("Lind", "Lind"), {}, rulings=(APART,))
    assert (len(seen.independent), seen.lacking) == (1, 1)
    assert (len(ruled.independent), ruled.lacking, ruled.dependences) == (2, 0, ())
    assert ruled.overruled == seen.dependences


def test_the_writer_sees_what_no_record_tells() -> None:
    """Two sources that look independent count as one where the writer says so."""
    one = Ruling("marsh", "lind", independent=False, why="the same survey")
    (ruled,) = weigh_support(POINTS, entries("Lind", "Marsh"), {}, rulings=(one,))
    assert [(tie.kind, tie.why) for tie in ruled.dependences] == [("writer", "the same survey")]
    assert ruled.lacking == 1


def test_the_last_word_holds_and_remarks_stay() -> None:
    """A ruling takes the place of the one before, in whatever order the two are named; taking it back leaves none."""
    text = put_ruling("# mine\n", APART)
    text = put_ruling(text, Ruling("marsh", "lind", independent=False))
    assert text.startswith("# mine\n")
    assert read_rulings(text)[0] == (Ruling("marsh", "lind", independent=False),)
    assert read_rulings(drop_ruling(text, APART.pair)) == ((), ())


@pytest.mark.parametrize("pair", ['sources = ["a"]', 'sources = ["a", "a"]\nindependent = true', "sources = 1"])
def test_what_names_no_two_sources_is_said(pair: str) -> None:
    """A faulty pair is a problem, and the others are read."""
    good = '[[pairs]]\nsources = ["a", "b"]\nindependent = true\n'
    rulings, problems = read_rulings(f"[[pairs]]\n{pair}\n{good}")
    assert (len(rulings), [one.where for one in problems]) == (1, ["support.toml, pair 1"])


@pytest.mark.parametrize("text", ["pairs = [", "pairs = 3"])
def test_a_broken_file_is_not_written_over(text: str) -> None:
    """It must be mended first."""
    assert len(read_rulings(text)[1]) == 1
    with pytest.raises(FileUnreadable):
        put_ruling(text, APART)


@given(st.text())
def test_no_text_crashes_the_reader(text: str) -> None:
    """Whatever the file holds, it is read or said."""
    read_rulings(text)
