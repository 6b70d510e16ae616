"""Earlier states: of each file by day, as text, beside the present one, and brought back."""

from __future__ import annotations

from collections.abc import Sequence

from starlette.exceptions import HTTPException
from starlette.responses import Response

from fairhand.errors import DraftChangedOnDisk, FairhandError
from fairhand.language.counts import count_of
from fairhand.model.problem import Problem
from fairhand.model.span import Span
from fairhand.proof.comparison import Change
from fairhand.proof.revised import list_sentences, tell_revisions, tell_signs
from fairhand.readiness.told import mark_differences
from fairhand.session.record.states import bring_beside, bring_in_place, check_states, later_states, look_at, look_back
from fairhand.session.versions import list_versions, tell_version
from fairhand.web.asked import Asked, get, post
from fairhand.web.error_pages import page_of
from fairhand.web.forms import read_number

FATES = {
    "edited": "changed",
    "moved": "moved",
    "split": "split since",
    "joined": "joined since",
    "new": "new since",
    "gone": "gone since",
}
"""What became of a passage since, in words."""


def show(asked: Asked) -> Response:
    """The states of one file, the latest day first; on request, whether the record is whole."""
    folder = asked.paper.folder
    past = look_back(
        folder,
        asked.query("file"),
        every=asked.query("every") == "yes",
        before=read_number(asked.query("before"), 0),
    )
    return asked.page(
        "states_page.html",
        title="Earlier states",
        step="Look at what a file was, hold it against what it is now, and bring it back if it was better."
        if past.days
        else "Nothing was saved yet: what you write is kept here, state by state, from the first word on.",
        past=past,
        to=asked.to,
        every=asked.query("every") == "yes",
        tell=tell_change,
        versions=[(one.seen.name, tell_version(one)) for one in list_versions(folder)],
        checked=_tell_check(*check_states(folder)) if asked.query("check") == "yes" else (),
    )


def tell_change(change: Change | None) -> str:
    """How much came in and went out, in words.

    >>> tell_change(Change(34, 1, "word")), tell_change(Change(0, 2, "line")), tell_change(Change(0, 0, "word"))
    ('34 words in, 1 out', '2 lines out', 'no word changed')
    """
    if change is None:
        return "no text"
    if change.came:
        return count_of(change.came, change.unit) + " in" + (f", {change.went:,} out" if change.went else "")
    return f"{count_of(change.went, change.unit)} out" if change.went else f"no {change.unit} changed"


def _tell_check(number: int, faults: Sequence[Problem]) -> tuple[str, ...]:
    """One sentence where the record is whole, else one for each fault."""
    if faults:
        return tuple(f"{fault}." for fault in faults)
    if number == 1:
        return ("The one state is whole.",)
    return (f"All {number:,} states are whole, and each is chained to the one before it.",)


def look(asked: Asked, *, fault: str = "", status: int = 200) -> Response:
    """One state: its text, or where the present one, or a later state, differs from it."""
    held = asked.query("with")
    against = read_number(held, None)
    earlier = look_at(asked.paper.folder, _number(asked), against)
    state = earlier.state
    compared = held == "present" or against is not None
    done = {
        "beside": f"It stands beside the present file as {asked.query('name')}.",
        "place": "The file stands so again; what stood there before is kept among the states.",
    }.get(asked.query("done"), "")
    return asked.page(
        "state_page.html",
        status=status,
        title=f"{state.name} as it was",
        step=done or ("The file stands so now." if earlier.is_present else ""),
        earlier=earlier,
        to=asked.to,
        compared=compared,
        differs=[
            (
                "; ".join(filter(None, (FATES[one.fate], tell_revisions(one.revisions), tell_signs(one.revisions)))),
                _mark(one.then, one.then_differs),
                _mark(one.now, one.now_differs),
            )
            for one in (earlier.differs if compared else ())
        ],
        revised=tell_revisions(list_sentences(earlier.differs)) if compared else "",
        later=later_states(asked.paper.folder, state),
        fault=fault,
    )


def _mark(text: str, differs: tuple[Span, ...]) -> str:
    """A whole passage, what differs in half brackets."""
    return mark_differences(text, differs, around=len(text))


def bring(asked: Asked) -> Response:
    """The state brought back, beside the present file or in its place."""
    folder, seq = asked.paper.folder, _number(asked)
    try:
        if asked.form.text("do") == "place":
            bring_in_place(folder, seq, asked.form.text("seen") or None)
            return asked.go(asked.to("states", str(seq), done="place"))
        return asked.go(asked.to("states", str(seq), done="beside", name=bring_beside(folder, seq)))
    except DraftChangedOnDisk:
        fault = "The file was changed while you looked; nothing was written. Look at it as it now stands, and choose."
        return look(asked, fault=fault, status=409)
    except FairhandError as error:
        return look(asked, fault=f"{error}.", status=page_of(error)[0])


def _number(asked: Asked) -> int:
    number = read_number(asked.name("seq"), None)
    if number is None:
        raise HTTPException(404)
    return number


ROUTES = (
    get("/paper/{slug}/states", show),
    get("/paper/{slug}/states/{seq}", look),
    post("/paper/{slug}/states/{seq}", bring),
)
