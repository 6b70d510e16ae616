"""The brief: the sheet itself with what it asks marked in it, and what the writer says of each."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field

from starlette.exceptions import HTTPException
from starlette.responses import Response

from fairhand.brief.correcting import Field, list_fields
from fairhand.brief.marked_sheet import mark_sheet
from fairhand.brief.read import given_day
from fairhand.brief.telling import name_requirement, say_day, tell_requirement
from fairhand.desk.seen import hash_bytes
from fairhand.errors import FairhandError
from fairhand.language.counts import count_of
from fairhand.model.paper import Paper
from fairhand.model.requirement import Requirement
from fairhand.model.settings import Answer
from fairhand.readiness.judgement import NO_DRAFT, Judged, Judgement
from fairhand.session.assignment.answering import answer_requirement
from fairhand.session.assignment.giving_sheets import give_sheet, set_given
from fairhand.session.editing import state_of
from fairhand.session.sources.photographs import find_photographed_sheet
from fairhand.web.asked import Asked, get, post
from fairhand.web.error_pages import page_of
from fairhand.web.forms import Form, read_day
from fairhand.web.pages.source_page import send_photograph

STATES = {"met": "met", "unmet": "not met", "ask": "yours to answer", "waived": "waived"}
"""A requirement's state in words."""
TO_KNOW = frozenset({"late", "rubric", "submit", "due"})
"""Kinds of requirement of which there is nothing to meet in the draft, only something to know."""
MOST_NOTES = 2
"""Notes that the same words have in the margin; where they ask more of one kind, one note counts them."""
NOUNS = {"section": "section", "rubric": "mark", "format": "rule of form", "element": "part"}
"""What requirements of a kind are called, where they are counted."""
_VALUE = "value-"
"""Begins the name of a form's field that holds one of the values."""


@dataclass(frozen=True)
class Demand:
    """One thing that the sheet asks, as the page tells of it."""

    requirement: Requirement
    """With the writer's corrections in it."""
    judgement: Judgement
    said: str
    """What the writer said of it, by whom and when; empty where nothing."""
    seen: str
    """Changes when what the sheet or the writer says of it does."""

    @property
    def name(self) -> str:
        """What it is called."""
        return name_requirement(self.requirement)

    @property
    def asks(self) -> str:
        """What it asks, in plain words."""
        return tell_requirement(self.requirement)

    @property
    def state(self) -> str:
        """Its state, in words."""
        if self.judgement.why == NO_DRAFT:
            return "not judged yet"
        if self.judgement.state == "met" and self.requirement.kind in TO_KNOW:
            return "to know"
        return STATES[self.judgement.state]

    @property
    def fields(self) -> tuple[Field, ...]:
        """Its values, to be corrected."""
        return tuple(one for one in list_fields(self.requirement) if one.usual)


@dataclass(frozen=True, slots=True)
class Note:
    """What stands in the margin beside some words of the sheet."""

    says: str
    ids: tuple[str, ...]
    """Of the requirements that it tells of."""
    to: str
    """The one that it leads to."""


def tell_notes(demands: Sequence[Demand]) -> tuple[Note, ...]:
    """The notes on all that the same words ask: one for each, or, where many are alike, one that counts them."""
    if len(demands) <= MOST_NOTES or len({one.requirement.kind for one in demands}) > 1:
        return tuple(Note(f"{one.name}, {one.state}", (one.requirement.id,), one.requirement.id) for one in demands)
    by_state = {state: [one for one in demands if one.judgement.state == state] for state in ("unmet", "ask", *STATES)}
    told = [f"{len(those)} {those[0].state}" for those in by_state.values() if those]
    leads = next(those[0] for those in by_state.values() if those)
    noun = count_of(len(demands), NOUNS.get(leads.requirement.kind, "demand"))
    return (Note(f"{noun}: {', '.join(told)}", tuple(one.requirement.id for one in demands), leads.requirement.id),)


@dataclass(frozen=True)
class Trouble:
    """Why what was sent was not done, and what was typed."""

    says: str
    status: int
    form: Form = field(default_factory=Form)
    at: str = ""
    """The id of the requirement that it was about; empty where it was a sheet."""
    meanwhile: bool = False
    """Whether another program, or another window, changed the requirement first."""


def show(asked: Asked, trouble: Trouble | None = None) -> Response:
    """Each sheet, the state of all that it asks in its margins; the one that is chosen takes an answer."""
    opened = asked.paper.opened
    judged, paper = opened.verdict().judged, opened.look().paper
    demands = {one.requirement.id: _demand(paper, one) for one in judged}
    asked_for = [one.requirement for one in judged]
    sheets = [mark_sheet(name, text, asked_for, paper.brief.unread) for name, text in paper.brief.texts.items()]
    chosen = trouble.at if trouble else asked.query("asked")
    given = paper.settings.given or given_day(tuple(paper.brief.texts.items()))
    return asked.page(
        "brief_page.html",
        status=trouble.status if trouble else 200,
        title="Brief",
        step=_step(bool(sheets), judged),
        sheets=sheets,
        demands=demands,
        tell=lambda ids: tell_notes([demands[one] for one in ids]),
        placed={id_ for sheet in sheets for place in sheet.places for id_ in place.requirements},
        chosen=chosen if chosen in demands else "",
        typed=_typed(demands.get(chosen), trouble),
        trouble=trouble,
        brief=paper.brief,
        photographs=_name_photographs(asked, paper.brief.texts),
        problems=[one for one in paper.problems if "brief" in one.where],
        given=given.isoformat() if given else "",
        today=asked.papers.now().date().isoformat(),
    )


