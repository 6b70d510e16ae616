"""The brief: the sheet itself with its demands marked in it, and what the writer says of each."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from starlette.exceptions import HTTPException
from starlette.responses import Response

from fairhand.model.requirement import Requirement
from fairhand.readiness.judgement import Judged
from fairhand.session.answering import answer_requirement
from fairhand.web.asked import Asked, get, post

STATES = {"met": "met", "unmet": "not met", "ask": "yours to answer", "waived": "waived"}
"""A requirement's state in words."""


@dataclass(frozen=True, slots=True)
class Piece:
    """A stretch of the sheet, and the demands that begin or end at its edges."""

    text: str
    begins: tuple[str, ...]
    """Ids of the requirements whose words begin here."""
    asked: bool
    """Whether any requirement's words are in it."""
    ends: bool
    """Whether any requirement's words end with it."""


def cut_sheet(text: str, requirements: Sequence[Requirement]) -> tuple[Piece, ...]:
    """The sheet cut wherever the words of a requirement begin or end; together the pieces are the sheet.

    >>> from fairhand.model.span import Span
    >>> [piece.text for piece in cut_sheet("Write 900 words.", [Requirement("length", {}, "900 words", Span(6, 15))])]
    ['Write ', '900 words', '.']
    """
    spans = [(r.span, r.id) for r in requirements if 0 <= r.span.start < r.span.end <= len(text)]
    edges = sorted({0, len(text), *(s.start for s, _ in spans), *(s.end for s, _ in spans)})
    return tuple(
        Piece(
            text[start:end],
            tuple(name for s, name in spans if s.start == start),
            any(s.start <= start and end <= s.end for s, _ in spans),
            any(s.end == end for s, _ in spans),
        )
        for start, end in pairwise(edges)
    )


def show(asked: Asked) -> Response:
    """Each sheet with its demands marked, then what became of each, with a form to answer it."""
    opened = asked.paper.opened
    judged, paper = opened.verdict().judged, opened.look().paper
    sheets = [
        (name, cut_sheet(text, [r for r in paper.requirements if r.sheet == name]))
        for name, text in paper.brief.texts.items()
    ]
    open_ = [one for one in judged if one.judgement.state == "ask"]
    return asked.page(
        "brief_page.html",
        title="Brief",
        step=_step(bool(sheets), open_),
        sheets=sheets,
        judged=judged,
        states=STATES,
        answers=paper.answers,
        brief=paper.brief,
    )


def _step(has_sheet: bool, open_: Sequence[Judged]) -> str:
    if not has_sheet:
        return "Put the assignment sheet into the paper’s folder as brief.pdf, .docx, .txt, .html or .md."
    if open_:
        return f"Answer what only you can say: {len(open_)} {'thing is' if len(open_) == 1 else 'things are'} open."
    return "Nothing on the sheet waits for an answer of yours."


def send(asked: Asked) -> Response:
    """An answer, a waiver, or either taken back, kept in ``paper.toml`` with who said so."""
    requirement, form = asked.name("id"), asked.form
    known = {r.id for r in asked.paper.opened.look().paper.requirements}
    if requirement not in known:
        raise HTTPException(404)
    answer_requirement(
        asked.paper.folder,
        requirement,
        words=form.text("words"),
        by=form.text("by"),
        waive=form.text("do") == "waive",
        undo=form.text("do") == "undo",
    )
    return asked.go(asked.to("brief", at=requirement))


ROUTES = (get("/paper/{slug}/brief", show), post("/paper/{slug}/brief/{id}", send))
