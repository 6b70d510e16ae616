"""What is looked for, and the passages that are shown of it."""

from __future__ import annotations

import sqlite3

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.model.piece import Piece
from fairhand.model.source import Page, SourceText
from fairhand.reading.passages import find_passage, weigh_by_terms
from fairhand.reading.pieces import LONGEST, part_source
from fairhand.reading.query import match_all, read_query
from fairhand.reading.ranking import Collection, rank_pieces, read_question, weigh_piece, widen_question
from fairhand.reading.vocabulary import mend_word


@pytest.mark.parametrize(
    ("query", "terms"),
    [
        ("harbour seals", ["harbour", "seals"]),
        ("“harbour seals” on the coast", ["“harbour seals”", "coast"]),
        ('"the tide"', ["“the tide”"]),
        ("the", ["the"]),
        ("half-days", ["half days"]),
        ("moor* Moor*", ["moor*"]),
        ("AND OR NOT", ["and", "or", "not"]),
        ("*", []),
        ("", []),
    ],
)
def test_a_query_is_read_as_one_would_write_it(query: str, terms: list[str]) -> None:
    """No operator has to be learned, and a word that joins others counts only where there is nothing else."""
    assert [str(term) for term in read_query(query)] == terms


@given(st.text())
def test_any_query_is_one_that_the_index_takes(query: str) -> None:
    """Whatever is written, the index never calls it malformed."""
    base = sqlite3.connect(":memory:")
    base.execute("CREATE VIRTUAL TABLE f USING fts5(t)")
    terms = read_query(query)
    if terms:
        base.execute("SELECT rowid FROM f WHERE f MATCH ?", (match_all(terms, [()] * len(terms)),)).fetchall()


@given(st.text())
def test_the_pieces_make_up_the_page(text: str) -> None:
    """Each stands in its page where it says, none overlaps the next, and no word is lost."""
    pieces = list(part_source(SourceText("a", (Page("1", text),), paged=True)))
    assert all(text[one.start : one.start + len(one.text)] == one.text for one in pieces)
    assert "".join("".join(one.text for one in pieces).split()) == "".join(text.split())


def test_a_long_page_is_parted_between_paragraphs() -> None:
    """So that what is found has a place; a page without a blank is parted all the same."""
    paragraph = "The tide turned. " * 60 + "\n\n"
    pieces = list(part_source(SourceText("a", (Page(None, paragraph * 9),), paged=False)))
    assert len(pieces) > 1
    assert all(len(one.text) <= LONGEST and one.text.endswith("\n\n") for one in pieces)
    assert len(list(part_source(SourceText("a", (Page(None, "x" * 9000),), paged=False)))) == 3


@given(st.text())
def test_a_passage_stands_where_it_says(text: str) -> None:
    """Its sentence is what the page has at its place."""
    for piece in part_source(SourceText("a", (Page("1", text),), paged=True)):
        found = find_passage(piece, weigh_by_terms(read_query("tide")))
        assert found.span.of(text) == found.sentence


def test_a_heading_is_no_part_of_the_sentence_below_it() -> None:
    """Though it ends without a stop."""
    piece = Piece("a", 0, "", 0, "The Mooring Rights\n\nA mooring was let by the year. It rained.")
    assert find_passage(piece, weigh_by_terms(read_query("mooring let"))).sentence == "A mooring was let by the year."


@pytest.mark.parametrize(
    ("word", "meant"),
    [
        ("harbuor", "harbour"),
        ("harbor", "harbour"),
        ("quey", "quay"),
        ("sea", ""),
        ("mooringss", "moorings"),
        ("x1x2", ""),
    ],
)
def test_a_misspelled_word_is_taken_for_the_nearest(word: str, meant: str) -> None:
    """One fault in a short word, two in a long one; none in a word of three letters."""
    assert mend_word(word, {"harbour": 9, "arbour": 1, "quay": 4, "moorings": 2, "see": 7}) == meant


def test_a_page_is_found_by_what_such_pages_speak_of() -> None:
    """A page that has no word of the question joins behind those that have, where it speaks as they do."""
    texts = (
        "Boats were tied to moorings along the quay.",
        "Moorings along the quay were let by the year.",
        "Bread was dear in the town.",
        "Boats must be tied fast.",
        "The council met on Mondays.",
    )
    weighed = [weigh_piece(Piece(str(n), 0, "", 0, text)) for n, text in enumerate(texts)]

    def count(stems: object) -> dict[str, int]:
        return {stem: sum(stem in one.times for one in weighed) for stem in stems}  # type: ignore[attr-defined]

    collection = Collection(len(texts), 5.0, count)
    asked = read_question("Where were boats tied?")
    first = rank_pieces(asked, weighed, collection)
    assert [one.piece.source for one in first] == ["0", "3"] or [one.piece.source for one in first] == ["3", "0"]
    wide = rank_pieces(widen_question(asked, first), weighed, collection)
    assert [one.piece.source for one in wide][2:] == ["1"]


@given(st.text(), st.lists(st.text(), max_size=4))
def test_any_question_ranks_any_pieces(question: str, texts: list[str]) -> None:
    """Each piece at most once, the weights falling."""
    weighed = [weigh_piece(Piece(str(n), 0, "", 0, text)) for n, text in enumerate(texts)]
    collection = Collection(len(texts), 1.0, lambda stems: dict.fromkeys(stems, 1))
    asked = read_question(question)
    ranked = rank_pieces(asked, weighed, collection)
    assert [one.weight for one in ranked] == sorted((one.weight for one in ranked), reverse=True)
    assert len({one.piece for one in ranked}) == len(ranked)
    widen_question(asked, ranked)
