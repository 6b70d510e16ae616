"""The body as it runs on: which heading opens its paragraph's line, which paragraph goes on after a quotation."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from fairhand.fair_copy.document import Layout
from fairhand.manuscript.parts import BlockKind, SetBlock
from fairhand.model.inline import Inline, Text, plain

_SET_OFF: frozenset[BlockKind] = frozenset({"quote", "list", "table", "figure", "code"})


@dataclass(frozen=True, slots=True)
class Piece:
    """One block of the body, and how it follows what is before it."""

    block: SetBlock
    run_in: SetBlock | None = None
    """The heading that opens the paragraph's first line."""
    continues: bool = False
    """Whether the paragraph goes on after matter set off from it, and so is not indented."""
    after_table: bool = False
    """Whether it is a paragraph right under a table, which some space parts from it."""
    in_appendix: bool = False


def flow(body: Sequence[SetBlock], layout: Layout) -> Iterator[Piece]:
    """The pieces of ``body`` in their order.

    A paragraph that begins with a small letter after a quotation, list or table goes on with the sentence before it.
    """
    waiting: SetBlock | None = None
    appendix_level = 0
    before: BlockKind = "heading"
    for block in body:
        if block.kind == "heading":
            if block.level <= appendix_level:
                appendix_level = 0
            if not appendix_level and plain(block.inlines).strip().casefold().startswith("appendi"):
                appendix_level = block.level
        run_in, waiting = waiting, None
        if run_in and block.kind != "paragraph":
            yield Piece(SetBlock("paragraph"), run_in, in_appendix=appendix_level > 0)
            run_in = None
        if is_run_in(block, layout):
            waiting = block
        else:
            continues = block.kind == "paragraph" and before in _SET_OFF and plain(block.inlines).lstrip()[:1].islower()
            yield Piece(block, run_in, continues, block.kind == "paragraph" and before == "table", appendix_level > 0)
        before = block.kind
    if waiting:
        yield Piece(SetBlock("paragraph"), waiting, in_appendix=appendix_level > 0)


def heading_look(level: int, layout: Layout) -> str:
    """The words that say how a heading of that level looks.

    >>> heading_look(9, Layout("plain", heading_forms=("centred bold", "left italic")))
    'left italic'
    """
    forms = layout.heading_forms or ("left bold",)
    return forms[min(max(1, level), len(forms)) - 1]


def is_run_in(block: SetBlock, layout: Layout) -> bool:
    """Whether the block is a heading that opens its paragraph's first line."""
    return block.kind == "heading" and "run-in" in heading_look(block.level, layout)


def stopped(inlines: tuple[Inline, ...]) -> tuple[Inline, ...]:
    """The words of a run-in heading with the stop that parts them from the text. **Source**: APA 7, section 2.27."""
    return inlines if plain(inlines).rstrip().endswith((".", "?", "!", ":")) else (*inlines, Text("."))
