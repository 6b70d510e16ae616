"""The proof of whole papers: its lines as they are numbered, and marks that find their words in the draft.

Source: two papers in two styles (author and page, and notes with a title page), made to measure this program with.
"""

from __future__ import annotations

import random
import re
import shutil
from collections import Counter
from collections.abc import Callable
from pathlib import Path

import pytest

from fairhand.model.proof_mark import ProofMark
from fairhand.model.span import Span
from fairhand.proof.placing import find_in_proof, find_mark, read_type
from fairhand.session.correction.proof import anchor_mark, read_proof
from fairhand.session.opened import OpenPaper

MARKS = 200
"""Marks set on each proof."""


@pytest.mark.parametrize("name", ["harbour-strike", "rain-gardens"])
def test_marks_on_a_printed_line_find_their_words(
    outside_data: Callable[[str], Path], tmp_path: Path, name: str
) -> None:
    """Each line has its number, notes too; a mark on words of the draft is anchored there and found again in print."""
    paper = OpenPaper(Path(shutil.copytree(outside_data(f"papers/{name}"), tmp_path / name)))
    proof, manuscript = read_proof(paper), paper.look().manuscript
    pages = Counter(line.page for line in proof.lines)
    for page, many in pages.items():
        assert [line.number for line in proof.lines if line.page == page] == list(range(1, many + 1))
    chance = random.Random(3)  # noqa: S311 - marks are set by chance, the same each time
    words = [Span(*found.span()) for found in re.finditer(r"\w\S*\w", proof.text)]
    type_, count = read_type(manuscript), Counter[str]()
    for _ in range(MARKS):
        first = chance.randrange(len(words) - 3)
        span = Span(words[first].start, words[first + chance.randrange(3)].end)
        mark = anchor_mark(ProofMark("", "", "query", ""), span, proof, manuscript.text)
        plain = " ".join(span.of(proof.text).split())
        found = find_mark(mark, manuscript.text)
        if mark.where == "fair copy":
            count["in print alone"] += 1
            continue
        count["in the draft"] += 1
        assert found is not None
        said = re.sub(r"[\W_]", "", found.span.of(manuscript.text)).casefold()
        count["the same words"] += said == re.sub(r"[\W_]", "", plain).casefold()
        again = find_in_proof(mark, type_, manuscript.text, proof)
        count["found in print"] += again is not None and again.span.overlaps(span)
    print(f"\n{name}, {len(pages)} pages, {len(proof.lines)} lines, {MARKS} marks: {dict(count)}")
    assert count["the same words"] == count["in the draft"]
    assert count["found in print"] >= 0.98 * count["in the draft"]
    assert count["in the draft"] >= 0.5 * MARKS  # the others are on references, notes and the lines of the title page
