"""The fair copy put together: citations in their places; title, abstract and reference list taken out of the draft."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace

from fairhand.fair_copy.document import FairCopy, FrontMatter, Layout
from fairhand.manuscript.parts import SetBlock
from fairhand.model.inline import Hole, Inline, Link, Note, Styled, Text, plain

Rendered = Sequence[tuple[Inline, ...]]
"""What each hole is filled with; a note stands first where the style cites in notes."""

DEEPEST = 8
"""How many containers may stand in each other: more would leave no width for a line, and typst refuses some twenty."""

_AFTER = re.compile(r"[.,;:!?…)\]”’»\"']{1,12}")
"""Closing marks that a note's number follows. **Source**: Chicago Manual of Style, 17th ed., 14.26."""
_CLOSED_QUOTE = re.compile(r"[”’\"']{1,4}$")
_LIST_TITLE = re.compile(r"(?:references?|reference list|works? cited|bibliography|literature cited)\W*", re.IGNORECASE)


def build_fair_copy(
    blocks: Sequence[SetBlock],
    rendered: Rendered,
    references: Sequence[tuple[Inline, ...]],
    front: FrontMatter,
    layout: Layout,
    *,
    language: str = "en-US",
    pictures: Mapping[str, bytes] | None = None,
) -> FairCopy:
    """The paper as it is handed in.

    The draft's title goes to the front, unless the front has one; so does its abstract. A reference list that the draft
    carries gives way to the one that was rendered. Headings are levelled so that the highest is of level 1.
    """
    body = [_shallow(block) for block in fill(blocks, rendered, language)]
    tops = [at for at, block in enumerate(body) if block.kind == "heading" and block.level == 1]
    if len(tops) == 1 and not any(block.kind == "heading" for block in body[: tops[0]]):
        title = body.pop(tops[0]).inlines
        front = front if front.title else replace(front, title=title)
    abstract = _section(body, lambda title: title.casefold() == "abstract")
    if abstract is not None:
        taken = body[abstract]
        del body[abstract]
        front = front if front.abstract else replace(front, abstract=tuple(taken[1:]))
    if references and (listed := _section(body, lambda title: _LIST_TITLE.fullmatch(title) is not None)):
        del body[listed]
    return FairCopy(front, levelled(body), tuple(references), layout, language, pictures or {})


def _shallow(block: SetBlock, depth: int = 0) -> SetBlock:
    """The block with quotations and lists nested no deeper than a page can show; what is deeper keeps its words."""
    kind = "paragraph" if depth >= DEEPEST and block.kind in {"quote", "list", "item"} else block.kind
    return replace(block, kind=kind, children=tuple(_shallow(child, depth + 1) for child in block.children))


def levelled(body: Sequence[SetBlock]) -> tuple[SetBlock, ...]:
    """The blocks with the highest heading at level 1 and no level left out on the way down.

    A reader of tagged pages needs the steps whole (PDF/UA-1).

    >>> [b.level for b in levelled([SetBlock("heading", 2), SetBlock("heading", 4), SetBlock("heading", 2)])]
    [1, 2, 1]
    """
    open_levels: list[int] = []
    out = []
    for block in body:
        if block.kind == "heading":
            while open_levels and open_levels[-1] >= block.level:
                open_levels.pop()
            open_levels.append(block.level)
        out.append(replace(block, level=len(open_levels)) if block.kind == "heading" else block)
    return tuple(out)


def fill(blocks: Sequence[SetBlock], rendered: Rendered, language: str = "en-US") -> tuple[SetBlock, ...]:
    """The blocks with each hole filled by its rendered citation.

    A note loses the space before it and follows closing punctuation and quotation marks; within a footnote of the
    draft it becomes part of that footnote. In American English the point or comma that followed the parenthesis goes
    inside the closing quotation mark.

    >>> told = (Text("“a fair hand” "), Hole(0), Text(". So it is."))
    >>> fill([SetBlock("paragraph", inlines=told)], [(Note((Text("Lind, 4."),)),)])[0].inlines
    (Text(text='“a fair hand.”'), Note(children=(Text(text='Lind, 4.'),)), Text(text=' So it is.'))
    """
    filler = _Filler(rendered, american=not language.lower().endswith(("gb", "au", "nz", "ie", "za")))
    return tuple(filler.block(block) for block in blocks)


