"""What was marked in the copy-edit, mended in one go: each passage once, all of them saved together."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from starlette.responses import Response

from fairhand.errors import DraftChangedOnDisk, FairhandError
from fairhand.model.finding import Finding
from fairhand.model.span import line_at
from fairhand.session.correction.going_through import (
    Numbered,
    ToMend,
    list_numbered,
    list_to_mend,
    mend_in_one_go,
)
from fairhand.session.editing import Passage, likest_passage
from fairhand.web.asked import Asked, get, post
from fairhand.web.error_pages import page_of
from fairhand.web.forms import MOST_FIELDS, read_number
from fairhand.web.marked_text import tell_wordings

HERE = ("copy-edit", "marked")
FIELDS = 4
"""Fields that each passage has in the form."""


@dataclass(frozen=True, slots=True)
class Shown:
    """A passage as the form has it."""

    passage: Passage
    findings: tuple[Finding, ...] = ()
    """What is marked in it."""
    offered: tuple[str, ...] = ()
    """What is put in already."""
    line: int = 0
    present: str = ""
    """As the draft now has it, where it was changed while the writer typed; empty where it was not."""


def show(asked: Asked, *, shown: Sequence[Shown] | None = None, fault: FairhandError | None = None) -> Response:
    """The passages that hold something marked to be mended, and what is to be come back to.

    Args:
        asked: The request.
        shown: The passages as they were sent, where they could not be saved.
        fault: Why not.
    """
    numbered = list_numbered(asked.paper.opened)
    draft = asked.paper.opened.verdict().draft
    fresh = [
        Shown(
            one.passage,
            one.findings,
            one.offered,
            line_at(draft, next(finding.span.start for finding in one.findings if finding.span)),
        )
        for one in marked(asked, numbered)
    ]
    return asked.page(
        "marked_later_page.html",
        status=page_of(fault)[0] if fault else 200,
        title="Copy-edit: what was marked",
        step=_step(len(fresh)),
        passages=fresh if shown is None else shown,
        wordings=tell_wordings,
        come_back=[one for one in numbered if one.mark and one.mark.word == "later"],
        line_of=lambda one: line_at(draft, one.finding.span.start) if one.finding.span else 0,
        fault=f"{fault}." if fault else "",
    )


def _step(many: int) -> str:
    if not many:
        return "Nothing is marked to be mended: go through the copy-edit, and mark what is."
    return "Mend each passage as you would have it, then save them all together."


def marked(asked: Asked, numbered: Sequence[Numbered]) -> tuple[ToMend, ...]:
    """The passages with what is marked in them to be mended."""
    found = [one.finding for one in numbered if one.mark and one.mark.word == "mend"]
    return list_to_mend(asked.paper.opened.look().manuscript, found)[: MOST_FIELDS // FIELDS - 1]


def mend(asked: Asked) -> Response:
    """All passages as the writer has them now stand in the draft; where one was changed meanwhile, none does."""
    opened, form = asked.paper.opened, asked.form
    typed = []
    for number in range(1, MOST_FIELDS // FIELDS):
        if not (form.has(f"was-{number}") and form.has(f"text-{number}")):
            break
        alike = (read_number(form.text(f"which-{number}"), 0), read_number(form.text(f"many-{number}"), 1) or 1)
        typed.append(Passage(form.matter(f"was-{number}"), form.matter(f"text-{number}").strip("\n"), alike))
    own, draft = marked(asked, list_numbered(opened)), opened.verdict().draft
    try:
        mend_in_one_go(asked.paper.folder, typed, own, draft, asked.papers.now().date())
    except FairhandError as fault:
        changed = isinstance(fault, DraftChangedOnDisk)
        return show(asked, shown=[_again(asked, one, own, changed=changed) for one in typed], fault=fault)
    return asked.go(asked.to(*HERE))


def _again(asked: Asked, typed: Passage, own: Sequence[ToMend], *, changed: bool) -> Shown:
    """A passage as it was sent; where the draft has it no more as it was, with what the draft has now."""
    known = next((one for one in own if (one.passage.was, one.passage.alike) == (typed.was, typed.alike)), None)
    if known is not None or not changed:
        findings = known.findings if known else ()
        return Shown(typed, findings, known.offered if known else ())
    present, alike = likest_passage(asked.paper.folder, typed.was, typed.alike[0])
    return Shown(Passage(present, typed.now, alike), present=present)


ROUTES = (
    get("/paper/{slug}/copy-edit/marked", show),
    post("/paper/{slug}/copy-edit/marked", mend),
)
