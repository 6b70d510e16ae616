"""Lines of verse in a block quotation."""

from __future__ import annotations

import pytest

from fairhand.manuscript.draft import read_manuscript
from fairhand.manuscript.quoting import reads_as_verse
from fairhand.manuscript.setting import set_blocks
from fairhand.model.inline import Break

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
        "The keeper wrote that the salt\nhad been weighed twice and that\nThe second weight was less.",
        "The keeper wrote.\nHe did.",
        "A line that is a good deal longer than any line of verse would be on a page\nAnd\nSo",
    ],
)
def test_prose_that_an_editor_broke_runs_on(text: str) -> None:
    """One line that begins in lower case, two lines alone, or a full measure are prose."""
    assert not reads_as_verse(text)
