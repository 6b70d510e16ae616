"""The draft set as it reads, with the marks in it: headings, paragraphs and quotations, and no markup.

A galley is a trial print of the text before it is made up into pages: each stretch of type knows the marks that it lies
under, and each mark where it begins.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace

from fairhand.manuscript.parts import BlockKind, Manuscript, SetBlock
from fairhand.manuscript.setting import set_blocks
from fairhand.model.finding import Finding
from fairhand.model.inline import Break, Code, Hole, Image, Inline, Link, Note, Styled, Text
from fairhand.model.span import Span
from fairhand.model.stet import Stet
from fairhand.proof.edges import find_edges, running_text
from fairhand.proof.signs import Place, place_marks


@dataclass(frozen=True, slots=True)
class Mark:
    """A finding with its number on the proof and its places in the draft."""

    number: int
    """From 1, those on the whole paper first."""
    finding: Finding
    places: tuple[Place, ...]
    stet: Stet | None = None
    """The word that lets it stand."""


@dataclass(frozen=True, slots=True)
class Stretch:
    """A stretch of type under the same marks throughout."""

    text: str
    styles: tuple[str, ...] = ()
    """Styles of type, outermost first, as ``Styled.style`` names them; ``code`` too."""
    under: tuple[tuple[int, int], ...] = ()
    """The marks that it lies under, outermost first: the mark's index, and the index of its place."""
    begins: tuple[tuple[int, int], ...] = ()
    """The marks whose note stands at its start: those that begin here, and carets."""
    note: int = 0
    """The number of the footnote called out here; 0 for none."""


@dataclass(frozen=True, slots=True)
class Line:
    """A block of the galley."""

    kind: BlockKind
    level: int = 0
    stretches: tuple[Stretch, ...] = ()
    children: tuple[Line, ...] = ()
    rows: tuple[tuple[tuple[Stretch, ...], ...], ...] = ()
    caption: tuple[Stretch, ...] = ()
    code: str = ""
    span: Span | None = None
    beside: tuple[tuple[int, int], ...] = ()
    """Marks whose place could not be shown within its type: they stand beside it."""


@dataclass(frozen=True, slots=True)
class Galley:
    """The whole draft, set."""

    lines: tuple[Line, ...]
    notes: tuple[tuple[Stretch, ...], ...] = ()
    """The footnotes in order."""


def mark_findings(findings: Iterable[tuple[Finding, Stet | None]], manuscript: Manuscript) -> tuple[Mark, ...]:
    """The findings as marks, numbered in the order of the proof."""
    return tuple(
        Mark(number, finding, place_marks(finding, manuscript, stet=stet is not None), stet)
        for number, (finding, stet) in enumerate(order_findings(findings), 1)
    )


def order_findings(findings: Iterable[tuple[Finding, Stet | None]]) -> list[tuple[Finding, Stet | None]]:
    """The findings in the order of the proof: those on the whole paper first; the first one's mark is number 1."""
    return sorted(findings, key=lambda each: (each[0].span is not None, each[0].span or Span(0, 0)))


def set_galley(manuscript: Manuscript, marks: Sequence[Mark]) -> Galley:
    """The draft set with its marks; no word of it is lost, and no mark."""
    edges: list[tuple[int, int, int, bool]] = []  # place in the draft, mark, its place, whether it begins there
    passages = running_text(manuscript)
    for index, mark in enumerate(marks):
        for at, place in enumerate(mark.places):
            found = find_edges(place.span, passages)
            if found is None:
                continue
            edges.append((found[0], index, at, True))
            if found[0] < found[1]:
                edges.append((found[1], index, at, False))
    holes = [Span(place, place) for place, *_ in edges]
    ends = {(index, at): place for place, index, at, begins in edges if not begins}
    setter = _Setter([edge[1:] for edge in edges], ends)
    lines = tuple(setter.top(block) for block in set_blocks(manuscript, holes, curl=True))
    keys = [(place.span.start, (index, at)) for index, mark in enumerate(marks) for at, place in enumerate(mark.places)]
    lost = [(place, key) for place, key in keys if key not in setter.begun]
    return Galley(_beside(lines, lost), tuple(setter.notes))


