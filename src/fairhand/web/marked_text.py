"""What the two passes share: the draft set as it reads, its findings marked, each mended or let stand in its place."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from typing import Any, get_args

from starlette.responses import Response
from starlette.routing import Route

from fairhand.errors import DraftChangedOnDisk, FairhandError
from fairhand.language.counts import open_with
from fairhand.model.finding import Finding, Pass
from fairhand.model.span import Span
from fairhand.model.stet import Stet
from fairhand.proof.galley import Mark, mark_findings, order_findings, set_galley
from fairhand.proof.passages import count_alike, list_passages, passage_at
from fairhand.proof.stets import make_stet, name_stet
from fairhand.readiness.told import mark_differences
from fairhand.readiness.verdict import Verdict
from fairhand.session.correction.going_through import SAYS
from fairhand.session.editing import add_stet, likest_passage, mend_passage, remove_stet
from fairhand.web.asked import Asked, get, post
from fairhand.web.both import Versions, show_both
from fairhand.web.error_pages import page_of
from fairhand.web.forms import read_number
from fairhand.web.sorts import gather_notes, set_line, set_type

MOST = 10**6 - 1
"""The largest number that an address or a form is read to give."""


@dataclass(frozen=True)
class Marked:
    """One mark as the page tells of it."""

    mark: Mark
    name: str
    """By which it is told from every other when it is let stand."""
    passage: str
    """The passage as the writer wrote it, to be mended; empty where it is about the whole paper."""
    alike: tuple[int, int]
    """Which of the passages that read alike it is, from 0, and how many they are."""
    wordings: tuple[tuple[str, str], ...]
    """Both wordings with what differs in half brackets, where two were compared."""
    left: Stet | None = None
    """The writer's word on it, where it was marked and left for afterwards."""
    offer: str = ""
    """What may be put in at once, in a few words; empty where nothing may."""

    @property
    def label(self) -> str:
        """What it is, in plain words, and how loud, or what the writer said of it."""
        found, said = self.mark.finding, self.mark.stet or self.left
        return f"{found.check.replace('-', ' ')}, {SAYS[said.word] if said else found.weight}"

    @property
    def is_open(self) -> bool:
        """Whether the writer has said nothing of it yet."""
        return self.mark.stet is None and self.left is None

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
    template: str = "marked_text.html"

    def show(self, asked: Asked, *, fault: FairhandError | None = None) -> Response:
        """The draft with the marks of the pass; the one that is chosen tells what it says, and takes an answer.

        Args:
            asked: The request.
            fault: Why the answer that it carries could not be kept; what was typed is then still in the form.
        """
        marked, draft = self.marks_of(asked)
        marks = [one.mark for one in marked]
        form = asked.form
        chosen = _number(form.text("finding") or asked.query("finding"), len(marked))
        galley = set_galley(asked.paper.opened.look().manuscript, marks)
        return asked.page(
            self.template,
            status=page_of(fault)[0] if fault else 200,
            title=self.title,
            step=self.step(asked, marked, draft),
            here=self.in_pass,
            marked=marked,
            whole=[one for one in marked if not one.mark.places or not galley.lines],
            lines=[set_line(line, marks) for line in galley.lines],
            notes=[tuple(gather_notes(set_type(note, marks))) for note in galley.notes],
            chosen=chosen,
            around=_around(chosen, len(marked)),
            fault=f"{fault}." if fault else "",
            typed={name: form.matter(name) for name in ("text", "reason") if form.has(name)},
            narrowed=self.narrowed(asked),
            **self.values(asked),
        )

    def values(self, asked: Asked) -> Mapping[str, Any]:  # noqa: ARG002 - for the page of a pass that shows more
        """What else the template names: the notes beside each paragraph, and which of them is being corrected."""
        return {"sides": {}, "corrected": 0}

    def picks(self, asked: Asked, finding: Finding, left: Stet | None) -> bool:  # noqa: ARG002 - for one kind alone
        """Whether a finding of the pass is shown."""
        return True

    def left(self, asked: Asked, verdict: Verdict) -> Mapping[Finding, Stet]:  # noqa: ARG002 - for the copy-edit
        """The findings that were marked and left for afterwards."""
        return {}

    def offer(self, finding: Finding, draft: str) -> str:  # noqa: ARG002 - for the copy-edit
        """What may be put in at once where a finding is, in a few words."""
        return ""

    def narrowed(self, asked: Asked) -> Mapping[str, str]:  # noqa: ARG002 - for a page that shows one kind
        """What every address of the page says of what it shows."""
        return {}

    def step(self, asked: Asked, marked: Sequence[Marked], draft: str) -> str:  # noqa: ARG002 - for the copy-edit
        """The page's next step, in a sentence."""
        if not draft.strip():
            return self.steps["empty"]
        open_ = sum(one.is_open for one in marked)
        if not open_:
            return self.steps["clear"]
        many = open_with(open_, "mark is", "marks are")
        return f"{many} to be gone through, one after another: mend each, or let it stand."

    def marks_of(self, asked: Asked) -> tuple[tuple[Marked, ...], str]:
        """The marks of the pass in the order of the proof, and the draft that they are on."""
        opened = asked.paper.opened
        verdict, manuscript = opened.verdict(), opened.look().manuscript
        left = self.left(asked, verdict)
        found = [each for each in found_in(verdict, self.in_pass) if self.picks(asked, each[0], left.get(each[0]))]
        marks = mark_findings(found, manuscript)
        passages = list_passages(manuscript)
        told = (_tell(mark, verdict.draft, passages) for mark in marks)
        return tuple(
            replace(one, left=left.get(one.mark.finding), offer=self.offer(one.mark.finding, verdict.draft))
            for one in told
        ), verdict.draft

    def mend(self, asked: Asked) -> Response:
        """The passage as the writer mended it; then the next mark."""
        form = asked.form
        was, typed = form.matter("was"), form.matter("text").strip("\n")
        which, many = _number(form.text("which"), MOST), _number(form.text("many"), MOST) or 1
        try:
            mend_passage(asked.paper.folder, was, typed, (which, many))
        except DraftChangedOnDisk:
            present, (which, many) = likest_passage(asked.paper.folder, was, which)
            more = {"which": which, "many": many}
            return show_both(asked, Versions("draft.md", typed, present, present, seen_field="was", more=more))
        except FairhandError as error:
            return self.show(asked, fault=error)
        return self.go_on(asked)

    def answer(self, asked: Asked) -> Response:
        """A mark let stand, with the reason, or a stet taken back.

        Raises:
            DraftChangedOnDisk: The draft was changed, and the mark is there no more.
        """
        try:
            self._answer(asked)
        except DraftChangedOnDisk:
            raise
        except FairhandError as error:
            return self.show(asked, fault=error)
        return self.go_on(asked)

    def _answer(self, asked: Asked) -> None:
        form = asked.form
        if form.text("do") == "undo":
            remove_stet(asked.paper.folder, form.text("mark"))
            return
        marked, draft = self.marks_of(asked)
        one = next((one for one in marked if one.name == form.text("mark") and one.can_stand), None)
        if one is None:
            message = "draft.md: it was changed meanwhile, and the mark is there no more; look at the page again"
            raise DraftChangedOnDisk(message)
        add_stet(asked.paper.folder, one.mark.finding, draft, form.text("reason"), asked.papers.now())

    def go_on(self, asked: Asked) -> Response:
        """The way to the first open mark from the present one on; where there is none, to the page."""
        marked, _ = self.marks_of(asked)
        at = _number(asked.form.text("finding"), len(marked)) or len(marked) + 1
        following = next((one.mark.number for one in marked[at - 1 :] if self.waits(asked, one)), 0)
        if not following:
            return asked.go(asked.to(self.in_pass, **self.narrowed(asked)))
        narrowed = self.narrowed(asked)
        return asked.go(asked.to(self.in_pass, at=f"mark-{following}", finding=following, **narrowed))

    def waits(self, asked: Asked, one: Marked) -> bool:  # noqa: ARG002 - for a page that is narrowed to what was marked
        """Whether a mark is still to be gone through."""
        return one.is_open

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
        for number, (finding, _) in enumerate(order_findings(found_in(verdict, in_pass)), 1)
    }


