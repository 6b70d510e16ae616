"""Leads gathered, told apart and ranked."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.leads.asides import Aside, add_aside, read_asides
from fairhand.leads.lead import Lead, Pointer, gather_leads
from fairhand.leads.mining import Mined
from fairhand.leads.people import read_people
from fairhand.leads.ranking import Lacking, rank_leads
from fairhand.model.entry import Entry, Issued, Name
from fairhand.model.focus import Question


def mined(title: str = "", family: str = "Lind", year: str = "2001", **fields: object) -> Mined:
    """A reference that says so much."""
    csl = {"type": "article-journal", "title": title, "author": [{"family": family}], "issued": year, **fields}
    return Mined(f"{family}. {title}", "9", {name: value for name, value in csl.items() if value}, frozenset())


def lead(title: str, *sources: str, guessed: tuple[str, ...] = ()) -> Lead:
    """A lead of that title, pointed to by these sources."""
    entry = Entry(title.lower().replace(" ", "-"), "book", title, authors=(Name("Lind"),), issued=Issued(2001))
    return Lead(entry, tuple(Pointer(source, "9", title) for source in sources), frozenset(guessed))


def test_references_without_titles_are_one_work_where_their_place_is_the_same() -> None:
    """As physicists cite: author, year, volume and first page."""
    one = mined(volume="12", page="113", **{"container-title": "J. Tides"})
    other = mined(volume="12", page="113-128", **{"container-title": "Journal of Tides"})
    another = mined(volume="12", page="140", **{"container-title": "J. Tides"})
    leads = gather_leads({"a": [one, another], "b": [other]}, [])
    assert sorted(found.sources for found in leads) == [("a",), ("a", "b")]


def test_what_one_reference_leaves_out_another_fills_in() -> None:
    """The fullest stands first."""
    (found,) = gather_leads(
        {"a": [mined("The salt roads")], "b": [mined("The salt roads", volume="7", DOI="10.5555/x")]}, []
    )
    assert found.entry.doi == "10.5555/x"
    assert found.entry.csl["volume"] == "7"
    assert found.sources == ("a", "b")


def test_a_source_by_whatever_spelling_is_no_lead() -> None:
    """Its title with a slip, a year apart."""
    there = Entry(
        "salt", "article-journal", "The salt roads of Hull", authors=(Name("Lind", "Ada"),), issued=Issued(2002)
    )
    assert gather_leads({"a": [mined("The salt road of Hull")]}, [there]) == ()


def test_leads_of_one_name_are_told_apart() -> None:
    """By a number."""
    leads = gather_leads(
        {"a": [mined("Salt roads, part one"), mined("Salt roads, part seven: the northern coast")]}, []
    )
    assert [found.entry.id for found in leads] == ["lind-2001-salt-roads", "lind-2001-salt-roads-2"]


def test_a_lead_that_several_things_speak_for_comes_first() -> None:
    """Sources, an open question and a demand add up; each is a reason, the weightiest first."""
    question = Question("q", "How did tide mills grind salt?")
    leads = [lead("Bread"), lead("Tide mills and salt", "a"), lead("Harbours", "a", "b")]
    lacking = Lacking("at least two books", lambda entry: entry.title.startswith("Tide"))
    ranked = rank_leads(leads, [question], [lacking])
    assert [one.lead.entry.title for one in ranked] == ["Tide mills and salt", "Harbours", "Bread"]
    assert ranked[0].reasons[0] == "it is what the sheet still asks for: at least two books"
    assert ranked[1].reasons == ("2 sources of yours point to it",)
    assert ranked[2].reasons == ()
    closed = rank_leads(leads, [replace(question, state="answered")])
    assert closed[0].lead.entry.title == "Harbours"


def test_a_guess_is_said_where_it_decides() -> None:
    """That it is a book may be guessed only."""
    ranked = rank_leads([lead("Ebb", guessed=("type",))], (), [Lacking("a book", lambda entry: entry.type == "book")])
    assert "as far as the reference tells" in ranked[0].reasons[0]


@pytest.mark.parametrize(
    ("text", "families"),
    [
        ("Lind, A., & Okafor, B. C.", ["Lind", "Okafor"]),
        ("A. Lind, B.-C. Okafor and D. van der Meer", ["Lind", "Okafor", "van der Meer"]),
        ("Lind AB, Okafor C, O'Neill D", ["Lind", "Okafor", "O'Neill"]),
        ("Lind, Ada, Bo Okafor, and Carla Marsh", ["Lind", "Okafor", "Marsh"]),
        ("Lind, Ada; Okafor, Bo", ["Lind", "Okafor"]),
        ("LIND, A. and OKAFOR, B.", ["Lind", "Okafor"]),
        ("Lind, A. B., Jr., Okafor, C.", ["Lind", "Okafor"]),
        ("Reid, F.; Ward, G. (Eds.)", ["Reid", "Ward"]),
    ],
)
def test_names_are_taken_apart_in_whatever_form(text: str, families: list[str]) -> None:
    """Turned round or not, with stops or without."""
    assert [one.get("family") for one in read_people(text).names] == families


@given(st.text(max_size=200))
def test_no_names_stop_the_reader(text: str) -> None:
    """Whatever stands where names should, each that is read has a family name or is a body."""
    assert all(one.get("family") or one.get("literal") for one in read_people(text).names)


@given(st.lists(st.tuples(st.text(min_size=1, max_size=20), st.text(max_size=20), st.booleans()), max_size=8))
def test_the_last_word_on_a_lead_holds(words: list[tuple[str, str, bool]]) -> None:
    """However often it was put aside and brought back."""
    text = ""
    last = {}
    for name, why, back in words:
        text = add_aside(text, Aside(name, why, back=back))
        last[name] = back
    found, problems = read_asides(text)
    assert not problems
    assert set(found) == {name for name, back in last.items() if not back}


def test_a_line_that_says_nothing_of_a_lead_is_told() -> None:
    """With its number, and the others are read."""
    found, problems = read_asides('{"lead": "a", "aside": true}\nmuddle\n{"lead": "b"}\n')
    assert list(found) == ["a"]
    assert [one.where for one in problems] == ["leads.jsonl, line 2", "leads.jsonl, line 3"]
