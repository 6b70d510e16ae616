"""A page of a source cut where something in it is marked: a sentence that was found, words that were noted."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from fairhand.model.span import Span

_PARAGRAPH = re.compile(r"\s*\n\s*\n\s*")


@dataclass(frozen=True, slots=True)
class Run:
    """A stretch of text between two edges of what is marked."""

    text: str
    begins: tuple[int, ...] = ()
    """The marks that begin with it, by number."""
    ends: bool = False
    """Whether a mark ends with it."""


def cut_page(text: str, start: int, end: int, marks: Sequence[Span]) -> tuple[tuple[Run, ...], ...]:
    r"""The paragraphs of a part of a page, each in runs; no word is lost, however the marks overlap.

    Args:
        text: The page's text.
        start: Where the part begins.
        end: Where it ends.
        marks: What is marked, as places in the text.

    >>> cut_page("It rained.\n\nThe quay was sold.", 0, 30, [Span(16, 20)])[1]
    (Run(text='The ', begins=(), ends=False), Run(text='quay', begins=(0,), ends=True),
     Run(text=' was sold.', begins=(), ends=False))
    """
    edges = [start, *(edge for found in _PARAGRAPH.finditer(text, start, end) for edge in found.span()), end]
    inner = sorted({edge for mark in marks for edge in (mark.start, mark.end)})
    paragraphs = []
    for left, right in zip(edges[::2], edges[1::2], strict=True):
        cuts = sorted({left, right, *(edge for edge in inner if left < edge < right)})
        runs = tuple(
            Run(
                text[a:b],
                tuple(number for number, mark in enumerate(marks) if mark.start == a),
                any(mark.end == b for mark in marks),
            )
            for a, b in pairwise(cuts)
        )
        if text[left:right].strip():
            paragraphs.append(runs)
    return tuple(paragraphs)