def show_photograph(asked: Asked) -> Response:
    """The photograph that a sheet is, to hold its words against."""
    return send_photograph(find_photographed_sheet(asked.paper.opened.source_texts, asked.query("of")))


def _name_photographs(asked: Asked, names: Iterable[str]) -> dict[str, str]:
    """Of the sheets that are photographs, by their names, what tells each from another of its name."""
    found = {name: find_photographed_sheet(asked.paper.opened.source_texts, name) for name in names}
    return {name: hash_bytes(one[0])[:12] for name, one in found.items() if one}


def _demand(paper: Paper, one: Judged) -> Demand:
    answer = paper.answers.get(one.requirement.id)
    seen = state_of((sorted(one.requirement.values.items()), answer))
    return Demand(one.requirement, one.judgement, _tell_answer(answer) if answer else "", seen)


def _tell_answer(answer: Answer) -> str:
    head = "Waived" if answer.waived else "Corrected" if answer.values else "Answered"
    by = f" by {answer.by}" if answer.by else ""
    when = f" on {say_day(answer.when)}" if answer.when else ""
    return f"{head}{by}{when}{f': {answer.note}' if answer.note else ''}."


def _typed(chosen: Demand | None, trouble: Trouble | None) -> Mapping[str, str]:
    """What stands in the fields of the requirement that is chosen: what was typed, else what holds."""
    held = {f"{_VALUE}{one.name}": one.written for one in chosen.fields} if chosen else {}
    sent = trouble.form.fields if trouble else {}
    return {"words": "", "by": "", "pasted": "", "given": "", **held, **{name: text[-1] for name, text in sent.items()}}


def _step(has_sheet: bool, judged: Sequence[Judged]) -> str:
    if not has_sheet:
        return "Choose the assignment sheet, or drop it on the line below: it says what there is to do."
    open_ = sum(one.judgement.state == "ask" for one in judged)
    if open_:
        return f"Answer what only you can say: {count_of(open_, 'thing is', 'things are')} open."
    return "Nothing on the sheet waits for an answer of yours."


def send(asked: Asked) -> Response:
    """A correction, an answer, a waiver, or any of them taken back, kept in ``paper.toml`` with who said so."""
    id_, form, paper = asked.name("id"), asked.form, asked.paper.opened.look().paper
    judged = next((one for one in asked.paper.opened.verdict().judged if one.requirement.id == id_), None)
    if judged is None:
        raise HTTPException(404)
    demand = _demand(paper, judged)
    if form.text("seen") != demand.seen:
        says = "This was changed meanwhile, in paper.toml or in the sheet. Nothing was overwritten: choose."
        return show(asked, Trouble(says, 409, form, id_, meanwhile=True))
    do = form.text("do")
    written = {one.name: form.text(_VALUE + one.name, one.written) for one in demand.fields}
    try:
        answer_requirement(
            asked.paper.folder,
            id_,
            words=form.text("words"),
            written=written if do == "correct" else None,
            by=form.text("by"),
            waive=do == "waive",
            undo=do == "undo",
        )
    except FairhandError as error:
        return show(asked, Trouble(f"{error}.", page_of(error)[0], form, id_))
    return asked.go(asked.to("brief", at=id_))


def give(asked: Asked) -> Response:
    """A sheet given to the paper, or the day that its sheet was given out."""
    form, folder = asked.form, asked.paper.folder
    sheets = [(sheet.name, sheet.data) for sheet in form.uploads("sheet")]
    if form.text("pasted"):
        sheets.append(("message.txt", form.matter("pasted").encode()))
    try:
        day = read_day(form.text("given"))
        if form.text("do") == "given":
            set_given(folder, day)
        elif not sheets:
            message = "Nothing was sent: choose the sheet, or paste its words"
            raise FairhandError(message)  # noqa: TRY301 - it is told like every other
        for name, data in sheets:
            give_sheet(folder, name, data, day)
    except FairhandError as error:
        return show(asked, Trouble(f"{error}.", page_of(error)[0], form))
    return asked.go(asked.to("brief"))


def back(asked: Asked) -> Response:
    """The way to the requirement, for who asks a form's address."""
    return asked.go(asked.to("brief", at=f"asked-{asked.name('id')}", asked=asked.name("id")))


ROUTES = (
    get("/paper/{slug}/brief", show),
    post("/paper/{slug}/brief", give),
    get("/paper/{slug}/brief/photograph", show_photograph),
    get("/paper/{slug}/brief/{id}", back),
    post("/paper/{slug}/brief/{id}", send),
)