def _beside(lines: tuple[Line, ...], lost: Sequence[tuple[int, tuple[int, int]]]) -> tuple[Line, ...]:
    """The marks that were not set stand beside the block that holds their place, or else the one before it."""
    if not lost or not lines:
        return lines
    starts = [line.span.start if line.span else 0 for line in lines]
    beside: dict[int, list[tuple[int, int]]] = {}
    for place, key in lost:
        beside.setdefault(max(0, bisect_right(starts, place) - 1), []).append(key)
    return tuple(replace(line, beside=tuple(beside.get(n, ()))) for n, line in enumerate(lines))


@dataclass
class _Setter:
    """One galley under way: which marks are open, and which have begun."""

    edges: Sequence[tuple[int, int, bool]]
    ends: Mapping[tuple[int, int], int]
    """Where each mark that is no caret ends in the draft."""
    open: list[tuple[int, int]] = field(default_factory=list)
    begun: set[tuple[int, int]] = field(default_factory=set)
    waiting: list[tuple[int, int]] = field(default_factory=list)
    """Marks that have begun, and stand at the start of the stretch that comes."""
    notes: list[tuple[Stretch, ...]] = field(default_factory=list)

    def top(self, block: SetBlock) -> Line:
        """A block that stands in no other; a mark whose end was not set, as within code, ends with it."""
        line = self.line(block)
        stop = block.span.end if block.span else 0
        self.open = [key for key in self.open if self.ends[key] > stop]
        return line

    def line(self, block: SetBlock) -> Line:
        """A block, with what is within it."""
        return Line(
            block.kind,
            block.level,
            self.stretches(block.inlines),
            tuple(self.line(child) for child in block.children),
            tuple(tuple(self.stretches(cell) for cell in row) for row in block.rows),
            self.stretches(block.caption),
            block.code,
            block.span,
        )

    def stretches(self, inlines: Sequence[Inline]) -> tuple[Stretch, ...]:
        """The stretches of one passage; a caret at its end stands in an empty one."""
        out = list(self._walk(inlines, ()))
        if self.waiting:
            out.append(self._stretch("", ()))
        return tuple(out)

    def _walk(self, inlines: Sequence[Inline], styles: tuple[str, ...]) -> Iterator[Stretch]:
        for inline in inlines:
            match inline:
                case Hole(index):
                    self._pass(*self.edges[index])
                case Text(text):
                    yield self._stretch(text, styles)
                case Code(text):
                    yield self._stretch(text, (*styles, "code"))
                case Break(hard):
                    yield self._stretch("\n" if hard else " ", styles)
                case Styled(style, children):
                    yield from self._walk(children, (*styles, style))
                case Link(children, _):
                    yield from self._walk(children, styles)
                case Image(alt, _, _):
                    yield self._stretch(f"[{alt or 'picture'}]", styles)
                case Note(children):
                    yield replace(self._stretch("", styles), note=len(self.notes) + 1)
                    self._set_note(children)

    def _set_note(self, children: Sequence[Inline]) -> None:
        """A footnote's own type; the marks on the words around its number do not reach into it."""
        place, held, self.open = len(self.notes), self.open, []
        self.notes.append(())
        self.notes[place] = self.stretches(children)
        self.open = held

    def _stretch(self, text: str, styles: tuple[str, ...]) -> Stretch:
        begins, self.waiting = tuple(self.waiting), []
        return Stretch(text, styles, tuple(self.open), begins)

    def _pass(self, mark: int, place: int, begins: bool) -> None:
        """The edge of a place is passed."""
        key = (mark, place)
        if not begins:
            self.open = [one for one in self.open if one != key]
        elif key not in self.begun:
            self.begun.add(key)
            self.waiting.append(key)
            if key in self.ends:
                self.open.append(key)
