"""The log of searches."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from fairhand.evidence.searches import Search, add_search, found_by, read_searches, tell_search

WORDS = st.text(min_size=1).map(lambda s: " ".join(s.split())).filter(bool)


@given(WORDS, WORDS, st.none() | st.integers(0, 10**6), st.lists(WORDS), st.sampled_from(["searching", "leads"]))
def test_what_is_written_is_read_again(words: str, place: str, hits: int | None, kept: list[str], route: str) -> None:
    """A line of the log holds all of a search."""
    search = Search(words, place, hits, tuple(kept), "leads" if route == "leads" else "searching")
    assert read_searches(add_search("", search)) == ((search,), ())


@given(st.text())
def test_no_text_crashes_the_log(text: str) -> None:
    """Each line is a search, or said to be none."""
    found, problems = read_searches(text)
    assert len(found) + len(problems) == sum(bool(line.strip()) for line in text.split("\n"))


def test_each_route_has_its_sources() -> None:
    """Searching and following references are told apart."""
    log = (Search("trams", kept=("a", "b")), Search("Lind", kept=("b", "c"), route="leads"))
    assert found_by(log, "searching") == {"a", "b"}
    assert found_by(log, "leads") == {"b", "c"}
    assert tell_search(log[1]) == "the references of “Lind”: 2 sources kept"
