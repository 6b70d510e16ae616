"""What a printed proof has beyond the fair copy."""

from __future__ import annotations

from pathlib import Path
from typing import get_args

from fairhand.model.proof_mark import ProofSign
from fairhand.proof.printed_lines import read_printed_lines
from fairhand.reading.pdf import read_pdf
from fairhand.session.correction.proof import read_proof
from fairhand.session.hand_in.printing import set_copy
from fairhand.session.opened import OpenPaper


def test_a_last_leaf_shows_every_mark(demo_desk: Path) -> None:
    """Each sign by its name, in the text and in the margin, and how marks are brought in; nothing fails to be set."""
    made = set_copy(OpenPaper(demo_desk / "tram-libraries"), "pdf", proof=True, anyway=True)
    pages = read_pdf(made.data, "proof.pdf").texts
    assert made.pages == len(pages) == 6
    assert made.notes == ()
    leaf = " ".join(pages[-1].split())
    assert all(sign in leaf for sign in get_args(ProofSign))
    assert 'write one a line, by page and line: 3.12 "recieve" / receive' in leaf


def test_lines_are_numbered_in_the_page_as_on_paper(demo_desk: Path) -> None:
    """The proof in the page has the very lines of the printed one, each with its number."""
    paper = OpenPaper(demo_desk / "tram-libraries")
    made = set_copy(paper, "pdf", proof=True, anyway=True)
    printed = read_printed_lines(made.data, paper.fair_copy(proof=True).layout.margins_pt)
    shown = read_proof(paper).lines
    assert printed[: len(shown)] == shown
    assert max(line.page for line in shown) == made.pages - 1 if made.pages else False
    first = [line for line in shown if line.page == 1]
    assert [line.number for line in first] == list(range(1, len(first) + 1))