class _Filler:
    """Fills the holes of one draft."""

    def __init__(self, rendered: Rendered, *, american: bool) -> None:
        self.rendered = rendered
        self.american = american

    def block(self, block: SetBlock) -> SetBlock:
        return replace(
            block,
            inlines=self.inlines(block.inlines),
            children=tuple(self.block(child) for child in block.children),
            rows=tuple(tuple(self.inlines(cell) for cell in row) for row in block.rows),
            caption=self.inlines(block.caption),
        )

    def inlines(self, inlines: tuple[Inline, ...], *, in_note: bool = False) -> tuple[Inline, ...]:
        out: list[Inline] = []
        rest = list(reversed(inlines))
        while rest:
            inline = rest.pop()
            match inline:
                case Hole(index):
                    self._put(out, rest, self.rendered[index] if index < len(self.rendered) else (), in_note=in_note)
                case Styled() | Link():
                    out.append(replace(inline, children=self.inlines(inline.children, in_note=in_note)))
                case Note(children):
                    out.append(Note(self.inlines(children, in_note=True)))
                case _:
                    out.append(inline)
        return tuple(out)

    def _put(self, out: list[Inline], rest: list[Inline], filling: tuple[Inline, ...], *, in_note: bool) -> None:
        """Put ``filling`` after ``out``; ``rest`` is what follows, last piece first."""
        if not filling:
            _drop_space(out)
        elif not _stands_after_stops(filling[0]):
            out.extend(filling)
        elif in_note:
            told = [piece for note in filling for piece in (note.children if isinstance(note, Note) else (note,))]
            out.extend(told)
            following = _take_text(rest)
            doubled = following.startswith(".") and plain(tuple(told)).rstrip().endswith(".")
            _give_text(rest, following[1:] if doubled else following)
        else:
            _drop_space(out)
            following = _take_text(rest)
            closing = _AFTER.match(following)
            marks = closing[0] if closing else ""
            _give_text(rest, following[len(marks) :])
            self._close(out, marks)
            out.extend(filling)

    def _close(self, out: list[Inline], marks: str) -> None:
        """Append the closing ``marks``; an American point or comma goes inside the quotation marks before it."""
        before = _take_text(out)
        quote = _CLOSED_QUOTE.search(before)
        if quote and self.american and marks.startswith((".", ",")):
            words = before[: quote.start()]
            mark = "" if marks[0] == "." and words.endswith((".", "?", "!", "…")) else marks[0]
            before, marks = words + mark + quote[0], marks[1:]
        _give_text(out, before + marks)


def _stands_after_stops(inline: Inline) -> bool:
    """Whether a citation is a note or a raised number, which closes up behind the stop that follows it.

    **Source**: Chicago Manual of Style, 17th ed., 14.26; AMA Manual of Style, 11th ed., 3.6 (from memory).
    """
    return isinstance(inline, Note) or (isinstance(inline, Styled) and inline.style == "superscript")


def _take_text(pieces: list[Inline]) -> str:
    """The plain characters at the end of ``pieces``, taken off."""
    last = pieces[-1] if pieces else None
    if not isinstance(last, Text):
        return ""
    pieces.pop()
    return last.text


def _give_text(pieces: list[Inline], text: str) -> None:
    """Put plain characters at the end of ``pieces``, if there are any."""
    if text:
        pieces.append(Text(text))


def _drop_space(pieces: list[Inline]) -> None:
    """Take the space off the end of ``pieces``."""
    _give_text(pieces, _take_text(pieces).rstrip(" \t\n"))


def _section(body: Sequence[SetBlock], wanted: Callable[[str], bool]) -> slice | None:
    """The place of the first section whose title is ``wanted``, from its heading to the next of its level."""
    for start, block in enumerate(body):
        if block.kind == "heading" and wanted(plain(block.inlines).strip()):
            after = range(start + 1, len(body))
            ends = (at for at in after if body[at].kind == "heading" and body[at].level <= block.level)
            return slice(start, next(ends, len(body)))
    return None
