"""The blocks of a draft: CommonMark with tables and footnotes, each with its exact place.

A library reads the block structure by lines; the places within the lines are worked out here. Three deviations from
CommonMark, each because a paper is not a web page: a label of the writer's own (``[NB: …]:``, ``[TK]:``) never opens a
link definition, which would swallow it; a line indented by a tab is a paragraph, not code; footnotes ``[^1]`` are read.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING

from fairhand.manuscript.asides import LABEL
from fairhand.manuscript.parts import Block, BlockKind
from fairhand.manuscript.places import Passage
from fairhand.model.span import Span

if TYPE_CHECKING:
    from markdown_it import MarkdownIt
    from markdown_it.rules_block import StateBlock
    from markdown_it.token import Token

_BLANK = " \t"
_CONTAINERS: dict[str, BlockKind] = {
    "blockquote_open": "quote",
    "bullet_list_open": "list",
    "ordered_list_open": "list",
    "list_item_open": "item",
    "footnote_reference_open": "note",
}
_LEAVES: dict[str, BlockKind] = {
    "fence": "code",
    "code_block": "code",
    "hr": "rule",
    "html_block": "html",
    "definition": "definition",
}
_MARKER = {
    "quote": re.compile(r"[ \t]*>"),
    "item": re.compile(r"[ \t]*(?:[-+*]|\d{1,9}[.)])"),
    "note": re.compile(r"[ \t]*\[\^[^\s\]]+\]:"),
    "list": re.compile(r"[ \t]*"),
}
_QUOTE_MARKS = re.compile(r"[ \t]*>")
_HEADING = re.compile(r"#{1,6}[ \t]*")
_LONE_IMAGE = re.compile(
    r"!\[[^\]]{0,2000}\]\([^()\n]{0,2000}(?:\([^()\n]{0,500}\)[^()\n]{0,500}){0,5}\)(?:\{[^{}\n]{0,200}\})?"
)
_CELL_END = re.compile(r"\\.|\|")


@dataclass(frozen=True, slots=True)
class Part:
    """A block with the running text in it."""

    block: Block
    passage: Passage | None = None
    """The text of a heading, paragraph or figure."""
    children: tuple[Part, ...] = ()
    cells: tuple[tuple[Passage, ...], ...] = ()
    """The cells of a table, row by row."""
    code: str = ""
    """The characters of code or of HTML, the markers of the blocks around it gone."""

    @property
    def passages(self) -> tuple[Passage, ...]:
        """Its own running texts in order: its text, or its cells; not those of the blocks within it."""
        own = () if self.passage is None else (self.passage,)
        return (*own, *(cell for row in self.cells for cell in row))

    def walk(self) -> Iterator[Part]:
        """The part itself and everything within it, in the order of the draft."""
        yield self
        for child in self.children:
            yield from child.walk()


@lru_cache(maxsize=1)
def block_parser() -> MarkdownIt:
    """The one reader of block structure; it leaves the text within blocks alone."""
    from markdown_it import MarkdownIt
    from markdown_it.rules_block.reference import reference
    from mdit_py_plugins.footnote import footnote_plugin

    def definition(state: StateBlock, start: int, end: int, silent: bool) -> bool:
        """Refuse a link definition whose label is an aside's or a TK's."""
        first = state.bMarks[start] + state.tShift[start]
        if LABEL.match(state.src, first):
            return False
        return reference(state, start, end, silent)

    parser = MarkdownIt("commonmark", {"inline_definitions": True, "maxNesting": 40})
    parser.enable("table").disable("code").use(footnote_plugin, inline=False)
    parser.block.ruler.at("reference", definition)
    return parser


@lru_cache(maxsize=8)
def read_parts(text: str) -> tuple[tuple[Part, ...], dict[str, object]]:
    """Every block of ``text`` in order, and the library's record of link definitions and notes.

    Source: CommonMark 0.31.2; GitHub's tables; footnotes as common practice writes them.
    """
    parser = block_parser()
    source = text.replace("\r\n", "\n").replace("\r", "\n").replace("\0", "\ufffd")
    env: dict[str, object] = {"references": {}}
    tokens: list[Token] = []
    parser.block.parse(source, parser, env, tokens)
    return _Taker(text, tokens).take(), env


class _Taker:
    """Walks the library's tokens once and gives each block its place."""

    def __init__(self, text: str, tokens: list[Token]) -> None:
        self.text = text.replace("\0", "\ufffd")
        self.lines = [match.span() for match in re.finditer(r"[^\r\n]*(?=\r|\n|\Z)(?:\r\n|\r|\n)?", self.text)]
        self.tokens = tokens
        self.at = 0
        self.depth = 0
        self.cursor: dict[int, int] = {}

    def take(self) -> tuple[Part, ...]:
        parts: list[Part] = []
        while self.at < len(self.tokens):
            token = self.tokens[self.at]
            if token.nesting < 0:
                break
            self.at += 1
            if token.type in _CONTAINERS:
                parts.append(self._container(token, _CONTAINERS[token.type]))
            elif token.type in ("paragraph_open", "heading_open"):
                parts.append(self._prose(token))
            elif token.type == "table_open":
                parts.append(self._table(token))
            elif token.type in _LEAVES:
                parts.append(self._leaf(token, _LEAVES[token.type]))
        return tuple(parts)

    def _line(self, number: int) -> tuple[int, int]:
        """Start and end of a line, its line end left out."""
        if number >= len(self.lines):
            return len(self.text), len(self.text)
        start, end = self.lines[number]
        while end > start and self.text[end - 1] in "\r\n":
            end -= 1
        return start, end

    def _begin(self, number: int) -> int:
        """Where a block begins on its first line, after the markers of the blocks around it."""
        at, end = self._line(number)
        if number in self.cursor:
            at = self.cursor[number]
        else:
            for _ in range(self.depth):
                found = _QUOTE_MARKS.match(self.text, at, end)
                if not found:
                    break
                at = found.end()
        while at < end and self.text[at] in _BLANK:
            at += 1
        return at

    def _lines_of(self, token: Token) -> tuple[int, int]:
        first, last = token.map or (0, 0)
        return first, last

    def _container(self, token: Token, kind: BlockKind) -> Part:
        first, _ = self._lines_of(token)
        start = self._begin(first)
        found = _MARKER[kind].match(self.text, start, self._line(first)[1])
        marker_end = found.end() if found else start
        self.cursor[first] = marker_end
        self.depth += kind == "quote"
        children = self.take()
        self.depth -= kind == "quote"
        self.at += 1
        end = max([marker_end, *(child.block.span.end for child in children)])
        if kind == "quote":
            end = max(end, self._extent(token).end)
        inner = Span(children[0].block.span.start, children[-1].block.span.end) if children else Span(end, end)
        block = Block(
            kind,
            Span(start, end),
            inner,
            level=int(token.type == "ordered_list_open"),
            children=tuple(child.block for child in children),
            label=str(token.meta.get("label", "")) if kind == "note" else "",
        )
        return Part(block, children=children)

    def _leaf(self, token: Token, kind: BlockKind) -> Part:
        span = self._extent(token)
        content = span
        if token.type == "fence":
            first, last = self._lines_of(token)
            inner = self._line(first + 1)[0]
            closed = (
                last - first > 1 and self._line(last - 1)[1] == span.end and _is_fence(span.of(self.text), token.markup)
            )
            inner_end = self._line(last - 2)[1] if closed else span.end
            content = Span(min(inner, span.end), max(min(inner, span.end), min(inner_end, span.end)))
        block = Block(kind, span, content, label=token.info.strip() if kind == "code" else "")
        return Part(block, code=token.content if kind in ("code", "html") else "")

    def _extent(self, token: Token) -> Span:
        first, last = self._lines_of(token)
        start = self._begin(first)
        end = start
        for number in range(max(first, last - 1), first - 1, -1):
            line_start, line_end = self._line(number)
            if self.text[line_start:line_end].strip(_BLANK):
                end = max(start, line_start + len(self.text[line_start:line_end].rstrip(_BLANK)))
                break
        return Span(start, end)

    def _prose(self, token: Token) -> Part:
        inline = self.tokens[self.at]
        self.at += 2
        heading = token.type == "heading_open"
        if heading and token.markup.startswith("#"):
            span = self._extent(token)
            marker = _HEADING.match(self.text, span.start)
            after = marker.end() if marker else span.start
            content = inline.content
            place = self.text.find(content, after, span.end) if content else min(after, span.end)
            passage = Passage.of_lines([(max(place, span.start), content)])
        else:
            passage = self._passage(token, inline.content)
            span = passage.whole
            if heading:
                span = Span(span.start, max(span.end, self._extent(token).end))
        kind: BlockKind = "heading" if heading else "paragraph"
        if not heading and _LONE_IMAGE.fullmatch(passage.text):
            kind = "figure"
        level = int(token.tag[1:]) if heading else 0
        return Part(Block(kind, span, passage.whole, level=level), passage)

    def _passage(self, token: Token, content: str) -> Passage:
        """The lines of a paragraph where they stand in the draft: each is the end of its line there."""
        number, after = self._lines_of(token)
        lines: list[tuple[int, str]] = []
        pieces = [piece.strip(_BLANK) for piece in content.split("\n")]
        for piece in pieces:
            start, end = self._line(number)
            while (place := self.text.rfind(piece, start, end)) < 0 and number + 1 < after:
                number += 1
                start, end = self._line(number)
            place = max(start, place)
            last = len(lines) == len(pieces) - 1
            lines.append((place, self.text[place : place + len(piece) if last else end]))
            number += 1
        return Passage.of_lines(lines)

    def _table(self, token: Token) -> Part:
        span = self._extent(token)
        rows: list[tuple[Passage, ...]] = []
        columns = 0
        while self.tokens[self.at].type != "table_close":
            inner = self.tokens[self.at]
            if inner.type == "tr_open":
                cells = self._cells(self._lines_of(inner)[0])
                columns = columns or len(cells)
                rows.append(cells[:columns])
            self.at += 1
        self.at += 1
        spans = tuple(tuple(cell.whole for cell in row) for row in rows)
        return Part(Block("table", span, span, rows=spans), cells=tuple(rows))

    def _cells(self, number: int) -> tuple[Passage, ...]:
        start = self._begin(number)
        end = max(start, self._line(number)[0] + len(self.text[slice(*self._line(number))].rstrip(_BLANK)))
        start += self.text.startswith("|", start, end)
        bars = [match.start() for match in _CELL_END.finditer(self.text, start, end) if match.group() == "|"]
        if not bars or bars[-1] != end - 1:
            bars.append(end)
        cells = []
        for stop in bars:
            piece = self.text[start:stop]
            left = start + len(piece) - len(piece.lstrip(_BLANK))
            cells.append(Passage.of_lines([(min(left, stop), piece.strip(_BLANK))]))
            start = stop + 1
        return tuple(cells)


def _is_fence(block: str, markup: str) -> bool:
    """Whether the last line of a fenced block closes it."""
    last = block.rpartition("\n")[2].rpartition("\r")[2].lstrip("> \t")
    return len(last) >= len(markup) and not last.strip(markup[0])
