"""What was noted, held against the source."""

from __future__ import annotations

from dataclasses import replace

import pytest

from fairhand.model.entry import Entry
from fairhand.model.note import Note
from fairhand.model.paper import Paper
from fairhand.model.source import Page, SourceText
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.noted import doubt_note, tell_held

PAGES = (
    Page("7", "Silt settles at the turn of the tide, and the ebb’s first hour scours the chan-\nnel again."),
    Page("8", "Nobody had asked the harbour board why the dredgers lay idle for two winters."),
)
PAPER = Paper(
    name="p", entries=(Entry("lind-2019", "book"),), texts={"lind-2019": SourceText("lind-2019", PAGES, paged=True)}
)


@pytest.mark.parametrize(
    ("page", "quotation", "doubt"),
    [
        ("7", "the ebb's first hour\nscours the", ""),  # quotation marks and line ends are no difference
        ("", "why the dredgers lay idle", ""),
        ("7", "", ""),
        ("7", "why the dredgers lay idle for two winters", "In the text at hand these words stand on p. 8."),
        ("8", "a committee of fishermen hired the smaller boats instead", "not found in the text at hand"),
        ("8", "Nobody had asked the harbour board why the dredgers lay idle for ten winters", "two winters"),
    ],
)
def test_a_quotation_is_doubted_where_the_source_has_it_otherwise(page: str, quotation: str, doubt: str) -> None:
    """In other words, on another page, or not at all."""
    said = doubt_note(Analysis(PAPER, lambda _: None), Note("n", "lind-2019", page, quotation, remark="so"))
    assert doubt in said
    assert bool(said) == bool(doubt)


def test_without_a_text_nothing_is_doubted() -> None:
    """Nor of a source that is not in the list."""
    bare = Analysis(replace(PAPER, texts={}), lambda _: None)
    assert doubt_note(bare, Note("n", "lind-2019", "7", "words that stand nowhere")) == ""
    assert doubt_note(bare, Note("n", "nobody", "7", "words that stand nowhere")) == ""


@pytest.mark.parametrize(
    ("note", "said"),
    [
        (Note("n", "lind-2019", "7", "the ebb's first hour"), "Held against the source: it stands so."),
        (Note("n", "lind-2019", "", "why the dredgers lay idle"), "Held against the source: it stands so on p. 8."),
        (Note("n", "lind-2019", "7", "why the dredgers lay idle"), "In the text at hand these words stand on p. 8."),
        (Note("n", "lind-2019", "7", remark="so"), ""),
        (Note("n", "nobody", "7", "the ebb's first hour"), ""),
    ],
)
def test_whether_a_quotation_was_held_against_its_source_is_told(note: Note, said: str) -> None:
    """Where it was, how it stands, with the page that a note lacks; where there is no text, that it was not."""
    assert tell_held(Analysis(PAPER, lambda _: None), note) == said
    bare = tell_held(Analysis(replace(PAPER, texts={}), lambda _: None), note)
    assert bare.startswith("Not held against the source yet") == (note.source == "lind-2019" and bool(note.quotation))
