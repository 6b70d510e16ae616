"""The draft as set text: blocks whose inline markup has been read, with holes for what is put in later."""

from __future__ import annotations

import re
import unicodedata
from bisect import bisect_left, bisect_right
from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING
from urllib.parse import unquote

from fairhand.manuscript.bare import is_address
from fairhand.manuscript.blocks import Part, block_parser, read_parts
from fairhand.manuscript.captions import find_captions
from fairhand.manuscript.curling import curl_marks
from fairhand.manuscript.parts import Manuscript, SetBlock
from fairhand.manuscript.places import Passage
from fairhand.manuscript.verse import reads_as_verse
from fairhand.model.inline import Break, Code, Hole, Image, Inline, Link, Note, Styled, Text
from fairhand.model.span import Span

if TYPE_CHECKING:
    from markdown_it.token import Token

_TAGS = {
    **dict.fromkeys(("em", "i", "cite", "var"), "italic"),
    **dict.fromkeys(("strong", "b"), "bold"),
    **dict.fromkeys(("s", "del", "strike"), "struck"),
    "sup": "superscript",
    "sub": "subscript",
}
_TAG = re.compile(r"<(/?)([A-Za-z]+)")
_COMMENT = re.compile(r"\s*<!--.*-->\s*", re.DOTALL)
_UNBROKEN = re.compile(r"(?<![\\ ])[ ]?\n")
"""A line end that CommonMark takes for a space."""
_BLANK = "\u2007"
"""A blank that no parser strips, beside the place of a hole."""
_NEVER_SET = ("note", "definition")

Edit = tuple[int, int, str]
"""A half-open interval of a passage's text and what stands there instead."""


def set_blocks(
    manuscript: Manuscript, holes: Sequence[Span] = (), gone: Sequence[Span] = (), *, curl: bool = False
) -> tuple[SetBlock, ...]:
    """The blocks of the draft in order, footnotes at the place of their numbers and captions with their tables.

    Args:
        manuscript: The draft.
        holes: Intervals of the draft that stand in the result as ``Hole(i)``; of two that overlap the first counts.
            An empty one marks a place between two characters.
        gone: Intervals that are left out, each with the blank before it (asides, TKs).
        curl: Whether typewriter marks and double hyphens become curly marks and dashes.

    >>> from fairhand.manuscript.draft import read_manuscript
    >>> draft = read_manuscript("It *rains* (Lind 2) [NB: true?].")
    >>> set_blocks(draft, [Span(11, 19)], [draft.asides[0].span])[0].inlines[2:]
    (Text(text=' '), Hole(index=0), Text(text='.'))
    """
    parts, env = read_parts(manuscript.text)
    return tuple(_Setter(manuscript.text, parts, env, holes, gone, curl=curl).blocks(parts, outermost=True))


def unused_sign(text: str) -> str:
    """A character of private use that the draft does not hold, to mark the holes by."""
    used = set(re.findall("[\ue000-\uf8ff]", text))
    return next((chr(code) for code in range(0xE000, 0xF900) if chr(code) not in used), "\U000f0000")


