"""The jottings sorted, only when that is asked: by meaning in groups, or by their wording; each can be moved."""

from __future__ import annotations

from starlette.responses import Response

from fairhand.errors import FairhandError
from fairhand.jottings.arrangement import Arrangement, list_all
from fairhand.jottings.jotting import Jotting
from fairhand.jottings.wording import WORDINGS, tell_wording
from fairhand.model.focus import Question
from fairhand.session.research.focus import keep_question
from fairhand.session.research.jottings import keep_moved, look_at_groups, pick_jottings, sort_afresh
from fairhand.web.asked import Asked, get, post
from fairhand.web.error_pages import page_of
from fairhand.web.forms import read_number

APART = "Apart"
Numbered = tuple[int, Jotting]


def show(asked: Asked, *, fault: str = "", status: int = 200) -> Response:
    """Every jotting in its group, or by its wording where that is asked."""
    found = look_at_groups(asked.paper.folder)
    every = list_all(found.arrangement)
    by_wording = asked.query("by") == "wording"
    lists = _by_wording(every) if by_wording else _by_group(found.arrangement, every)
    step = "Tick what belongs elsewhere, and move it; the words stay as you wrote them."
    if by_wording:
        step = "See what you know, and what not; tick the questions that you mean to read for."
    if not every:
        step = "Nothing is jotted down yet: write first, and sort afterwards."
    return asked.page(
        "sorted_page.html",
        status=status,
        title="Jottings, sorted",
        step=step,
        lists=lists,
        groups=[group.phrase for group in found.arrangement.groups],
        by="wording" if by_wording else "",
        by_meaning=found.by_meaning,
        is_kept=found.is_kept,
        problems=found.problems,
        was=found.state,
        fault=fault,
    )


def _by_group(arrangement: Arrangement, every: tuple[Jotting, ...]) -> list[tuple[str, list[Numbered]]]:
    left = iter(enumerate(every))
    lists = [(group.phrase, [next(left) for _ in group.jottings]) for group in arrangement.groups]
    return [*lists, (APART, list(left))]


def _by_wording(every: tuple[Jotting, ...]) -> list[tuple[str, list[Numbered]]]:
    told = [(tell_wording(one.words), (number, one)) for number, one in enumerate(every)]
    return [(heading, [one for wording, one in told if wording == name]) for name, heading in WORDINGS.items()]


def send(asked: Asked) -> Response:
    """What was ticked moved or taken over as questions, or all of it sorted afresh."""
    form, folder = asked.form, asked.paper.folder
    numbers = {read_number(one, -1) for one in form.texts("jotting")} - {-1}
    was = form.text("was")
    try:
        if form.text("do") == "afresh":
            sort_afresh(folder, was)
        elif form.text("do") == "ask":
            return _ask(asked, pick_jottings(folder, numbers, was))
        else:
            keep_moved(folder, numbers, read_number(form.text("to"), None), was)
    except FairhandError as error:
        return show(asked, fault=str(error), status=page_of(error)[0])
    return asked.go(asked.to("jottings", "sorted"))


def _ask(asked: Asked, texts: tuple[str, ...]) -> Response:
    for text in texts:
        keep_question(asked.paper.folder, Question("", text))
    return (
        asked.go(asked.to("focus", at="questions"))
        if texts
        else show(asked, fault="No jotting was ticked.", status=422)
    )


ROUTES = (get("/paper/{slug}/jottings/sorted", show), post("/paper/{slug}/jottings/sorted", send))