def found_in(verdict: Verdict, in_pass: Pass) -> list[tuple[Finding, Stet | None]]:
    """What belongs to a pass, what is let stand too."""
    found = [(f, None) for f in verdict.findings] + [(one.finding, one.stet) for one in verdict.stets]
    return [each for each in found if each[0].in_pass == in_pass]


def _number(said: str, most: int) -> int:
    """A mark's number as an address has it; 0 where it names none."""
    number = read_number(said, 0)
    return number if number <= most else 0


def _around(chosen: int, most: int) -> Mapping[str, int]:
    """The numbers of the marks before and after the one chosen; 0 for none."""
    return {"before": chosen - 1, "after": chosen + 1 if 0 < chosen < most else 0}


def tell_wordings(finding: Finding) -> tuple[tuple[str, str], ...]:
    """Both wordings with what differs in half brackets, where a check compared two."""
    both = finding.wordings
    if both is None:
        return ()
    return (
        ("draft", mark_differences(both.draft, both.draft_differs)),
        ("source", mark_differences(both.source, both.source_differs)),
    )


def _tell(mark: Mark, draft: str, passages: tuple[Span, ...]) -> Marked:
    found = mark.finding
    passage = passage_at(passages, found.span)
    return Marked(
        mark,
        name_stet(mark.stet or make_stet(found, draft)),
        passage.of(draft) if passage else "",
        count_alike(passages, draft, passage) if passage else (0, 1),
        tell_wordings(found),
    )
