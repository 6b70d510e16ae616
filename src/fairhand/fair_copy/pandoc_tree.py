"""The fair copy as pandoc's document tree, for word processors, the web and plain text.

Each paragraph that a page of its own kind needs carries a named style (``custom-style``); the reference documents of
``word.py`` and ``opendocument.py`` give those names their looks.
"""

from __future__ import annotations

import base64
import json
from collections.abc import Iterable, Iterator, Sequence
from typing import Any, Literal

from fairhand.fair_copy.binding import bind
from fairhand.fair_copy.captions import Exhibit, number_exhibits
from fairhand.fair_copy.document import FairCopy
from fairhand.fair_copy.flow import Piece, flow, stopped
from fairhand.fair_copy.looks import run_in_style
from fairhand.fair_copy.wording import heading_lines, list_title, title_page_lines
from fairhand.manuscript.parts import SetBlock
from fairhand.model.inline import Break, Code, Hole, Image, Inline, Link, Note, Styled, Text, plain

Target = Literal["docx", "odt", "html", "md"]

API_VERSION = [1, 23, 1]
"""The version of pandoc's tree. **Source**: package pandoc-types."""

Node = dict[str, Any]

_STYLED = {
    "italic": "Emph",
    "bold": "Strong",
    "small-caps": "SmallCaps",
    "superscript": "Superscript",
    "subscript": "Subscript",
    "struck": "Strikeout",
}
_KINDS = {b"\x89PNG": "png", b"\xff\xd8\xff": "jpeg", b"GIF8": "gif", b"RIFF": "webp"}


def to_pandoc(copy: FairCopy, target: Target) -> bytes:
    """The paper as pandoc's JSON, with the styles that ``target`` needs."""
    meta: Node = {"lang": _node("MetaString", copy.language)}
    if target == "html":
        meta["pagetitle"] = _node("MetaString", plain(copy.front.title) or "Untitled")
        meta["author"] = _node("MetaString", copy.front.author)
    blocks = _Tree(copy, target).blocks()
    if target == "md":
        blocks = (inner for block in blocks for inner in (block["c"][1] if block["t"] == "Div" else (block,)))
    tree = {"pandoc-api-version": API_VERSION, "meta": meta, "blocks": list(blocks)}
    return json.dumps(tree, ensure_ascii=True).encode()


def _node(kind: str, content: object = None) -> Node:
    return {"t": kind} if content is None else {"t": kind, "c": content}


