"""What is parsed of a paper is kept in its cache, and worked out apart while the rest is read."""

from __future__ import annotations

from pathlib import Path

import pytest

from fairhand.copyedit.grammar.clauses import Clause
from fairhand.copyedit.grammar.joining.splice import find_splices
from fairhand.language import parsing
from fairhand.session import parses
from fairhand.session.parses import Parses

SENTENCES = ["The ferry was late.", "Nobody on the quay had been told."]


@pytest.fixture(autouse=True)
def nothing_known() -> None:
    """Each test begins with nothing parsed."""
    parsing._known().clear()


def test_what_was_parsed_is_known_to_the_next_process(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """It is read from the cache, and the parser is not asked."""
    parsed = Parses(tmp_path).parse(SENTENCES)
    parsing._known().clear()
    monkeypatch.setattr(parsing, "_parser", lambda: pytest.fail("the parser was asked"))
    assert Parses(tmp_path).parse(SENTENCES) == parsed


def test_only_what_changed_is_parsed_again(tmp_path: Path) -> None:
    """The other sentences are known."""
    Parses(tmp_path).parse(SENTENCES)
    parsing._known().clear()
    again = Parses(tmp_path)
    again.begin(SENTENCES)
    assert parsing.unknown_sentences([*SENTENCES, "It rained."]) == ("It rained.",)


def test_a_cache_that_was_damaged_is_no_fault(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """It is parsed anew."""
    for kept in (b"{", b"[1]", b'{"a": [[1]]}', b'{"a": 3}'):
        monkeypatch.setattr(parses, "read_cached", lambda *_, kept=kept: kept)
        assert len(Parses(tmp_path).parse(SENTENCES)) == 2


def test_a_process_apart_parses_as_this_one_does() -> None:
    """The very same comes back from it."""
    here = parsing.parse_sentences(SENTENCES)
    assert parses._parse_apart(tuple(SENTENCES)) == dict(zip(SENTENCES, here, strict=True))


def test_the_halves_of_what_may_be_two_sentences_are_parsed_with_them(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """So that nothing is left to parse when the commas are looked at, in this process and in the next."""
    spliced = "The clerk, who had been told of it twice, kept the letter for a year, it was found in his desk."
    Parses(tmp_path).parse([spliced])
    parsing._known().clear()
    monkeypatch.setattr(parsing, "_parser", lambda: pytest.fail("the parser was asked"))
    again = Parses(tmp_path)
    (words,) = again.parse([spliced])
    assert [found.span.of(spliced) for found in find_splices(Clause(spliced, 0, words), again.parse)] == ["year, it"]


def test_what_was_begun_is_waited_for(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The parser is not loaded here then."""
    here = parsing.parse_sentences(SENTENCES)
    parsing._known().clear()
    monkeypatch.setattr(parses, "is_loaded", lambda: False)
    monkeypatch.setattr(parses, "_parse_apart", lambda asked: dict(zip(asked, here, strict=True)))
    ahead = Parses(tmp_path)
    ahead.begin(SENTENCES)
    monkeypatch.setattr(parsing, "_parser", lambda: pytest.fail("the parser was asked"))
    assert ahead.parse(SENTENCES) == here


def test_a_process_apart_that_dies_costs_only_time(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The sentences are parsed here then."""
    monkeypatch.setattr(parses, "is_loaded", lambda: False)
    monkeypatch.setattr(parses, "_parse_apart", lambda _: {})
    ahead = Parses(tmp_path)
    ahead.begin(SENTENCES)
    assert [words[0].text for words in ahead.parse(SENTENCES)] == ["The", "Nobody"]
