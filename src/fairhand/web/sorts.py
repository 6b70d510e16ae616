"""The galley as sorts: pieces of type, signs that begin and end, and the notes that stand in the margin.

A template sets them in order; nothing of the marks is worked out there.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Literal

from fairhand.proof.galley import Line, Mark, Stretch
from fairhand.proof.signs import Place

Key = tuple[int, int]
"""A mark's index, and the index of one of its places."""
NEAR = 60
"""Characters of type within which notes stand together in the margin: they are most likely on one line."""


@dataclass(frozen=True, slots=True)
class Sort:
    """One piece of type, or a sign that begins or ends; a line is set from them in order."""

    kind: Literal["type", "open", "close", "caret", "note", "notes", "call"]
    text: str = ""
    styles: tuple[str, ...] = ()
    mark: int = 0
    """Index of the mark, of a sign."""
    place: int = 0
    """Index of the sign among the mark's places."""
    number: int = 0
    """The number of the footnote called out."""
    notes: tuple[Key, ...] = ()
    """The notes that stand together in the margin."""


@dataclass(frozen=True)
class Sorts:
    """A line of the galley, ready for the page."""

    line: Line
    sorts: tuple[Sort, ...] = ()
    """Its type; the notes in the margin stand after the word that they belong to."""
    beside: tuple[Key, ...] = ()
    """The notes that stand before the whole block: of headings, and of what is within tables."""
    children: tuple[Sorts, ...] = ()
    rows: tuple[tuple[tuple[Sort, ...], ...], ...] = ()
    caption: tuple[Sort, ...] = ()


def set_line(line: Line, marks: Sequence[Mark]) -> Sorts:
    """A line as sorts; where a note cannot stand within its type, it stands before the block."""
    sorts = tuple(set_type(line.stretches, marks))
    rows = tuple(tuple(tuple(set_type(cell, marks)) for cell in row) for row in line.rows)
    caption = tuple(set_type(line.caption, marks))
    beside = list(line.beside)
    if line.kind != "paragraph":
        inner = [*sorts, *caption, *(sort for row in rows for cell in row for sort in cell)]
        beside += [(sort.mark, sort.place) for sort in inner if sort.kind == "note"]
        sorts, caption = _without_notes(sorts), _without_notes(caption)
        rows = tuple(tuple(_without_notes(cell) for cell in row) for row in rows)
    children = tuple(set_line(child, marks) for child in line.children)
    return Sorts(line, tuple(gather_notes(sorts)), tuple(beside), children, rows, caption)


def gather_notes(sorts: Iterable[Sort]) -> Iterator[Sort]:
    """The sorts, each note with those that follow it closely, where the first of them stands.

    >>> word, note = Sort("type", "lamps "), Sort("note")
    >>> [(sort.kind, len(sort.notes)) for sort in gather_notes([note, word, note])]
    [('notes', 2), ('type', 0)]
    """
    out: list[Sort] = []
    at, first, begun = 0, -NEAR, 0  # characters set, and where the notes last begun stand, in the type and in ``out``
    for sort in sorts:
        at += len(sort.text)
        if sort.kind != "note":
            out.append(sort)
        elif at - first < NEAR:
            out[begun] = replace(out[begun], notes=(*out[begun].notes, (sort.mark, sort.place)))
        else:
            first, begun = at, len(out)
            out.append(Sort("notes", notes=((sort.mark, sort.place),)))
    return iter(out)


def _without_notes(sorts: Iterable[Sort]) -> tuple[Sort, ...]:
    return tuple(sort for sort in sorts if sort.kind != "note")


def set_type(stretches: Sequence[Stretch], marks: Sequence[Mark]) -> Iterator[Sort]:
    """The sorts of one passage: signs nested, each note after the first word of its place, a caret's at once."""
    stack: list[tuple[int, int]] = []
    waiting: list[Sort] = []
    begun = False  # whether the word that the waiting notes follow has been set in part
    for stretch in stretches:
        kept = next((n for n, (a, b) in enumerate(zip(stack, stretch.under, strict=False)) if a != b),
                    min(len(stack), len(stretch.under)))  # fmt: skip
        yield from (Sort("close") for _ in stack[kept:])
        del stack[kept:]
        for key in stretch.begins:
            note = Sort("note", mark=key[0], place=key[1])
            if _place(marks, key).sign == "insert":
                yield Sort("caret", mark=key[0], place=key[1])
                yield note
            else:
                waiting.append(note)
        for mark, place in stretch.under[kept:]:
            stack.append((mark, place))
            yield Sort("open", mark=mark, place=place)
        if stretch.note:
            yield Sort("call", number=stretch.note)
        head, tail = _part_after_word(stretch.text, begun=begun) if waiting else (stretch.text, "")
        if head:
            yield Sort("type", head, stretch.styles)
        begun = bool(waiting) and (begun or bool(head.strip()))
        if tail:
            yield from waiting
            waiting, begun = [], False
            yield Sort("type", tail, stretch.styles)
    yield from (Sort("close") for _ in stack)
    yield from waiting


def _place(marks: Sequence[Mark], key: tuple[int, int]) -> Place:
    return marks[key[0]].places[key[1]]


def _part_after_word(text: str, *, begun: bool) -> tuple[str, str]:
    """A text parted after its first word, or after the rest of one that has begun before it.

    >>> _part_after_word(" and so on", begun=False), _part_after_word(" and so on", begun=True)
    ((' and', ' so on'), ('', ' and so on'))
    """
    lead = 0 if begun else len(text) - len(text.lstrip())
    stop = next((n for n in range(lead, len(text)) if text[n].isspace()), len(text))
    return text[:stop], text[stop:]