class _Tree:
    """Turns one paper into pandoc's blocks."""

    def __init__(self, copy: FairCopy, target: Target) -> None:
        self.copy = copy
        self.target = target
        self.exhibits = iter(number_exhibits(copy.body))

    def blocks(self) -> Iterator[Node]:
        """Every block of the paper, from the first line to the last reference."""
        copy, layout = self.copy, self.copy.layout
        title_page, again = layout.first_page == "title-page", layout.title_again
        if title_page:
            yield self._title()
            yield from self._lines(title_page_lines(copy), "Title Page Line")
        elif layout.first_page == "heading":
            yield from self._lines(heading_lines(copy), "Heading Line")
        if copy.front.abstract:
            yield self._headed("Abstract Title", (Text("Abstract"),))
            yield self._div("Abstract", [block for each in copy.front.abstract for block in self.block(each)])
            if copy.front.keywords:
                words = (Styled("italic", (Text("Keywords:"),)), Text(f" {copy.front.keywords}"))
                yield self._styled("Run-in Text", words)
        opens_page = title_page or bool(copy.front.abstract)
        if copy.front.title and not title_page:
            yield self._title()
        elif copy.front.title and again and self.target != "md":
            yield self._styled("Title Again", copy.front.title)
            opens_page = False
        for at, piece in enumerate(flow(copy.body, layout)):
            yield from self._piece(piece, opening=opens_page and at == 0)
        if copy.annotations:
            yield from self._annotated()
        elif copy.references:
            yield self._headed("List Title", (Text(list_title(copy)),))
            entries = [_node("Para", self.inlines(entry)) for entry in copy.references]
            yield self._div("Bibliography", entries, "references")

    def _annotated(self) -> Iterator[Node]:
        """The list, each entry with what is said of it under it."""
        if list_title(self.copy):
            yield self._headed("List Title", (Text(list_title(self.copy)),))
        for line, said in zip(self.copy.references, self.copy.annotations, strict=True):
            yield self._div("Bibliography", [_node("Para", self.inlines(line))], "references")
            for at, block in enumerate(said):
                style = "Annotation Continued" if at else "Annotation"
                yield self._div(style, [_node("Para", self.inlines(block.inlines))])

    def _title(self) -> Node:
        if self.target in {"html", "md"}:
            return _node("Header", [1, _attributes("title"), self.inlines(self.copy.front.title)])
        return self._styled("Title", self.copy.front.title)

    def _lines(self, lines: Iterable[str], style: str) -> Iterator[Node]:
        nodes = [_node("Para", self.inlines((Text(line),))) for line in lines]
        if nodes:
            yield self._div(style, nodes)

    def _headed(self, style: str, words: tuple[Inline, ...]) -> Node:
        """The heading of a part that has a style of its own."""
        if self.target in {"html", "md"}:
            return _node("Header", [2, _attributes(_class_of(style)), self.inlines(words)])
        return self._styled(style, words)

    def _styled(self, style: str, words: tuple[Inline, ...]) -> Node:
        return self._div(style, [_node("Para", self.inlines(words))])

    def _div(self, style: str, blocks: Sequence[Node], *classes: str) -> Node:
        if self.target in {"html", "md"}:
            return _node("Div", [_attributes(_class_of(style), *classes), blocks])
        name = style.replace(" ", "_20_") if self.target == "odt" else style
        return _node("Div", [["", [], [["custom-style", name]]], blocks])

    def _piece(self, piece: Piece, *, opening: bool) -> Iterator[Node]:
        """One block of the body; the first after a title page opens a page."""
        block = piece.block
        if piece.run_in:
            yield from self._run_in(piece.run_in, block, "Opening Text" if opening else "Run-in Text")
        elif opening and block.kind in {"heading", "paragraph"} and self.target != "md":
            if block.kind == "heading":
                yield self._headed("Opening Heading", block.inlines)
            else:
                yield self._styled("Opening Text", block.inlines)
        elif piece.continues and self.target != "md":
            yield self._styled("Continued", block.inlines)
        elif piece.after_table and self.target != "md":
            yield self._styled("After Table", block.inlines)
        else:
            yield from self.block(block)

    def _run_in(self, heading: SetBlock, block: SetBlock, style: str) -> Iterator[Node]:
        """A heading and the paragraph that it opens: a page's own heading, or words in the heading's linked style."""
        if self.target in {"html", "md"}:
            words = stopped(heading.inlines) if self.target == "html" else heading.inlines
            yield _node("Header", [min(heading.level + 1, 6), _attributes("run-in"), self.inlines(words)])
            yield from self.block(block)
            return
        name = run_in_style(heading.level)
        name = name.replace(" ", "_20_") if self.target == "odt" else name
        opening = _node("Span", [["", [], [["custom-style", name]]], self.inlines(stopped(heading.inlines))])
        rest = [_node("Space"), *self.inlines(block.inlines)] if block.inlines else []
        yield self._div(style, [_node("Para", [opening, *rest])])

    def block(self, block: SetBlock) -> Iterator[Node]:
        """The block as pandoc's blocks."""
        match block.kind:
            case "heading":
                level = block.level + (1 if self.target in {"html", "md"} else 0)
                yield _node("Header", [min(level, 6), _attributes(), self.inlines(block.inlines)])
            case "quote":
                yield _node("BlockQuote", [node for child in block.children for node in self.block(child)])
            case "list":
                items = [self._item(item) for item in block.children]
                numbers = [1, _node("Decimal"), _node("Period")]
                yield _node("OrderedList", [numbers, items]) if block.level else _node("BulletList", items)
            case "table" | "figure":
                yield from self._exhibit(next(self.exhibits))
            case "code":
                yield _node("CodeBlock", [_attributes(), block.code.rstrip("\n")])
            case "rule":
                yield (
                    _node("HorizontalRule") if self.target == "md" else self._styled("Section Break", (Text("* * *"),))
                )
            case "html":
                pass
            case _:
                if block.inlines:
                    yield _node("Para", self.inlines(block.inlines))
                for child in block.children:
                    yield from self.block(child)

    def _item(self, item: SetBlock) -> list[Node]:
        """A list item; a single paragraph in it is set close."""
        nodes = [node for child in item.children for node in self.block(child)]
        nodes = nodes or [_node("Para", self.inlines(item.inlines))]
        if nodes[0]["t"] == "Para":
            nodes[0] = _node("Plain", nodes[0]["c"])
        return nodes

    def _exhibit(self, exhibit: Exhibit) -> Iterator[Node]:
        """A table or figure with its caption on the side where the style has it."""
        form, label = self.copy.layout.caption_form, Text(exhibit.label(self.copy.layout))
        two_lines = form == "apa" or (form == "mla" and exhibit.kind == "table")
        if two_lines:
            words: tuple[Inline, ...] = (Styled("bold", (label,)) if form == "apa" else label,)
            if exhibit.title:
                words += (Break(hard=True), *((Styled("italic", exhibit.title),) if form == "apa" else exhibit.title))
        else:
            words = (label, Text(". "), *exhibit.title) if exhibit.title else (label,)
        if self.target == "html":
            yield self._captioned(exhibit, words)
            return
        caption = self._styled("Caption", words)
        below = exhibit.kind == "figure" and form != "apa"
        if not below:
            yield caption
        if exhibit.kind == "table":
            yield self._table(exhibit.block.rows)
        else:
            yield self._div("Figure", [_node("Para", [self._picture(exhibit)])])
        if below:
            yield caption

    def _picture(self, exhibit: Exhibit) -> Node:
        return self._image(exhibit.image or Image(exhibit.alt, ""), exhibit.alt)

    def _captioned(self, exhibit: Exhibit, words: tuple[Inline, ...]) -> Node:
        """A table or figure that holds its own caption, as a browser has it; a wide table scrolls by itself."""
        caption = [_node("Plain", self.inlines(words))]
        if exhibit.kind == "table":
            named = [
                "",
                ["table"],
                [["tabindex", "0"], ["role", "group"], ["aria-label", exhibit.label(self.copy.layout)]],
            ]
            table = _node("Div", [named, [self._table(exhibit.block.rows)]])
            return _node("Figure", [_attributes("captioned-above"), [None, caption], [table]])
        place = "captioned-above" if self.copy.layout.caption_form == "apa" else "captioned-below"
        return _node("Figure", [_attributes(place), [None, caption], [_node("Plain", [self._picture(exhibit)])]])

    def _table(self, rows: Sequence[Sequence[tuple[Inline, ...]]]) -> Node:
        width = max((len(row) for row in rows), default=1)

        def cell(inlines: tuple[Inline, ...]) -> list[object]:
            plain_words = self.target in {"html", "md"}
            inner = _node("Plain", self.inlines(inlines)) if plain_words else self._styled("Table Text", inlines)
            return [_attributes(), _node("AlignDefault"), 1, 1, [inner]]

        made = [[_attributes(), [cell(words) for words in (*row, *[()] * (width - len(row)))]] for row in rows]
        columns = [[_node("AlignDefault"), _node("ColWidthDefault")]] * width
        head, body = [_attributes(), made[:1]], [[_attributes(), 0, [], made[1:]]]
        return _node("Table", [_attributes(), [None, []], columns, head, body, [_attributes(), []]])

    def inlines(self, inlines: Iterable[Inline]) -> list[Node]:
        """Set text as pandoc's inlines."""
        return [node for inline in inlines for node in self._inline(inline)]

    def _inline(self, inline: Inline) -> Iterator[Node]:
        match inline:
            case Text(text):
                yield from _words(text if self.target == "md" else bind(text))
            case Styled(style, children):
                inner = self.inlines(children)
                if style in _STYLED and not (style == "small-caps" and self.target == "md"):
                    yield _node(_STYLED[style], inner)
                else:
                    yield from inner
            case Code(text):
                yield _node("Code", [_attributes(), text])
            case Link(children, url):
                yield _node("Link", [_attributes(), self.inlines(children), [url, ""]])
            case Image(alt, _, title):
                yield self._image(inline, alt or title or "picture")
            case Break(hard):
                yield _node("LineBreak" if hard else "Space")
            case Note(children):
                yield _node("Note", [_node("Para", self.inlines(children))])
            case Hole():
                pass

    def _image(self, image: Image, alt: str) -> Node:
        """The picture within the document itself; plain text names its file, and words stand for a lost one."""
        data = self.copy.pictures.get(image.url)
        words = list(_words(alt))
        if self.target == "md":
            return _node("Image", [_attributes(), words, [image.url, image.title]])
        if data is None:
            return _node("Span", [_attributes(), list(_words(f"[{alt}]"))])
        kind = next((kind for start, kind in _KINDS.items() if data.startswith(start)), "svg+xml")
        address = f"data:image/{kind};base64,{base64.b64encode(data).decode()}"
        return _node("Image", [_attributes(), words, [address, ""]])


def _attributes(*classes: str) -> list[object]:
    return ["", list(classes), []]


def _class_of(style: str) -> str:
    return style.lower().replace(" ", "-")


def _words(text: str) -> Iterator[Node]:
    """The words of ``text`` and the spaces between them."""
    for at, word in enumerate(text.replace("\n", " ").split(" ")):
        if at:
            yield _node("Space")
        if word:
            yield _node("Str", word)