class _Setter:
    """One draft on its way into type."""

    def __init__(
        self,
        text: str,
        parts: tuple[Part, ...],
        env: dict[str, object],
        holes: Sequence[Span],
        gone: Sequence[Span],
        *,
        curl: bool,
    ) -> None:
        self.text = text
        self.curl = curl
        self.references = env.get("references", {})
        self.notes = {
            part.block.label: part for top in reversed(parts) for part in top.walk() if part.block.kind == "note"
        }
        self.open_notes: list[str] = []
        self.sign = unused_sign(text)
        side = f"[{_BLANK}⸨⸩{self.sign}]?"
        self.hole = re.compile(f"{side}{self.sign}([0-9]+){self.sign}{side}")
        self.holes = holes
        edits = [(span, index) for index, span in enumerate(holes)]
        edits += [(_with_emphasis(text, span), -1) for span in gone]
        self.edits: list[tuple[Span, int]] = []
        for span, index in sorted(edits, key=lambda each: (each[0].start, -each[0].end)):
            if (len(span) or index >= 0) and not (self.edits and span.start < self.edits[-1][0].end):
                self.edits.append((span, index))

    def blocks(self, parts: Sequence[Part], *, outermost: bool = False, quoted: bool = False) -> Iterator[SetBlock]:
        """The blocks that are printed, one after another; within a quotation verse keeps its lines."""
        captions = find_captions(parts) if outermost else {}
        titling = {place for places in captions.values() for place in places}
        for index, part in enumerate(parts):
            if index in titling or part.block.kind in _NEVER_SET:
                continue
            caption: list[Inline] = []
            for place in captions.get(index, ()):
                caption += [Break(hard=True)] if caption else []
                caption += self._passage(parts[place].passage)
            block = self._block(part, tuple(caption), quoted=quoted)
            if block is not None:
                yield block

    def _block(self, part: Part, caption: tuple[Inline, ...], *, quoted: bool) -> SetBlock | None:
        block = part.block
        children = tuple(self.blocks(part.children, quoted=quoted or block.kind == "quote"))
        inlines = self._passage(part.passage, quoted=quoted)
        rows = tuple(tuple(self._passage(cell) for cell in row) for row in part.cells)
        if block.kind in ("heading", "paragraph", "figure") and not inlines:
            return None
        if block.kind in ("quote", "list") and not children:
            return None
        if block.kind == "html" and _COMMENT.fullmatch(part.code):
            return None
        return SetBlock(block.kind, block.level, inlines, children, rows, caption, part.code, block.span)

    def _passage(self, passage: Passage | None, *, quoted: bool = False) -> tuple[Inline, ...]:
        """A passage's inlines, with its holes in them and without what is gone."""
        if passage is None:
            return ()
        text = _apply(passage.text, self._edits(passage)).strip()
        if quoted and reads_as_verse(passage.text):
            text = _UNBROKEN.sub("  \n", text)
        parser = block_parser()
        tokens: list[Token] = []
        notes = {"refs": {f":{label}": -1 for label in self.notes}, "list": {}}
        parser.inline.parse(text, parser, {"references": self.references, "footnotes": notes}, tokens)
        return self._inlines(tokens)

    def _edits(self, passage: Passage) -> list[Edit]:
        """What changes in a passage, in order and apart."""
        whole = passage.whole
        first = bisect_left(self.edits, whole.start, key=lambda each: each[0].end)
        last = bisect_right(self.edits, whole.end, key=lambda each: each[0].start)
        edits: list[Edit] = []
        for span, index in self.edits[first:last]:
            if len(span) and not span.overlaps(whole):
                continue
            start, end = passage.index(span.start), passage.index(span.end)
            if index >= 0:
                edits.append((start, end, self._stand_in(passage.text, index, start, end)))
            else:
                edits.append((*_with_blank(passage.text, start, end), ""))
        if self.curl:
            edits += [edit for edit in curl_marks(passage.text) if not any(_meet(edit, other) for other in edits)]
        return sorted(edits)

    def _stand_in(self, text: str, index: int, start: int, end: int) -> str:
        """What stands for a hole while its passage is parsed: like a bracket on both sides.

        A place without extent looks on each side like what is beyond it, for whether a ``*`` begins or ends emphasis
        depends on its neighbours (CommonMark 0.31.2, section 6.2).
        """
        before, after = "⸨", "⸩"
        if start == end:
            before, after = self._likeness(text[end : end + 1]), self._likeness(text[start - 1 : start])
        return f"{before}{self.sign}{index}{self.sign}{after}"

    def _likeness(self, char: str) -> str:
        """A character of the same kind as another, for a parser: a blank, a point or a letter."""
        if not char or char.isspace():
            return _BLANK
        return "⸨" if unicodedata.category(char)[0] in "PS" else self.sign

    def _inlines(self, tokens: Sequence[Token]) -> tuple[Inline, ...]:
        """The inlines that the library's tokens stand for."""
        stack: list[tuple[str, str, list[Inline]]] = [("", "", [])]

        def close(kind: str) -> None:
            if not any(kind == opened for opened, _, _ in stack[1:]):
                return
            while True:
                opened, url, children = stack.pop()
                stack[-1][2].extend(self._closed(opened, url, _joined(children)))
                if opened == kind:
                    return

        for token in tokens:
            top = stack[-1][2]
            match token.type:
                case "text" | "text_special":
                    top.extend(self._with_holes(token.content))
                case "code_inline":
                    top.append(Code(self._restored(token.content)))
                case "softbreak" | "hardbreak":
                    top.append(Break(hard=token.type == "hardbreak"))
                case "em_open" | "strong_open" | "s_open":
                    stack.append((_TAGS[token.tag], "", []))
                case "em_close" | "strong_close" | "s_close":
                    close(_TAGS[token.tag])
                case "link_open":
                    stack.append(("link", self._restored(str(token.attrs.get("href", ""))), []))
                case "link_close":
                    close("link")
                case "image":
                    source = self._restored(unquote(str(token.attrs.get("src", ""))))
                    title = self._restored(str(token.attrs.get("title", "")))
                    top.append(Image(self._restored(token.content), source, title))
                case "footnote_ref":
                    top.extend(self._note(str(token.meta.get("label", ""))))
                case "html_inline":
                    found = _TAG.match(token.content)
                    tag = found[2].casefold() if found else ""
                    if tag == "br":
                        top.append(Break(hard=True))
                    elif tag in _TAGS and found and found[1]:
                        close(_TAGS[tag])
                    elif tag in _TAGS:
                        stack.append((_TAGS[tag], "", []))
                case _:
                    pass
        while len(stack) > 1:
            close(stack[-1][0])
        return _joined(stack[0][2])

    def _closed(self, kind: str, url: str, children: tuple[Inline, ...]) -> tuple[Inline, ...]:
        """What a closed piece of markup is: a link only where it leads to an address."""
        if kind != "link":
            return (Styled(kind, children),) if children else ()  # type: ignore[arg-type]
        if is_address(url):
            return (Link(children, url),)
        return (Text("["), *children, Text(f"]({unquote(url)})"))

    def _note(self, label: str) -> tuple[Inline, ...]:
        """The footnote of that label, its paragraphs parted by line ends; nothing within itself."""
        if label in self.open_notes or label not in self.notes:
            return ()
        self.open_notes.append(label)
        children: list[Inline] = []
        for part in self.notes[label].walk():
            inlines = self._passage(part.passage)
            if children and inlines:
                children.append(Break(hard=True))
            children.extend(inlines)
        self.open_notes.pop()
        return (Note(tuple(children)),) if children else ()

    def _with_holes(self, text: str) -> list[Inline]:
        pieces = self.hole.split(text)
        return [
            Hole(int(piece)) if number % 2 else Text(piece)
            for number, piece in enumerate(pieces)
            if piece or number % 2
        ]

    def _restored(self, text: str) -> str:
        """Characters that can hold no hole, with what the draft has there."""
        return self.hole.sub(lambda found: self.holes[int(found[1])].of(self.text), text) if self.sign in text else text


