"""The writer's lapses and words: all that are kept on the desk, written down, learnt, and looked for no more."""

from __future__ import annotations

from starlette.responses import Response

from fairhand.copyedit.in_place import quote_span
from fairhand.errors import FairhandError
from fairhand.language.counts import count_of, open_with
from fairhand.model.lapse import Lapse
from fairhand.readiness.table import CHECKS
from fairhand.session.correction.lapses import forget_lapse, keep_lapse, survey_lapses
from fairhand.session.correction.learning import learn_from_comments
from fairhand.session.correction.words import learn_word, list_words, unlearn_word
from fairhand.session.hand_in.handing_in import read_hand_in
from fairhand.web.asked import Asked, get, post
from fairhand.web.error_pages import page_of

HERE = "lapses"
OF_LANGUAGE = tuple(check for check in CHECKS if check.of_language)


def show(asked: Asked, *, fault: FairhandError | None = None) -> Response:
    """Every lapse with its count, last day, example, test and places in the draft; the words that are known.

    Args:
        asked: The request.
        fault: Why what was sent could not be done; what was typed is then still in the form.
    """
    opened, folder = asked.paper.opened, asked.paper.folder
    known, form = opened.look(), asked.form
    lapses, problems = survey_lapses(folder, known, opened.verdict().findings)
    came_back = read_hand_in(folder).returned
    draft = known.manuscript.text
    return asked.page(
        "lapses_page.html",
        status=page_of(fault)[0] if fault else 200,
        title="Your lapses",
        step=_step(len(lapses)),
        lapses=lapses,
        problems=problems,
        comments=len(came_back.comments) if came_back else 0,
        learnt=asked.query("learnt"),
        words=list_words(folder),
        checks=OF_LANGUAGE,
        times=lambda lapse: count_of(lapse.count, "time"),
        quote=lambda span: quote_span(draft, span),
        typed={name: form.text(name) if fault else "" for name in ("wrong", "right", "name", "check", "word")},
        fault=f"{str(fault).rstrip('.')}." if fault else "",
    )


def _step(many: int) -> str:
    if not many:
        return "Nothing is kept yet: write down what you often get wrong, and it is looked for in every paper."
    return f"{open_with(many, 'error that you tend to make is', 'errors that you tend to make are')} looked for here."


def change(asked: Asked) -> Response:
    """A lapse or a word written down or looked for no more, or the comments learnt from; then the page again."""
    form, folder = asked.form, asked.paper.folder
    do, learnt = form.text("do"), ""
    try:
        if do == "keep":
            wrong, right, check = form.text("wrong"), form.text("right"), form.text("check")
            called = form.text("name") or (f"“{wrong}” for “{right}”" if right else wrong or check.replace("-", " "))
            keep_lapse(folder, Lapse(called, wrong=wrong, right=right, check="" if wrong else check))
        elif do == "forget":
            forget_lapse(folder, form.text("name"))
        elif do == "returned":
            came_back = read_hand_in(folder).returned
            learnt = str(len(learn_from_comments(folder, came_back.comments if came_back else ())))
        elif do == "word":
            learn_word(folder, form.text("word"))
        elif do == "unword":
            unlearn_word(folder, form.text("word"))
    except FairhandError as fault:
        return show(asked, fault=fault)
    return asked.go(asked.to(HERE, **({"learnt": learnt} if learnt else {})))


ROUTES = (get("/paper/{slug}/lapses", show), post("/paper/{slug}/lapses", change))
