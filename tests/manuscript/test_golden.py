"""Whole drafts beside what is read in them."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from fairhand.manuscript.draft import read_manuscript
from fairhand.manuscript.parts import Block, Manuscript

CASES = sorted((Path(__file__).parent / "cases").glob("*.md"))


def told_block(block: Block, text: str) -> Any:
    """A block as the golden file has it: its kind, its words, what is within it."""
    told: dict[str, Any] = {"kind": block.kind, "content": block.content.of(text)}
    if block.level:
        told["level"] = block.level
    if block.label:
        told["label"] = block.label
    if block.caption:
        told["caption"] = block.caption.of(text)
    if block.rows:
        told["rows"] = [[cell.of(text) for cell in row] for row in block.rows]
    if block.children:
        told["within"] = [told_block(child, text) for child in block.children]
    return told


def told(draft: Manuscript) -> dict[str, Any]:
    """Everything that was read, by its words."""
    text = draft.text
    flags = ("in_quote", "in_note", "in_caption", "in_table")
    return {
        "title": draft.title.of(text) if draft.title else None,
        "blocks": [told_block(block, text) for block in draft.blocks],
        "sections": [[section.level, section.title] for section in draft.sections],
        "paragraphs": [
            [paragraph.section, [flag for flag in flags if getattr(paragraph, flag)]]
            + [sentence.of(text) for sentence in paragraph.sentences]
            for paragraph in draft.paragraphs
        ],
        "quotations": [
            [quotation.kind, quotation.text, quotation.paragraph, quotation.within]
            + [word for word, holds in (("verse", quotation.verse), ("unclosed", not quotation.closed)) if holds]
            for quotation in draft.quotations
        ],
        "brackets": [[bracket.span.of(text), bracket.paragraph, bracket.quotation] for bracket in draft.brackets],
        "asides": [[aside.span.of(text), aside.text] for aside in draft.asides],
        "placeholders": [[matter.span.of(text), matter.text] for matter in draft.placeholders],
    }


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.stem)
def test_a_whole_draft_is_read_as_its_golden_file_says(case: Path) -> None:
    """Every part of the draft is found where a reader sees it; line ends are read as they are."""
    draft = read_manuscript(case.read_bytes().decode("utf-8"))
    expected = json.loads(case.with_suffix(".json").read_text(encoding="utf-8"))
    assert told(draft) == expected
