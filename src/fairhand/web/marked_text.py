"""What the two passes share: the draft set as it reads, its findings marked, each mended or let stand in its place."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Literal, get_args

from starlette.responses import Response
from starlette.routing import Route

from fairhand.errors import DraftChangedOnDisk
from fairhand.model.finding import Finding, Pass
from fairhand.model.span import Span
from fairhand.model.stet import Stet
from fairhand.proof.galley import Line, Mark, Stretch, mark_findings, order_findings, set_galley
from fairhand.proof.passages import list_passages, passage_at
from fairhand.proof.signs import Place
from fairhand.proof.stets import make_stet, name_stet
from fairhand.readiness.told import mark_differences
from fairhand.readiness.verdict import Verdict
from fairhand.session.editing import add_stet, likest_passage, mend_passage, remove_stet
from fairhand.web.asked import Asked, get, post
from fairhand.web.both import Versions, show_both


@dataclass(frozen=True, slots=True)
class Sort:
    """One piece of type, or a sign that begins or ends; a line is set from them in order."""

    kind: Literal["type", "open", "close", "caret", "note", "call"]
    text: str = ""
    styles: tuple[str, ...] = ()
    mark: int = 0
    """Index of the mark, of a sign."""
    place: int = 0
    """Index of the sign among the mark's places."""
    number: int = 0
    """The number of the footnote called out."""


@dataclass(frozen=True)
class Sorts:
    """A line of the galley, ready for the page."""

    line: Line
    sorts: tuple[Sort, ...] = ()
    """Its type; the notes in the margin stand after the word that they belong to."""
    beside: tuple[Sort, ...] = ()
    """The notes that stand before the whole block: of headings, and of what is within tables."""
    children: tuple[Sorts, ...] = ()
    rows: tuple[tuple[tuple[Sort, ...], ...], ...] = ()
    caption: tuple[Sort, ...] = ()


@dataclass(frozen=True)
class Marked:
    """One mark as the page tells of it."""

    mark: Mark
    name: str
    """By which it is told from every other when it is let stand."""
    passage: str
    """The passage as the writer wrote it, to be mended; empty where it is about the whole paper."""
    wordings: tuple[tuple[str, str], ...]
    """Both wordings with what differs in half brackets, where two were compared."""

    @property
    def label(self) -> str:
        """What it is, in plain words, and how loud."""
        found = self.mark.finding
        return f"{found.check.replace('-', ' ')}, {'stet' if self.mark.stet else found.weight}"

    @property
    def can_stand(self) -> bool:
        """Whether the writer may let it stand; what the sheet asks is waived in the brief instead."""
        return self.mark.finding.span is not None or bool(self.mark.finding.concerns)


@dataclass(frozen=True)
class ProofPage:
    """The page of one pass."""

    in_pass: Pass
    title: str
    steps: Mapping[str, str] = field(default_factory=dict)
    """What to do where nothing is marked, ``clear``, and where there is no draft, ``empty``."""

    def show(self, asked: Asked) -> Response:
        """The draft with the marks of the pass; the one that is chosen tells what it says, and takes an answer."""
        marked, draft = self.marks_of(asked)
        marks = [one.mark for one in marked]
        chosen = _number(asked.query("finding"), len(marked))
        galley = set_galley(asked.paper.opened.look().manuscript, marks)
        return asked.page(
            "marked_text.html",
            title=self.title,
            step=self.step(marks, draft),
            here=self.in_pass,
            marked=marked,
            whole=[one for one in marked if not one.mark.places or not galley.lines],
            lines=[_set_line(line, marks) for line in galley.lines],
            notes=[tuple(_set_type(note, marks)) for note in galley.notes],
            chosen=chosen,
            around=_around(chosen, len(marked)),
        )

    def step(self, marks: Sequence[Mark], draft: str) -> str:
        """The page's next step, in a sentence."""
        if not draft.strip():
            return self.steps["empty"]
        open_ = sum(mark.stet is None for mark in marks)
        if not open_:
            return self.steps["clear"]
        many = "One mark is" if open_ == 1 else f"{open_} marks are"
        return f"{many} to be gone through, one after another: mend each, or let it stand."

    def marks_of(self, asked: Asked) -> tuple[tuple[Marked, ...], str]:
        """The marks of the pass in the order of the proof, and the draft that they are on."""
        opened = asked.paper.opened
        verdict, manuscript = opened.verdict(), opened.look().manuscript
        marks = mark_findings(_found_in(verdict, self.in_pass), manuscript)
        passages = list_passages(manuscript)
        return tuple(_tell(mark, verdict.draft, passages) for mark in marks), verdict.draft

    def mend(self, asked: Asked) -> Response:
        """The passage as the writer mended it; then the next mark."""
        form = asked.form
        typed = form.matter("text").strip("\n")
        try:
            mend_passage(asked.paper.folder, form.matter("was"), typed)
        except DraftChangedOnDisk:
            present = likest_passage(asked.paper.folder, form.matter("was"))
            return show_both(asked, Versions("draft.md", typed, present, present, seen_field="was"))
        return self.go_on(asked)

    def answer(self, asked: Asked) -> Response:
        """A mark let stand, with the reason, or a stet taken back.

        Raises:
            DraftChangedOnDisk: The draft was changed, and the mark is there no more.
        """
        form = asked.form
        if form.text("do") == "undo":
            remove_stet(asked.paper.folder, form.text("mark"))
            return self.go_on(asked)
        marked, draft = self.marks_of(asked)
        one = next((one for one in marked if one.name == form.text("mark") and one.can_stand), None)
        if one is None:
            message = "draft.md: it was changed meanwhile, and the mark is there no more; look at the page again"
            raise DraftChangedOnDisk(message)
        add_stet(asked.paper.folder, one.mark.finding, draft, form.text("reason"), asked.papers.now())
        return self.go_on(asked)

    def go_on(self, asked: Asked) -> Response:
        """The way to the first open mark from the present one on; where there is none, to the page."""
        marked, _ = self.marks_of(asked)
        at = _number(asked.form.text("finding"), len(marked)) or len(marked) + 1
        following = next((one.mark.number for one in marked[at - 1 :] if one.mark.stet is None), 0)
        if not following:
            return asked.go(asked.to(self.in_pass))
        return asked.go(asked.to(self.in_pass, at=f"mark-{following}", finding=following))

    def back(self, asked: Asked) -> Response:
        """The way to the page, for who asks a form's address."""
        return asked.go(asked.to(self.in_pass))

    @property
    def routes(self) -> tuple[Route, ...]:
        """The page's addresses."""
        path = f"/paper/{{slug}}/{self.in_pass}"
        return (
            get(path, self.show),
            get(f"{path}/mend", self.back),
            post(f"{path}/mend", self.mend),
            get(f"{path}/stet", self.back),
            post(f"{path}/stet", self.answer),
        )


