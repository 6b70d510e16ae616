"""The printed lines of a proof cut where its marks begin and end, page by page."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import groupby, pairwise

from fairhand.model.proof_mark import ProofMark
from fairhand.model.span import Span
from fairhand.proof.placing import Proofed
from fairhand.proof.printed_lines import PrintedLine


@dataclass(frozen=True, slots=True)
class Piece:
    """Type of one kind under the same marks throughout."""

    text: str
    styles: tuple[str, ...] = ()
    under: tuple[int, ...] = ()
    """The numbers of the marks that it lies under."""
    carets: tuple[int, ...] = ()
    """Those whose caret stands at its end."""


@dataclass(frozen=True, slots=True)
class MarkedLine:
    """One line with its marks."""

    line: PrintedLine
    start: int
    """Where it begins in the proof's text."""
    pieces: tuple[Piece, ...]
    begins: tuple[int, ...] = ()
    """The numbers of the marks whose note stands beside it, from left to right."""
    opens: bool = False
    """Whether a paragraph, or another block, begins with it: it stands farther in, or farther down."""


def cut_lines(
    proof: Proofed, marks: Mapping[int, tuple[ProofMark, Span]]
) -> tuple[tuple[int, tuple[MarkedLine, ...]], ...]:
    """The pages with their lines; no character is lost, however marks overlap.

    Args:
        proof: The proof's lines.
        marks: Each mark by its number, with its place in the proof's text.
    """
    out = []
    for number, (line, start) in enumerate(zip(proof.lines, proof.starts, strict=True)):
        whole = Span(start, start + len(line.text))
        here = {n: each for n, each in marks.items() if each[1].overlaps(whole)}
        begins = sorted((n for n, (_, span) in here.items() if span.start >= start), key=lambda n: here[n][1])
        out.append(MarkedLine(line, start, _pieces(line, start, here), tuple(begins), _opens(proof.lines, number)))
    return tuple((page, tuple(lines)) for page, lines in groupby(out, key=lambda one: one.line.page))


def _pieces(line: PrintedLine, start: int, marks: Mapping[int, tuple[ProofMark, Span]]) -> tuple[Piece, ...]:
    """The type of one line, cut at the edges of its marks."""
    out, at = [], start
    edges = {edge for _, span in marks.values() for edge in (span.start, span.end)}
    for run in line.runs:
        end = at + len(run.text)
        for left, right in pairwise(sorted({at, end, *(edge for edge in edges if at < edge < end)})):
            under = tuple(
                n for n, (mark, span) in sorted(marks.items())
                if mark.sign != "insert" and span.start <= left and right <= span.end
            )  # fmt: skip
            carets = tuple(
                n for n, (mark, span) in sorted(marks.items()) if mark.sign == "insert" and span.end == right
            )
            out.append(Piece(run.text[left - at : right - at], run.styles, under, carets))
        at = end
    return tuple(out)


def _opens(lines: Sequence[PrintedLine], number: int) -> bool:
    """Whether something new begins with a line."""
    line, before = lines[number], lines[number - 1] if number else None
    return before is None or line.left_pt > before.left_pt + 1 or (line.page == before.page and not line.number)
