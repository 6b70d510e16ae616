"""Where a mark's words stand: in the printed lines, in the draft, and in a draft that was edited since.

A place that is not sure, by the measure of ``reading.found_again``, is shown as uncertain, and nothing is mended there
unseen.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass

from fairhand.manuscript.parts import Manuscript
from fairhand.manuscript.passages import read_passage
from fairhand.model.proof_mark import ProofMark
from fairhand.model.span import Span
from fairhand.proof.edges import running_text
from fairhand.proof.printed_lines import PrintedLine
from fairhand.proof.written_marks import WrittenMark
from fairhand.reading.found_again import Place, find_surely, list_again, list_whole

AROUND = 64
"""Code points that are kept on either side of a mark's words."""
NEAR = 6
"""Letters on either side that must stand as they were for a mark to be mended unseen."""


@dataclass(frozen=True, slots=True)
class Type:
    """A text as it reads, and where each of its characters stands in the draft."""

    text: str
    starts: Sequence[int] = ()
    ends: Sequence[int] = ()

    def in_draft(self, span: Span) -> Span:
        """The draft's interval for an interval of what reads."""
        return Span(self.starts[span.start], max(self.starts[span.start], self.ends[span.end - 1]))


def read_type(manuscript: Manuscript) -> Type:
    r"""The draft as it reads, with its places.

    >>> from fairhand.manuscript.draft import read_manuscript
    >>> found = read_type(read_manuscript("It *was* so.\n\nIndeed."))
    >>> found.text, found.in_draft(Span(3, 6))
    ('It was so.\nIndeed.', Span(start=4, end=7))
    """
    letters: list[str] = []
    starts: list[int] = []
    ends: list[int] = []
    for passage in running_text(manuscript):
        if letters:
            letters.append("\n")
            starts.append(ends[-1])
            ends.append(ends[-1])
        bare = read_passage(passage.text).bare
        letters.append(bare.text)
        starts.extend(passage.place(at) for at in bare.starts)
        ends.extend(passage.place(at - 1) + 1 for at in bare.ends)
    return Type("".join(letters), starts, ends)


def find_mark(mark: ProofMark, draft: str) -> Place | None:
    """Where a mark stands in the draft as it now is; None where its words do not, or stand only in print."""
    if mark.where != "draft.md":
        return None
    return find_surely(draft, mark.exact, mark.before, mark.after)


def stands_as_marked(mark: ProofMark, draft: str, span: Span) -> bool:
    """Whether a place stands as it was marked, as far as it must for the mark to be carried out unseen.

    Where a mark leaves its words standing, or others like them, the letters right before and after must be the same:
    otherwise a word struck out of two alike would be struck out twice, and new matter put in twice.

    >>> mark = ProofMark("m", "p", "delete", "the", "We saw the ", " quay.")
    >>> [stands_as_marked(mark, *one) for one in (("saw the the quay.", Span(8, 11)), ("saw the quay.", Span(4, 7)))]
    [True, False]
    """
    if mark.sign in ("substitute", "transpose", "close up", "capitals", "lower case"):
        return True
    before, after = (_letters(said) for said in (mark.before, mark.after))
    here, there = (
        _letters(draft[max(0, span.start - AROUND) : span.start]),
        _letters(draft[span.end : span.end + AROUND]),
    )
    return here[-NEAR:].endswith(before[-NEAR:]) and there[:NEAR].startswith(after[:NEAR])


def _letters(text: str) -> str:
    return "".join(text.split())


def find_in_proof(mark: ProofMark, draft: Type, source: str, proof: Proofed) -> Place | None:
    """Where a mark stands in the proof as it would now be printed; None where it does not.

    Args:
        mark: The mark.
        draft: The draft as it reads.
        source: The draft's own text.
        proof: The proof's lines.
    """
    exact, before, after, sure = mark.exact, mark.before, mark.after, True
    if mark.where == "draft.md":
        found = find_mark(mark, source)
        if found is None or not draft.text:
            return None
        first = bisect_left(draft.ends, found.span.start + 1)
        last = bisect_left(draft.starts, found.span.end)
        if first >= last:
            return None
        exact, before, after = anchor(draft.text, Span(first, last))
        sure = found.sure
    printed = find_surely(proof.text, exact, before, after) or _find_most(proof.text, exact, before, after)
    return Place(printed.span, printed.sure and sure) if printed else None


def _find_most(text: str, exact: str, before: str, after: str) -> Place | None:
    """Where most of some words stands whose end, or else whose beginning, is printed otherwise, as a citation is."""
    words = exact.split()
    for many in range(len(words) - 1, 2, -1):
        found = find_surely(text, " ".join(words[:many]), before, " " + " ".join(words[many:]))
        if found and found.sure:
            return found
    for many in range(len(words) - 1, 2, -1):
        found = find_surely(text, " ".join(words[-many:]), " ".join(words[:-many]) + " ", after)
        if found and found.sure:
            return found
    return None


def anchor(text: str, span: Span) -> tuple[str, str, str]:
    """The words of an interval, with those before and after them that they are found again by."""
    return span.of(text), text[max(0, span.start - AROUND) : span.start], text[span.end : span.end + AROUND]


@dataclass(frozen=True, slots=True)
class Proofed:
    """The text of a proof, line after line."""

    text: str
    starts: tuple[int, ...]
    """Where each line begins in it."""
    lines: tuple[PrintedLine, ...]

    def line_at(self, place: int) -> PrintedLine:
        """The line that holds a place."""
        return self.lines[max(0, bisect_left(self.starts, place + 1) - 1)]

    def index_of(self, page: int, number: int) -> int | None:
        """Which line has that number on that page; None where there is none."""
        return next((n for n, line in enumerate(self.lines) if (line.page, line.number) == (page, number)), None)


def join_lines(lines: Sequence[PrintedLine]) -> Proofed:
    """The lines of a proof as one text."""
    starts, at = [], 0
    for line in lines:
        starts.append(at)
        at += len(line.text) + 1
    return Proofed("\n".join(line.text for line in lines), tuple(starts), tuple(lines))


def find_written(written: WrittenMark, proof: Proofed) -> Span | str:
    """Where a mark that was written down stands in the proof's text, or why that cannot be told.

    Its words may run on into the next line; where they stand twice in theirs, the writer says which. Line 0 is all of a
    page that has no numbers, as its tables.
    """
    lines = [n for n, line in enumerate(proof.lines) if (line.page, line.number) == (written.page, written.line)]
    if not lines:
        last = max((line.number for line in proof.lines if line.page == written.page), default=0)
        return f"page {written.page} has no line {written.line}" + (f"; its last is {last}" if last else "")
    start, upto = proof.starts[lines[0]], lines[-1]
    end = proof.starts[upto] + len(proof.lines[upto].text)
    stop = end + 1 + len(proof.lines[upto + 1].text) if upto + 1 < len(proof.lines) else end
    piece = proof.text[start:stop]
    whole, found = (
        [span for span, _ in find(piece, written.exact) if span.start + start < end]
        for find in (list_whole, list_again)
    )
    here = [span.shifted(start) for span in whole or found]
    where = f"page {written.page}, line {written.line}"
    if not here:
        return f"“{written.exact}” does not stand in {where}: “{proof.lines[lines[0]].text}”"
    if written.nth > len(here) or (len(here) > 1 and not written.nth):
        return (
            f"“{written.exact}” stands {len(here)} times in {where}; give more of it, or which: “{written.exact}” (2)"
        )
    return here[max(0, written.nth - 1)]
