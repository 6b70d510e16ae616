"""The parts of a draft, with their exact places in the file.

Every span is a half-open interval of code points of the draft's whole text.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

from fairhand.model.inline import Inline
from fairhand.model.span import Span

BlockKind = Literal[
    "heading", "paragraph", "quote", "list", "item", "table", "code", "rule", "html", "figure", "note", "definition"
]


@dataclass(frozen=True, slots=True)
class Block:
    """One block of CommonMark, or of its tables and footnotes."""

    kind: BlockKind
    span: Span
    """The whole block, markers included, without the blank lines around it."""
    content: Span
    """Its text without the block's own markers (``#``, ``>``, bullets); for a container, from first to last child."""
    level: int = 0
    """Of a heading, 1 to 6; of a list, 1 where it is numbered, else 0."""
    children: tuple[Block, ...] = ()
    """Blocks within a quote, list, item or note."""
    rows: tuple[tuple[Span, ...], ...] = ()
    """Of a table, the cells of each row, the head row first."""
    caption: Span | None = None
    """Of a table or figure, the paragraph beside it that titles it."""
    label: str = ""
    """Of a note, its label; of code, its language."""


@dataclass(frozen=True, slots=True)
class Section:
    """A heading and what stands under it, its sub-sections included."""

    heading: Block | None
    """None for what stands before the first heading."""
    title: str
    """The heading's plain text."""
    level: int
    span: Span


@dataclass(frozen=True, slots=True)
class Paragraph:
    """A paragraph of prose: not a heading, figure or code.

    Block quotations, list items, notes and captions have theirs too, and so has each cell of a table that holds a word,
    since it may cite.
    """

    index: int
    """Its number in the draft, from 0."""
    span: Span
    sentences: tuple[Span, ...]
    section: int
    """Index of the innermost section that holds it."""
    in_quote: bool = False
    """Whether it stands within a block quotation."""
    in_note: bool = False
    """Whether it stands within a footnote."""
    in_caption: bool = False
    """Whether it titles a table or figure."""
    in_table: bool = False
    """Whether it is a cell of a table."""


@dataclass(frozen=True, slots=True)
class Quotation:
    """Words in quotation marks, or a block quotation."""

    span: Span
    """With its marks; of a block quotation, the whole block, without a citation at its end."""
    inner: Span
    """Without its marks."""
    text: str
    """The words as they read: line breaks as spaces (verse: ``" / "``), block markers and emphasis marks gone."""
    kind: Literal["run-in", "block"]
    paragraph: int
    """Index of the paragraph that holds it (of a block quotation, its first)."""
    within: int | None = None
    """Index of the quotation that this one is nested in."""
    verse: bool = False
    """Whether it is set as lines of verse."""
    closed: bool = True
    """False where no closing mark was found before the paragraph's end, or where the next paragraph opens it again."""


@dataclass(frozen=True, slots=True)
class Bracket:
    """A bracketed passage, marks included; nested ones are listed too, outer first."""

    span: Span
    inner: Span
    mark: Literal["(", "["]
    paragraph: int
    quotation: int | None
    """Index of the innermost quotation that it stands in."""


@dataclass(frozen=True, slots=True)
class Aside:
    """A remark to oneself, ``[NB: …]``; never printed."""

    span: Span
    text: str


@dataclass(frozen=True, slots=True)
class Placeholder:
    """Matter to come, ``TK`` or ``[TK: …]``; never printed."""

    span: Span
    text: str
    """What is to come, where it is said."""


@dataclass(frozen=True)
class Manuscript:
    """A draft, taken apart. Any text is some manuscript."""

    text: str
    title: Span | None
    """The title: the first heading, where it is the only one of level 1; else None."""
    blocks: tuple[Block, ...]
    sections: tuple[Section, ...]
    paragraphs: tuple[Paragraph, ...]
    quotations: tuple[Quotation, ...]
    brackets: tuple[Bracket, ...]
    asides: tuple[Aside, ...]
    placeholders: tuple[Placeholder, ...]
    tables: tuple[Block, ...]
    figures: tuple[Block, ...]
    notes: Mapping[str, Block] = field(default_factory=dict)
    """Footnotes by label."""

    @property
    def left_matter(self) -> list[Span]:
        """The places of what is never printed, asides and TKs, in order."""
        return sorted([aside.span for aside in self.asides] + [to_come.span for to_come in self.placeholders])


@dataclass(frozen=True, slots=True)
class SetBlock:
    """A block whose text has been read as set text, ready for the fair copy."""

    kind: BlockKind
    level: int = 0
    inlines: tuple[Inline, ...] = ()
    children: tuple[SetBlock, ...] = ()
    rows: tuple[tuple[tuple[Inline, ...], ...], ...] = ()
    caption: tuple[Inline, ...] = ()
    code: str = ""
    span: Span | None = None
    """Where it stands in the draft."""
