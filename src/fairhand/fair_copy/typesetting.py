"""The fair copy as typst source.

The look stands in ``page.typ``; here a paper becomes calls of its functions. All that a writer wrote goes in as string
literals, so that no draft can run as code.
"""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Iterable, Iterator
from functools import cache
from importlib.resources import files

from fairhand.fair_copy.binding import bind
from fairhand.fair_copy.captions import Exhibit, number_exhibits
from fairhand.fair_copy.document import FairCopy, Layout
from fairhand.fair_copy.faces import COUSINE, face_for
from fairhand.fair_copy.flow import flow, heading_look, stopped
from fairhand.fair_copy.layout import (
    annotation_indent_pt,
    line_pitch_pt,
    lines_per_page,
    note_size_pt,
    text_height_pt,
)
from fairhand.fair_copy.wording import Furniture, furniture, heading_lines, list_title, title_page_lines
from fairhand.manuscript.parts import SetBlock
from fairhand.model.inline import Break, Code, Hole, Image, Inline, Link, Note, Styled, Text, plain
from fairhand.model.request import TypesetJob

FALLBACK_FACES = ("New Computer Modern", "New Computer Modern Math", "Libertinus Serif", "DejaVu Sans Mono")
"""Faces that typst carries, for characters that the paper's own face lacks."""

_UNPRINTABLE = re.compile(
    "[\x00-\x08\x0e-\x1f\x7f-\x9f\u200b\u2028-\u202e\u2060-\u206f\ufeff\ufff0-\uffff\ud800-\udfff\U000e0000-\U000e0fff]"
)
_SPACE = re.compile(r"[ \t\n\r\f\v]+")
_STYLED = {
    "italic": "emph",
    "bold": "strong",
    "small-caps": "small-caps",
    "superscript": "super",
    "subscript": "sub",
    "struck": "strike",
    "upright": 'text.with(style: "normal")',
}
_WEB = re.compile(r"(?:https?://|mailto:)\S", re.IGNORECASE)


def to_typst(copy: FairCopy, dated: dt.datetime | None = None) -> TypesetJob:
    """The job that sets ``copy``; the PDF carries the date ``dated``.

    Its places are ``body start`` and ``body end``, and start and end of each part that a sheet may leave uncounted:
    ``abstract``, ``references``, and numbered from 0 ``heading 0``, ``quote 0``, ``figure 0``, ``note 0``,
    ``appendix 0``.
    """
    setter = _Setter(copy)
    source = "\n".join(
        [_form(copy, dated), _template(), "#show: paper", *setter.front(), *setter.body(), *setter.back()]
    )
    return TypesetJob(source + "\n", setter.pictures, dated)


def string(text: str) -> str:
    r"""``text`` as a typst string literal, without characters that print nothing; white space is one space.

    >>> print(string('a "fair"\\hand'))
    "a \"fair\"\\hand"
    """
    return _literal(_SPACE.sub(" ", text))


def _literal(text: str) -> str:
    """The literal of ``text``, its line ends kept."""
    shown = _UNPRINTABLE.sub("", text).replace("\\", "\\\\").replace('"', '\\"')
    return '"' + "\\n".join(shown.split("\n")) + '"'


@cache
def _template() -> str:
    return files("fairhand.fair_copy").joinpath("page.typ").read_text("utf-8")


def _form(copy: FairCopy, dated: dt.datetime | None) -> str:
    """The layout as the dictionary that ``page.typ`` speaks of."""
    layout, face = copy.layout, face_for(copy.layout.font)[0]
    language, _, region = copy.language.partition("-")
    top, right, bottom, left = layout.margins_pt
    high, low = furniture(copy)
    values = {
        "title": string(plain(copy.front.title) or "Untitled"),
        "author": string(copy.front.author) if copy.front.author else "()",
        "date": f"datetime(year: {dated.year}, month: {dated.month}, day: {dated.day})" if dated else "none",
        "lang": string(language.lower()) if re.fullmatch("[A-Za-z]{2,3}", language) else '"en"',
        "region": string(region) if re.fullmatch("[A-Za-z]{2}", region) else "none",
        "paper": string(layout.paper),
        "margins": f"(top: {top}pt, right: {right}pt, bottom: {bottom + _slack_pt(layout)}pt, left: {left}pt)",
        "text-height": f"{text_height_pt(layout)}pt",
        "faces": _array(map(string, dict.fromkeys((face.name, *FALLBACK_FACES)))),
        "code-faces": _array(map(string, (COUSINE.name, *FALLBACK_FACES))),
        "size": f"{layout.size_pt}pt",
        "note-size": f"{note_size_pt(layout)}pt",
        "ascent": str(face.ascent),
        "descent": str(face.descent),
        "line": str(face.line),
        "spacing": str(layout.spacing),
        "quote-spacing": str(layout.quote_spacing),
        "note-spacing": str(layout.note_spacing),
        "list-spacing": str(layout.list_spacing),
        "table-spacing": str(layout.table_spacing),
        "indent": f"{layout.indent_pt}pt",
        "justified": _truth(layout.justified),
        "top": _line(high),
        "bottom": _line(low),
        "title-page": _truth(layout.first_page == "title-page"),
        "title-low": _truth(layout.title_page_form == "upper half"),
        "title-weight": _weight(layout.title_bold),
        "number-title-page": _truth(layout.number_title_page),
        "list-title-weight": _weight(layout.list_title_bold),
        "list-new-page": _truth(layout.list_new_page),
        "caption-form": string(layout.caption_form),
        "line-numbers": _truth(layout.line_numbers),
        "proof": _truth(layout.proof),
    }
    return "#let form = (" + ", ".join(f"{name}: {value}" for name, value in values.items()) + ")"


