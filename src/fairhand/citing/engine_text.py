"""The engine's set text read into ours."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from typing import Any, Literal

from fairhand.model.inline import Break, Code, Inline, Link, Note, Styled, Text

Node = dict[str, Any]
"""One node of pandoc's syntax tree, as JSON gives it."""

Face = Literal["italic", "bold", "small-caps", "superscript", "subscript", "struck"]
STYLES: Mapping[str, Face] = {
    "Emph": "italic",
    "Underline": "italic",
    "Strong": "bold",
    "SmallCaps": "small-caps",
    "Superscript": "superscript",
    "Subscript": "subscript",
    "Strikeout": "struck",
}
QUOTES = {"DoubleQuote": ("“", "”"), "SingleQuote": ("‘", "’")}


def read_inlines(nodes: Iterable[Node]) -> tuple[Inline, ...]:
    """Pandoc's inlines as ours, runs of plain characters joined.

    >>> read_inlines([{"t": "Str", "c": "ibid."}, {"t": "Space"}, {"t": "Emph", "c": [{"t": "Str", "c": "a"}]}])
    (Text(text='ibid. '), Styled(style='italic', children=(Text(text='a'),)))
    """
    return join_text(inline for node in nodes for inline in _read(node))


def join_text(inlines: Iterable[Inline]) -> tuple[Inline, ...]:
    """The same inlines with neighbouring plain text in one piece."""
    joined: list[Inline] = []
    for inline in inlines:
        if isinstance(inline, Text) and joined and isinstance(joined[-1], Text):
            joined[-1] = Text(joined[-1].text + inline.text)
        elif inline != Text(""):
            joined.append(inline)
    return tuple(joined)


def read_blocks(blocks: Iterable[Node]) -> tuple[Inline, ...]:
    """The inlines of paragraphs, a space between one paragraph and the next."""
    found: list[Inline] = []
    for block in blocks:
        content = block.get("c", [])
        inner = read_blocks(content[1]) if block["t"] == "Div" else read_inlines(content)
        found += [Text(" "), *inner] if found else inner
    return join_text(found)


def _read(node: Node) -> Iterator[Inline]:
    kind: str = node["t"]
    content: Any = node.get("c")
    if kind == "Str":
        yield Text(str(content))
    elif kind == "Space":
        yield Text(" ")
    elif kind in {"SoftBreak", "LineBreak"}:
        yield Break(hard=kind == "LineBreak")
    elif kind in STYLES:
        style = STYLES[kind]
        yield Styled(style, _upright_within(read_inlines(content)) if style == "italic" else read_inlines(content))
    elif kind == "Quoted":
        opened, closed = QUOTES[content[0]["t"]]
        yield from (Text(opened), *read_inlines(content[1]), Text(closed))
    elif kind == "Link":
        yield Link(read_inlines(content[1]), str(content[2][0]))
    elif kind == "Note":
        yield Note(read_blocks(content))
    elif kind == "Span":
        yield from _read_span(content[0][1], content[1])
    elif kind == "Cite":
        yield from read_inlines(content[1])
    elif kind == "Code":
        yield Code(str(content[1]))
    elif kind in {"Math", "RawInline"}:
        yield Text(str(content[1]))


def _upright_within(inlines: tuple[Inline, ...]) -> tuple[Inline, ...]:
    """What is slanted within slanted words stands upright. **Source**: CMOS 17, 8.173; MLA 9, 2.110."""
    return tuple(
        Styled("upright", one.children) if isinstance(one, Styled) and one.style == "italic" else one for one in inlines
    )


def _read_span(classes: list[str], nodes: list[Node]) -> Iterator[Inline]:
    """A span's content; what is not to be slanted is upright."""
    inner = read_inlines(nodes)
    if "nodecor" in classes:
        yield Styled("upright", inner)
    else:
        yield from inner
