"""Whether sources count as one witness."""

from __future__ import annotations

from dataclasses import replace
from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.evidence.independence import Dependence, count_independent, find_citations, find_dependences
from fairhand.evidence.passage import Passage
from fairhand.model.entry import Entry, Issued, Name
from fairhand.model.source import Page, SourceText

ENTRIES = {
    "ask-1990": Entry("ask-1990", "book", "Tide and Town", authors=(Name("Ask", "Berit"),), issued=Issued(1990)),
    "ask-1994": Entry("ask-1994", "book", "Town and Tide", authors=(Name("Ask", "B."),), issued=Issued(1994)),
    "ask-2001": Entry("ask-2001", "book", "Salt", authors=(Name("Ask", "Carl"),), issued=Issued(2001)),
    "bø-2003": Entry("bø-2003", "book", "The Long Quay of Our Town", authors=(Name("Bø", "Dag"),), issued=Issued(2003)),
}


def text(i: str, words: str) -> SourceText:
    """A source of one page."""
    return SourceText(i, (Page("1", words),), paged=True)


def test_two_works_of_one_author_are_tied() -> None:
    """An author is known again by initials."""
    (tie,) = find_dependences(["ask-1990", "ask-1994"], ENTRIES, {})
    assert tie.kind == "shared-author"
    assert "Ask" in tie.why


def test_a_namesake_is_another_author() -> None:
    """Equal surnames with different given names are two people."""
    assert find_dependences(["ask-1990", "ask-2001"], ENTRIES, {}) == ()


def test_a_source_that_rests_on_another_is_tied_to_it() -> None:
    """It cites it, by a surname with its year near by, and says so; the sentence is shown with its page."""
    texts = {"bø-2003": text("bø-2003", "The figures are those of Ask, as she gave\nthem in 1990, and no others.")}
    (tie,) = find_dependences(["ask-1990", "bø-2003"], ENTRIES, texts)
    assert (tie.first, tie.second, tie.kind) == ("bø-2003", "ask-1990", "rests")
    assert tie.here == Passage("The figures are those of Ask, as she gave them in 1990, and no others.", "1")


def test_a_citation_in_passing_ties_nothing() -> None:
    """It is told apart: the two count as two."""
    texts = {"bø-2003": text("bø-2003", "Ask (1990) saw the matter otherwise.")}
    assert find_dependences(["ask-1990", "bø-2003"], ENTRIES, texts) == ()
    (tie,) = find_citations(["ask-1990", "bø-2003"], ENTRIES, texts)
    assert (tie.first, tie.second, tie.kind) == ("bø-2003", "ask-1990", "cites")


def test_a_surname_alone_is_no_citation() -> None:
    """The word may be a verb, or another person's name."""
    texts = {"bø-2003": text("bø-2003", "Ask whom you will; the quay was there before the town.")}
    assert find_dependences(["ask-1990", "bø-2003"], ENTRIES, texts) == ()


@pytest.mark.parametrize(
    ("words", "cites"),
    [
        ("So say B. Ask (1990) and others.", True),
        ("Ask, B. (1990). Tide and town. Quay Press.", True),
        ("Moe KL, Ask BT (1990) Tides.", True),
        ("So says C. Ask (1990).", False),
        ("Ask, C. L. (1990). Tides.", False),
        ("Moe KL, Ask CL (1990) Tides.", False),
        ("Moe KL, Berg-Ask BT (1990) Tides.", False),
        ("C. Ask (1985) came first, and then Ask (1990).", True),
    ],
)
def test_initials_tell_a_citation_from_a_namesakes(words: str, cites: bool) -> None:
    """In running words and in a list; half a double name is another name."""
    found = find_citations(["ask-1990", "bø-2003"], ENTRIES, {"bø-2003": text("bø-2003", words)})
    assert bool(found) == cites


def test_a_whole_title_is_a_citation() -> None:
    """A source that names another's title cites it, over a line's end too."""
    texts = {"ask-1990": text("ask-1990", "See The Long Quay\nof Our Town for more.")}
    assert [tie.kind for tie in find_citations(["ask-1990", "bø-2003"], ENTRIES, texts)] == ["cites"]


@given(st.lists(st.tuples(st.integers(0, 6), st.integers(0, 6)), max_size=12), st.integers(1, 7))
def test_the_choice_of_independent_sources_is_the_largest(pairs: list[tuple[int, int]], number: int) -> None:
    """It holds no tied pair, and no larger choice without one exists (checked by trying them all)."""
    ids = [str(n) for n in range(number)]
    ties = [Dependence(str(a), str(b), "cites", "") for a, b in pairs if a != b]
    bad = {frozenset((t.first, t.second)) for t in ties}

    def is_free(chosen: tuple[str, ...]) -> bool:
        return not any(frozenset(pair) in bad for pair in combinations(chosen, 2))

    found = count_independent(ids, ties)
    best = max(len(c) for size in range(number + 1) for c in combinations(ids, size) if is_free(c))
    assert is_free(found)
    assert len(found) == best


def test_an_unsigned_work_is_its_issuers() -> None:
    """A body's page that nobody signed is the body's; two unsigned pieces of one newspaper are two."""
    board, page = (
        Entry("b", "report", "Report", authors=(Name(literal="Drainage Board"),)),
        Entry("w", "webpage", "Page"),
    )
    issued = replace(page, publisher="Drainage Board")
    assert [tie.kind for tie in find_dependences(["b", "w"], {"b": board, "w": issued}, {})] == ["shared-author"]
    assert find_dependences(["b", "w"], {"b": board, "w": page}, {}) == ()
    pieces = {i: Entry(i, "article-newspaper", i, publisher="Courier Company") for i in ("one", "other")}
    assert find_dependences(list(pieces), pieces, {}) == ()
