"""What stands in one passage: its sentences, pairs of marks, asides and TKs, by interval of the passage.

Remembered by the passage's text, so that of an edited draft only the paragraphs that changed are read again.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from fairhand.language.sentences import split_sentences
from fairhand.manuscript.asides import Left, find_left
from fairhand.manuscript.bare import Bare, read_bare
from fairhand.manuscript.marks import Pair, find_pairs
from fairhand.model.span import Span

_HIDDEN = "\u2007"
"""Stands in a scanned text for each character of an aside: a space, so that what surrounds it reads on."""


@dataclass(frozen=True, slots=True)
class Reading:
    """A passage, read."""

    bare: Bare
    """What it says; the intervals below are of ``bare.text``."""
    sentences: tuple[Span, ...]
    """By interval of the passage itself, emphasis and note numbers included."""
    pairs: tuple[Pair, ...]
    left: tuple[Left, ...]

    def span(self, start: int, end: int) -> Span:
        """The interval of the passage for an interval of ``bare.text``."""
        if start >= len(self.bare.starts):
            edge = self.bare.ends[-1] if self.bare.ends else 0
            return Span(edge, edge)
        first = self.bare.starts[start]
        return Span(first, max(first, self.bare.ends[end - 1]) if end > start else first)

    def between(self, start: int, end: int) -> Span:
        """The same with the markup around it: from after the character before it to before the one after it."""
        first = self.bare.ends[start - 1] if start else 0
        if end < len(self.bare.starts):
            return Span(first, max(first, self.bare.starts[end]))
        return Span(first, max(first, self.bare.ends[-1] if self.bare.ends else 0))


@lru_cache(maxsize=8192)
def read_passage(text: str, *, matter_to_come: bool = True) -> Reading:
    """Everything in a passage that the rooms above ask for.

    Args:
        text: The passage, block markers gone.
        matter_to_come: False where the draft uses TK as an abbreviation; then only a labelled ``[TK: …]`` is one.
    """
    bare = read_bare(text)
    left = tuple(piece for piece in find_left(bare.scan) if piece.labelled or matter_to_come)
    scan = _hide(bare.scan, left)
    reading = Reading(bare, (), find_pairs(scan), left)
    return Reading(bare, _sentences(reading, scan, len(text)), reading.pairs, left)


def _hide(scan: str, left: tuple[Left, ...]) -> str:
    """The scanned text with its labelled remarks blanked."""
    pieces, at = [], 0
    for piece in left:
        if piece.labelled:
            pieces += [scan[at : piece.start], _HIDDEN * (piece.end - piece.start)]
            at = piece.end
    return "".join([*pieces, scan[at:]])


def _sentences(reading: Reading, scan: str, length: int) -> tuple[Span, ...]:
    """The sentences as they are written: each with the markup that touches it."""
    starts, ends = reading.bare.starts, reading.bare.ends
    spans: list[Span] = []
    for sentence in split_sentences(scan):
        start, end = sentence.start, sentence.end
        first = starts[start] if start and not scan[start - 1].isspace() else (ends[start - 1] if start else 0)
        last = starts[end] if end < len(starts) else length
        spans.append(Span(max(first, spans[-1].end if spans else 0), last))
    return tuple(spans)