def _apply(text: str, edits: Sequence[Edit]) -> str:
    pieces, at = [], 0
    for start, end, new in edits:
        pieces += [text[at:start], new]
        at = max(at, end)
    return "".join([*pieces, text[at:]])


def _meet(one: Edit, other: Edit) -> bool:
    return one[0] < other[1] and other[0] < one[1]


def _with_emphasis(text: str, span: Span) -> Span:
    """The interval with the emphasis marks that hold it alone, which would be left behind empty."""
    start, end = span.start, span.end
    while start and end < len(text) and text[start - 1] == text[end] and text[end] in "*_":
        start, end = start - 1, end + 1
    return Span(start, end)


def _with_blank(text: str, start: int, end: int) -> tuple[int, int]:
    """The interval with the blank before it, or at a passage's start the one after it."""
    first = start
    while first and text[first - 1].isspace():
        first -= 1
    if first:
        return first, end
    while end < len(text) and text[end].isspace():
        end += 1
    return 0, end


def _joined(inlines: Sequence[Inline]) -> tuple[Inline, ...]:
    """The inlines with neighbouring plain texts made one."""
    out: list[Inline] = []
    for inline in inlines:
        if isinstance(inline, Text) and out and isinstance(out[-1], Text):
            out[-1] = Text(out[-1].text + inline.text)
        else:
            out.append(inline)
    return tuple(out)