def _slack_pt(layout: Layout) -> float:
    """What the bottom margin takes so that a page holds as many lines as a word processor counts, and not one more.

    Typst leaves out the space under a page's last line; a word processor counts it.
    """
    pitch = line_pitch_pt(layout, layout.spacing)
    face = face_for(layout.font)[0]
    one_more = lines_per_page(layout) * pitch + (face.ascent + face.descent) * layout.size_pt
    return round(max(0.0, text_height_pt(layout) - one_more + 0.05), 3)


class _Setter:
    """Turns one paper into calls, and collects its pictures and numbered parts on the way."""

    def __init__(self, copy: FairCopy) -> None:
        self.copy = copy
        self.pictures: dict[str, bytes] = {}
        self.exhibits = iter(number_exhibits(copy.body))
        self.counts: dict[str, int] = {}

    def front(self) -> Iterator[str]:
        """Title page or heading lines, abstract, and the title above the text."""
        copy, title = self.copy, self.inlines(self.copy.front.title)
        if copy.layout.first_page == "title-page":
            yield f"#title-page([{title}], {self._each(title_page_lines(copy))})"
        elif copy.layout.first_page == "heading":
            yield f"#heading-lines({self._each(heading_lines(copy))})"
        if copy.front.abstract:
            keywords = string(copy.front.keywords) if copy.front.keywords else "none"
            yield f'#abstract("Abstract", {keywords})[{self.blocks(copy.front.abstract)}]'
        if title and copy.layout.first_page != "title-page":
            yield f"#title-line[{title}]"
        elif title and copy.layout.title_again:
            yield f"#title-again[{title}]"

    def body(self) -> Iterator[str]:
        """The text, between the places that mark its start and end; appendices are marked within it."""
        yield '#spot("body start")'
        appendix = ""
        for piece in flow(self.copy.body, self.copy.layout):
            if appendix and not piece.in_appendix:
                yield f'#spot({appendix} + " end")'
                appendix = ""
            elif piece.in_appendix and not appendix:
                appendix = self._next("appendix")
                yield f'#spot({appendix} + " start")'
            if piece.run_in:
                look, words = heading_look(piece.run_in.level, self.copy.layout), stopped(piece.run_in.inlines)
                heading = f"#run-in-head({piece.run_in.level}, {string(look)})[{self.inlines(words)}]"
                yield f'#par[{heading}#" "{self.inlines(piece.block.inlines)}]'
            elif piece.continues:
                yield f"#flush[{self.inlines(piece.block.inlines)}]"
            else:
                yield self.block(piece.block)
        if appendix:
            yield f'#spot({appendix} + " end")'
        yield '#spot("body end")'

    def back(self) -> Iterator[str]:
        """The list of references, annotated or not."""
        if self.copy.annotations:
            name, indent = list_title(self.copy), annotation_indent_pt(self.copy.layout)
            pairs = zip(self.copy.references, self.copy.annotations, strict=True)
            annotated = (
                f"([{self.inlines(line)}], {f'[{self.blocks(said)}]' if said else 'none'})" for line, said in pairs
            )
            named = string(name) if name else "none"
            yield f"#annotated-list({named}, {indent}pt, {', '.join(annotated)})"
        elif self.copy.references:
            entries = ", ".join(f"[{self.inlines(entry)}]" for entry in self.copy.references)
            yield f"#reference-list({string(list_title(self.copy))}, {entries})"

    def blocks(self, blocks: Iterable[SetBlock]) -> str:
        return "\n".join(self.block(block) for block in blocks)

    def block(self, block: SetBlock) -> str:
        match block.kind:
            case "heading":
                look = string(heading_look(block.level, self.copy.layout))
                return f"#head({self._next('heading')}, {block.level}, {look})[{self.inlines(block.inlines)}]"
            case "quote":
                return f"#quotation({self._next('quote')})[{self._quoted(block.children)}]"
            case "list":
                items = ", ".join(
                    f"[{self.blocks(item.children) or self.inlines(item.inlines)}]" for item in block.children
                )
                return f"#{'enum' if block.level else 'list'}({items})"
            case "table" | "figure":
                return self._exhibit(next(self.exhibits))
            case "code":
                return f"#listing({_literal(block.code.expandtabs(4))})"
            case "rule":
                return "#section-break"
            case "html":
                return ""
            case _:
                inner = self.inlines(block.inlines)
                paragraph = f"#par[{inner}]" if inner else ""
                return paragraph + self.blocks(block.children)

    def _quoted(self, blocks: Iterable[SetBlock]) -> str:
        """The blocks of a quotation; a paragraph with lines that end is verse."""
        out = []
        for block in blocks:
            if block.kind == "paragraph" and any(isinstance(inline, Break) and inline.hard for inline in block.inlines):
                out.append(f"#verse({', '.join(f'[{self.inlines(line)}]' for line in verse_lines(block.inlines))})")
            else:
                out.append(self.block(block))
        return "\n".join(out)

    def _exhibit(self, exhibit: Exhibit) -> str:
        name = self._next("figure")
        if exhibit.kind == "table":
            width = max((len(row) for row in exhibit.block.rows), default=1)
            rows = [
                [f"[{self.inlines(cell)}]" for cell in row] + ["[]"] * (width - len(row)) for row in exhibit.block.rows
            ]
            header, cells = rows[0] if rows else ["[]"], [cell for row in rows[1:] for cell in row]
            inner = f"ruled({width}, {_array(header)}, {', '.join(cells)})"
        else:
            inner = self._picture(exhibit.image, exhibit.alt)
        title = f"[{self.inlines(exhibit.title)}]" if exhibit.title else "none"
        label = string(exhibit.label(self.copy.layout))
        return f"#exhibit({string(exhibit.kind)}, {name}, {label}, {title}, {inner})"

    def _picture(self, image: Image | None, alt: str) -> str:
        """The picture, or its description in brackets where its file is not at hand."""
        data = self.copy.pictures.get(image.url) if image else None
        if data is None:
            return string(f"[{alt}]")
        name = next(
            (name for name, known in self.pictures.items() if known is data), f"picture-{len(self.pictures) + 1}"
        )
        self.pictures[name] = data
        return f"picture({string(name)}, {string(alt)})"

    def _next(self, part: str) -> str:
        """The name of the next part of that kind, as a literal."""
        number = self.counts.get(part, 0)
        self.counts[part] = number + 1
        return string(f"{part} {number}")

    @staticmethod
    def _each(lines: Iterable[str]) -> str:
        return ", ".join(map(string, lines))

    def inlines(self, inlines: Iterable[Inline]) -> str:
        """Set text as typst content, every character of it in a string."""
        return "".join(map(self._inline, inlines))

    def _inline(self, inline: Inline) -> str:
        match inline:
            case Text(text):
                return f"#{string(bind(text))}"
            case Styled(style, children):
                return f"#({_STYLED[style]})([{self.inlines(children)}])"
            case Code(text):
                return f"#raw({string(text)})"
            case Link(children, url):
                shown = self.inlines(children)
                return f"#link({string(url)})[{shown}]" if _WEB.match(url) and shown else shown
            case Image(alt, _, title):
                return f"#box({self._picture(inline, alt or title or 'picture')})"
            case Break(hard):
                return "#linebreak()" if hard else '#" "'
            case Note(children):
                return f"#note({self._next('note')})[{self.inlines(children)}]"
            case Hole():
                return ""


def verse_lines(inlines: tuple[Inline, ...]) -> tuple[tuple[Inline, ...], ...]:
    """The lines of verse in ``inlines``, parted at the breaks.

    >>> verse_lines((Text("Come,"), Break(hard=True), Text("go.")))
    ((Text(text='Come,'),), (Text(text='go.'),))
    """
    lines: list[list[Inline]] = [[]]
    for inline in inlines:
        if isinstance(inline, Break):
            lines.append([])
        else:
            lines[-1].append(inline)
    return tuple(tuple(line) for line in lines if line)


def _line(line: Furniture) -> str:
    """The furniture of one margin."""
    if not line:
        return "none"
    flags = f"numbered: {_truth(line.numbered)}, parted: {_truth(line.parted)}"
    return f"(head: {string(line.head)}, side: {string(line.side)}, {flags})"


def _array(items: Iterable[str]) -> str:
    """A typst array; one of a single item needs its comma."""
    return "(" + "".join(f"{item}, " for item in items) + ")"


def _truth(value: bool) -> str:
    return "true" if value else "false"


def _weight(bold: bool) -> str:
    return '"bold"' if bold else '"regular"'
