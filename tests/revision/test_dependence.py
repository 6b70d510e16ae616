"""What leans on what, and what breaks where passages are cut or moved."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.citing.recognise import recognise
from fairhand.citing.resolve import resolve
from fairhand.manuscript.draft import read_manuscript
from fairhand.model.entry import Entry, Issued, Name
from fairhand.revision.body import read_body
from fairhand.revision.dependence import Tie, find_ties, list_broken, needs_of
from fairhand.revision.terms import find_terms

LIND = Entry("lind", "book", title="Ebb and Flow", authors=(Name("Lind", "Ada"),), issued=Issued(2019), page="1-200")
FILL = "The harbour silted up in every one of these years, and the town paid for the dredging out of the rates. "


def ties_of(*passages: str) -> tuple[Tie, ...]:
    """The ties between passages, each made long enough to be one."""
    draft = read_manuscript("# Tides\n\n" + "\n\n".join(f"{passage} {FILL}" for passage in passages) + "\n")
    mentions = recognise(draft, (LIND,))
    resolved = resolve(draft, mentions, (LIND,))
    body = read_body(draft, mentions, resolved, (LIND,))
    assert len(body) == len(passages)
    return find_ties(draft, body, mentions, resolved, {"lind": "Lind (2019)"})


def firm(*passages: str) -> list[tuple[str, int, int]]:
    """The firm ties: kind, passage, ground."""
    return [(tie.kind, tie.passage, tie.ground) for tie in ties_of(*passages) if tie.firm]


@pytest.mark.parametrize(
    "explains",
    [
        "The Gross Domestic Product (GDP) rose.",
        "The gross domestic product (GDP) rose.",
    ],
)
def test_a_short_form_leans_on_where_it_is_explained(explains: str) -> None:
    """Not where it is explained again, nor where it was used before."""
    assert firm("Rain fell.", explains, "Then GDP fell.") == [("term", 2, 1)]
    assert firm("Rain fell.", explains, f"{explains} Then GDP fell.") == []
    assert firm("GDP is much spoken of.", explains, "Then GDP fell.") == []


@pytest.mark.parametrize(
    "explains",
    [
        "Lind calls this “slack water.”",
        "By “slack water” I mean the pause between tides.",
        "*Slack water* is defined as the pause between tides.",
        "“Slack water” refers to the pause between tides.",
        "What pilots call “slack water” is the pause.",
    ],
)
def test_a_term_leans_on_where_it_is_explained(explains: str) -> None:
    """Whichever way it is said; its use is found whatever its case."""
    assert firm(explains, "Nothing moved.", "In slack water the boats lay still.") == [("term", 2, 0)]


@pytest.mark.parametrize("text", ["(Lind, 2019)", "He said “no” to it.", "The Old Quay (OQX) was sold.", "(1871)"])
def test_what_explains_no_term(text: str) -> None:
    """Citations, quotations, letters that begin no words before them, years."""
    assert find_terms(text) == ()


@pytest.mark.parametrize(
    "points",
    [
        "As shown above, the dredging of 1860 cost much.",
        "As I have argued, the dredging of 1860 cost much.",
        "The dredging of 1860 discussed above cost much.",
        "The dredging of 1860 was described earlier.",
    ],
)
def test_what_points_back_leans_on_what_it_speaks_of(points: str) -> None:
    """Not on the nearest passage, but on the one that shares most with the sentence."""
    assert firm("Dredging began in 1860 with two barges.", "The pilots struck for pay.", points) == [("pointing", 2, 0)]


def test_what_points_to_the_passage_before_leans_on_that() -> None:
    """And what points ahead leans on what comes; that tie breaks where its ground comes first."""
    assert firm("Dredging began.", "The pilots struck.", "In the previous paragraph it was peace.") == [
        ("pointing", 2, 1)
    ]
    (tie,) = [
        one
        for one in ties_of("The strike of the pilots is described below.", "Rain fell.", "The pilots went on strike.")
        if one.firm
    ]
    assert (tie.passage, tie.ground, tie.looks_ahead) == (0, 2, True)
    assert list_broken([tie], [0, 1, 2]) == ()
    assert list_broken([tie], [2, 0, 1]) == (tie,)


def test_a_surname_alone_leans_on_the_whole_name() -> None:
    """Places, months and what stands after an article are no people."""
    assert firm("Ellen Marsh kept the book.", "Rain fell.", "Marsh counted the ships.") == [("name", 2, 0)]
    assert firm("Mercury Hall was built in New York.", "The Hall was sold, and the York men left.") == []


def test_a_page_alone_leans_on_where_its_work_is_named() -> None:
    """A source cited twice in full is a place to look, and no more."""
    found = ties_of("Lind (2019) counts the ships.", "She says that “none came” (p. 12).")
    assert [(tie.kind, tie.firm) for tie in found if tie.kind != "opening"] == [("page alone", True)]
    found = ties_of("Ships came (Lind, 2019, p. 4).", "Ships left (Lind, 2019, p. 9).")
    assert [(tie.kind, tie.firm, tie.ground) for tie in found] == [("first citation", False, 0)]


def test_an_opening_takes_up_the_passage_before_it() -> None:
    """Where another comes between, it is a place to look; nothing needs it."""
    found = ties_of("The pilots struck.", "This strike lasted a year.", "Rain fell.")
    assert [(tie.kind, tie.passage, tie.ground) for tie in found] == [("opening", 1, 0)]
    assert needs_of(found, 1) == frozenset()
    assert list_broken(found, [0, 1, 2]) == ()
    assert [len(list_broken(found, order)) for order in ([0, 2, 1], [1, 2], [0, 2])] == [1, 1, 0]


def test_a_draft_without_passages_has_no_ties() -> None:
    """Nothing is asked of an empty draft."""
    empty = read_manuscript("")
    assert find_ties(empty, (), (), (), {}) == ()


@given(st.lists(st.text(alphabet='ABab.,:;“”"*_()[] \n’-(GHT)', min_size=30, max_size=160), max_size=6))
def test_no_draft_stops_the_reader(passages: list[str]) -> None:
    """Whatever is written: each tie is of two passages of the body, and its words stand in the one that leans."""
    draft = read_manuscript("\n\n".join(f"{one} {FILL}" for one in passages))
    body = read_body(draft, (), (), ())
    for tie in find_ties(draft, body, (), (), {}):
        assert tie.passage != tie.ground
        assert tie.ground < len(body)
        assert body[tie.passage].span.contains(tie.span)
        assert tie.span.of(draft.text).strip()
