"""The revision: the draft with its reverse outline, the marks of its argument, and what is to be asked of it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any

from starlette.responses import Response
from starlette.routing import Route

from fairhand.errors import DraftChangedOnDisk, FairhandError
from fairhand.revision.outline_file import Correction
from fairhand.session.drafting.outline import answer_asking, correct_paragraph, read_outline_of, stands, tell_standing
from fairhand.web.asked import Asked, post
from fairhand.web.forms import read_number
from fairhand.web.marked_text import ProofPage

SEEN = "seen"
"""What a choice is sent as where the writer leaves it to the program."""


@dataclass(frozen=True)
class RevisionPage(ProofPage):
    """The page of the first pass: its marks stand in the right margin, the outline in the left one."""

    template: str = "revision_page.html"

    def values(self, asked: Asked) -> Mapping[str, Any]:
        """The outline, the questions with the writer's answers, and whether the argument stands."""
        known = asked.paper.opened.look()
        outline = read_outline_of(known, asked.paper.folder)
        findings = asked.paper.opened.verdict().findings
        chosen = asked.form.text("outline") or asked.query("outline")
        return {
            "sides": {note.outlined.span.start: note for note in outline.notes},
            "corrected": read_number(chosen, 0),
            "points": known.paper.points.points,
            "questions": known.paper.focus.questions,
            "askings": outline.askings,
            "lost": outline.lost,
            "outline_problems": outline.problems,
            "standing": tell_standing(findings, outline) if outline.notes else "",
            "stands": stands(findings, outline),
        }

    def correct(self, asked: Asked) -> Response:
        """The writer's word on one paragraph of the outline; then the page again."""
        known, paragraph = asked.paper.opened.look(), asked.form.matter("paragraph")
        try:
            correct_paragraph(asked.paper.folder, known, paragraph, lambda before: _read(asked, before))
        except DraftChangedOnDisk:
            raise
        except FairhandError as error:
            return self.show(asked, fault=error)
        return asked.go(asked.to(self.in_pass))

    def answer_one(self, asked: Asked) -> Response:
        """The writer's answer to one of the questions; then the page again, at the question."""
        name, answer = asked.form.text("asks"), " ".join(asked.form.text("answer").split())
        answer_asking(asked.paper.folder, name, answer, asked.papers.now())
        return asked.go(asked.to(self.in_pass, at=f"asks-{name}"))

    @property
    def routes(self) -> tuple[Route, ...]:
        """The page's addresses."""
        path = f"/paper/{{slug}}/{self.in_pass}"
        return (
            *super().routes,
            post(f"{path}/outline", self.correct),
            post(f"{path}/answers", self.answer_one),
        )


def _read(asked: Asked, before: Correction) -> Correction:
    """What the form says of a paragraph."""
    form = asked.form
    if form.text("do") == SEEN:
        return Correction(before.paragraph)
    chosen = {name: form.text(name, SEEN) for name in ("point", "question", "focus")}
    return replace(
        before,
        says=" ".join(form.text("says").split()) or None,
        point=None if chosen["point"] == SEEN else chosen["point"],
        question=None if chosen["question"] == SEEN else chosen["question"],
        focus={"on": True, "off": False}.get(chosen["focus"]),
        tie=" ".join(form.text("tie").split()) or None,
    )


ROUTES = RevisionPage(
    "revision",
    "Revision",
    {
        "empty": "There is no draft yet: write it first, and revise it when it is whole.",
        "clear": "No check has anything to say of the argument: read the paper as a stranger would, with its outline.",
    },
).routes
