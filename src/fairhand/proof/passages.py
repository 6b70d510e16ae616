"""The passages of a draft: what is mended at once."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from fairhand.manuscript.parts import Block, Manuscript
from fairhand.model.span import Span


def list_passages(manuscript: Manuscript) -> tuple[Span, ...]:
    r"""Each heading, paragraph, quotation, table or item of a list, with its markup, in order.

    >>> from fairhand.manuscript.draft import read_manuscript
    >>> text = "# Tides\n\nOne.\n\n- ebb\n- flow"
    >>> [span.of(text) for span in list_passages(read_manuscript(text))]
    ['# Tides', 'One.', '- ebb', '- flow']
    """
    return tuple(block.span for top in manuscript.blocks for block in _parts(top) if len(block.span))


def passage_at(passages: tuple[Span, ...], place: Span | None) -> Span | None:
    """The passage that holds the start of a place; between two, the later one; None where there is none."""
    if place is None:
        return None
    return next((passage for passage in passages if place.start < passage.end), None)


def count_alike(passages: tuple[Span, ...], text: str, passage: Span) -> tuple[int, int]:
    """Which of the passages that read as this one it is, from 0, and how many they are.

    >>> count_alike((Span(0, 2), Span(3, 5), Span(6, 8)), "TK so TK", Span(6, 8))
    (1, 2)
    """
    alike = [one for one in passages if one.of(text) == passage.of(text)]
    return alike.index(passage), len(alike)


def _parts(block: Block) -> Iterator[Block]:
    """The items of a list, else the block itself; items that share a line are one."""
    if block.kind == "list" and all(a.span.end <= b.span.start for a, b in pairwise(block.children)):
        yield from block.children
    else:
        yield block