def mark_addresses(asked: Asked, verdict: Verdict) -> Mapping[Finding, str]:
    """Where the mark of each finding is told of, in the pass that it belongs to."""
    return {
        finding: asked.to(in_pass, at=f"mark-{number}", finding=number)
        for in_pass in get_args(Pass)
        for number, (finding, _) in enumerate(order_findings(_found_in(verdict, in_pass)), 1)
    }


def _found_in(verdict: Verdict, in_pass: Pass) -> list[tuple[Finding, Stet | None]]:
    """What belongs to a pass, what is let stand too."""
    found = [(f, None) for f in verdict.findings] + [(one.finding, one.stet) for one in verdict.stets]
    return [each for each in found if each[0].in_pass == in_pass]


def _number(said: str, most: int) -> int:
    """A mark's number as an address has it; 0 where it names none."""
    return int(said) if said.isascii() and said.isdigit() and len(said) < 7 and 1 <= int(said) <= most else 0


def _around(chosen: int, most: int) -> Mapping[str, int]:
    """The numbers of the marks before and after the one chosen; 0 for none."""
    return {"before": chosen - 1, "after": chosen + 1 if 0 < chosen < most else 0}


def _tell(mark: Mark, draft: str, passages: tuple[Span, ...]) -> Marked:
    found, both = mark.finding, mark.finding.wordings
    passage = passage_at(passages, found.span)
    return Marked(
        mark,
        name_stet(mark.stet or make_stet(found, draft)),
        passage.of(draft) if passage else "",
        (
            ("draft", mark_differences(both.draft, both.draft_differs)),
            ("source", mark_differences(both.source, both.source_differs)),
        )
        if both
        else (),
    )


def _set_line(line: Line, marks: Sequence[Mark]) -> Sorts:
    """A line as sorts; where a note cannot stand within its type, it stands before the block."""
    sorts = tuple(_set_type(line.stretches, marks))
    rows = tuple(tuple(tuple(_set_type(cell, marks)) for cell in row) for row in line.rows)
    caption = tuple(_set_type(line.caption, marks))
    beside = [Sort("note", mark=mark, place=place) for mark, place in line.beside]
    if line.kind != "paragraph":
        inner = [*sorts, *caption, *(sort for row in rows for cell in row for sort in cell)]
        beside += [sort for sort in inner if sort.kind == "note"]
        sorts, caption = _without_notes(sorts), _without_notes(caption)
        rows = tuple(tuple(_without_notes(cell) for cell in row) for row in rows)
    children = tuple(_set_line(child, marks) for child in line.children)
    return Sorts(line, sorts, tuple(beside), children, rows, caption)


def _without_notes(sorts: Iterable[Sort]) -> tuple[Sort, ...]:
    return tuple(sort for sort in sorts if sort.kind != "note")


def _set_type(stretches: Sequence[Stretch], marks: Sequence[Mark]) -> Iterator[Sort]:
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
