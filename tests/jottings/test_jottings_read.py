from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from fairhand.jottings.jotting import read_jottings
from fairhand.jottings.wording import tell_wording


def test_each_line_is_a_jotting_word_for_word() -> None:
    """Marks of a list, blank lines, rules and headings are not part of any."""
    text = "# Fog\n\n* who rang the bell\n2) the keeper's pay!!\n---\n   \nno mark at all"
    found = [(one.text, one.line) for one in read_jottings(text)]
    assert found == [("who rang the bell", 3), ("the keeper's pay!!", 4), ("no mark at all", 7)]


def test_an_indented_line_carries_on() -> None:
    """It belongs to the jotting before, unless that has ended."""
    assert [one.words for one in read_jottings("- the bell\n  was cracked\n\n  by frost")] == [
        "the bell was cracked",
        "by frost",
    ]


def test_a_long_line_is_parted_at_its_sentences() -> None:
    """Who writes without stopping writes paragraphs; each sentence can then be moved by itself."""
    long = "The keeper wrote every night in a book that nobody read. " * 4
    assert len(read_jottings(long)) == 4
    assert len(read_jottings("The keeper wrote. Nobody read it.")) == 1


@given(st.text(max_size=400))
def test_no_text_is_too_odd(text: str) -> None:
    """Any text is read, each jotting stands in it, and each is told by its wording."""
    for one in read_jottings(text):
        assert one.words
        assert all(line.strip() in text for line in one.text.split("\n"))
        assert 1 <= one.line <= len(text.splitlines())
        tell_wording(one.text)


def test_long_runs_of_signs_are_read_at_once() -> None:
    """The time grows with the length alone."""
    for odd in ("?" * 50_000, "a?" * 50_000, "(?" * 50_000, "maybe " * 50_000, " " * 50_000, "- " * 50_000):
        tell_wording(odd + "x")
        read_jottings(odd + "x")
