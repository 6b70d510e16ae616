"""Lines of verse in a block quotation."""

from __future__ import annotations

import pytest

from fairhand.manuscript.draft import read_manuscript
from fairhand.manuscript.setting import set_blocks
from fairhand.manuscript.verse import reads_as_verse
from fairhand.model.inline import Break, plain

VERSE = """\
> The ferry lay below the town,
> The rope was wet, the lamp was lit,
> And nobody was going down. (1.2.3–5)
"""


def test_unmarked_lines_of_verse_keep_their_ends() -> None:
    """A writer types verse line by line, with no marks at the ends; they are kept, in print and for the comparison."""
    manuscript = read_manuscript(VERSE)
    (quotation,) = manuscript.quotations
    assert quotation.verse
    assert quotation.text.count(" / ") == 2
    (block,) = set_blocks(manuscript)
    assert sum(inline == Break(hard=True) for inline in block.children[0].inlines) == 2


@pytest.mark.parametrize(
    "text",
    [
        "I counted boats until the tide\nhad taken\nall of them (lines 4-6)",
        "The lamp is out, the wick is cold,\nAnd no one asks the hour. (2.1.7-8)",
        "The lamp is out, the wick is cold,\nAnd no one asks the hour.",
        "The lamp is out,\\\nThe wick is cold,\\\nAnd no one asks the hour.",
        "The lamp is out,  \nThe wick is cold,  \nAnd no one asks the hour.",
        "“The lamp is out,\nThe wick is cold,\nAnd no one asks the hour.”\n— Lind, “Wicks”",
        "The lamp is out.\nThe wick is cold. (Lind, ll. 3–4)",
    ],
)
def test_lines_of_verse_are_known(text: str) -> None:
    """By their citation where it counts lines, by capitals and uneven lengths where it does not."""
    assert reads_as_verse(text)
    draft = "".join(f"> {line}\n" for line in text.split("\n"))
    (block,) = set_blocks(read_manuscript(draft))
    inlines = block.children[0].inlines
    assert sum(inline == Break(hard=True) for inline in inlines) == text.count("\n")
    assert "\\" not in plain(inlines)


@pytest.mark.parametrize(
    "text",
    [
        "The keeper wrote that the salt\nhad been weighed twice and that\nThe second weight was less.",
        "The keeper wrote.\nHe did.",
        "The keeper wrote.\nHe did.\nNobody had asked him to.",
        "A line that is a good deal longer than any line of verse would be on a page\nAnd\nSo",
        "The keeper wrote down every weight that he was given, and\nhe began to write the weather beside it (2.1.7-9)",
    ],
)
def test_prose_that_an_editor_broke_runs_on(text: str) -> None:
    """A line that begins in lower case, a sentence a line, a full measure, or lines as full as they go are prose."""
    assert not reads_as_verse(text)


def test_each_paragraph_of_a_quotation_is_verse_or_prose_by_itself() -> None:
    """Prose before verse in one block quotation runs on, in print as in the comparison."""
    manuscript = read_manuscript("> The keeper sang as he\n> weighed the salt:\n>\n" + VERSE)
    assert manuscript.quotations[0].text.startswith("The keeper sang as he weighed the salt: // The ferry")
    assert manuscript.quotations[0].text.count(" / ") == 2


@pytest.mark.parametrize(
    ("tail", "text"),
    [
        ("words (Lind 4).", "The keeper’s words"),
        ("words (Lind, 2019, p. 4).", "The keeper’s words"),
        ("words. (Lind 4)", "The keeper’s words."),
        ("words.\n>\n> (Lind 4).", "The keeper’s words."),
        ("words (1914–18).", "The keeper’s words (1914–18)."),
        ("words (not his own).", "The keeper’s words (not his own)."),
    ],
)
def test_a_citation_before_the_last_stop_is_not_quoted(tail: str, text: str) -> None:
    """A block quotation's parenthesis is the writer's, wherever the stop stands."""
    assert read_manuscript(f"> The keeper’s {tail}\n").quotations[0].text == text
