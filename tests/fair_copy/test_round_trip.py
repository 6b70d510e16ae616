"""A paper that was handed in as a word processor's file, taken over and printed again."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace

import pytest

from fairhand.fair_copy.building import build_fair_copy
from fairhand.fair_copy.document import FairCopy, FrontMatter
from fairhand.fair_copy.opendocument import finish_odt
from fairhand.fair_copy.requests import ODT_BASE, docx_request, odt_request
from fairhand.fair_copy.word import finish_docx
from fairhand.manuscript.draft import read_manuscript
from fairhand.manuscript.front import front_lines
from fairhand.manuscript.setting import set_blocks
from fairhand.press.pandoc import run_pandoc
from fairhand.reading.taking import read_taken, take_request

DRAFT = """\
# Keeping *the* Hours

## The Pond

The mills ground *corn* for **four** centuries.[^1] So it was.

| Year | Tides |
|------|-------|
| 1712 | 598   |

Table 1. Tides ground

> The water’s in,
> The wheel begins to turn,
> And no one asks the hour.

### Rents

1. lunar days;
2. market weeks.

[^1]: See the *Calendar*, 4.
"""


def _printed(draft: str, like: FairCopy, kind: str) -> bytes:
    manuscript = read_manuscript(draft)
    gone = [line.span for line in front_lines(manuscript)]
    copy = build_fair_copy(set_blocks(manuscript, (), gone, curl=True), (), (), FrontMatter(), like.layout)
    copy = replace(copy, front=replace(copy.front, author="Ada Lind", date="3 March 2026"))
    if kind == "docx":
        return finish_docx(run_pandoc(docx_request(copy)))
    return finish_odt(run_pandoc(odt_request(copy, run_pandoc(ODT_BASE))))


def _taken(data: bytes, kind: str) -> str:
    return read_taken(run_pandoc(take_request(data, f".{kind}")))[0]


@pytest.mark.parametrize("style", ["apa-7", "chicago-notes-17"])
def test_a_paper_printed_taken_over_and_printed_again_stays_itself(
    make_paper: Callable[..., FairCopy], style: str
) -> None:
    """Title, headings, notes, emphasis, verse, table and list come through a word processor's file and stay so."""
    like = make_paper(style)
    taken = _taken(_printed(DRAFT, like, "docx"), "docx")
    manuscript = read_manuscript(taken)
    assert [section.title for section in manuscript.sections] == ["Keeping the Hours", "The Pond", "Rents"]
    assert [section.level for section in manuscript.sections] == [1, 2, 3]
    assert {"*corn*", "**four**", "*Calendar*"} <= set(re.findall(r"\*+\w+\*+", taken))
    assert len(manuscript.notes) == len(manuscript.tables) == 1
    assert manuscript.tables[0].caption is not None
    assert manuscript.quotations[0].verse
    assert [line.text for line in front_lines(manuscript) if line.what != "title"] == ["Ada Lind", "3 March 2026"]
    assert _taken(_printed(taken, like, "docx"), "docx") == taken


def test_opendocument_keeps_headings_notes_and_emphasis(make_paper: Callable[..., FairCopy]) -> None:
    """The same through OpenDocument, whose first page has no title of its own."""
    taken = _taken(_printed(DRAFT, make_paper("apa-7"), "odt"), "odt")
    manuscript = read_manuscript(taken)
    assert {"The Pond", "Rents"} <= {section.title for section in manuscript.sections}
    assert {"*corn*", "**four**", "*Calendar*"} <= set(re.findall(r"\*+\w+\*+", taken))
    assert len(manuscript.notes) == len(manuscript.tables) == 1
    assert manuscript.quotations[0].verse
