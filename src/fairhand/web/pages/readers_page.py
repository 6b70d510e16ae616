"""First readers: who is asked, the copies they get, and what they wrote, at its place in the draft."""

from __future__ import annotations

from dataclasses import replace

from starlette.exceptions import HTTPException
from starlette.responses import Response

from fairhand.desk.seen import see_file
from fairhand.errors import DraftChangedOnDisk, FairhandError
from fairhand.readers.asking import NOT_TO_MIND, offer_questions, say_policy
from fairhand.readers.gathering import RULINGS, Ruling
from fairhand.readers.register import STAGES, WHERE, Reader, read_register
from fairhand.readers.telling import tell_reader, tell_what, tell_who
from fairhand.reading.returned import RETURNED
from fairhand.session.correction.readers import ask_reader, forget_reader
from fairhand.session.correction.remarks import carry_out_remark, rule_on_remark, survey_readers, take_returned
from fairhand.session.editing import read_text
from fairhand.session.hand_in.printing import SetCopy
from fairhand.web.asked import Asked, get, post
from fairhand.web.error_pages import page_of
from fairhand.web.forms import read_day, read_number
from fairhand.web.pages.fair_copy_page import KINDS, send_copy

FOR = {"argument": "the argument", "language": "the language", "whole": "the whole"}
"""The stages, as the page names them."""


def show(
    asked: Asked, *, fault: str = "", status: int = 200, cautions: tuple[str, ...] = (), typed: Reader | None = None
) -> Response:
    """The register, what was written, and the forms to ask a reader and to bring a copy in.

    Args:
        asked: The request.
        fault: Why something that was sent was not done.
        status: The HTTP status.
        cautions: What speaks against asking the reader who was typed.
        typed: The reader who was typed and not asked.
    """
    survey = survey_readers(asked.paper.opened)
    stage = typed.stage if typed else asked.query("for", "argument")
    stage = stage if stage in STAGES else "argument"
    expert = typed.expert if typed else asked.query("expert") == "yes"
    return asked.page(
        "readers_page.html",
        status=status,
        title="First readers",
        step=survey.sentence,
        survey=survey,
        policy=say_policy(survey.policy),
        tell_reader=lambda reader: tell_reader(reader, survey.version),
        tell_what=tell_what,
        tell_who=tell_who,
        left=len(asked.paper.opened.look().manuscript.left_matter),
        everything=asked.query("all") == "yes",
        ruled=len(survey.remarks) - survey.unruled,
        reader=typed or Reader("", expert, stage),
        stages=FOR,
        questions="\n".join(typed.asked if typed else offer_questions(stage, expert=expert)),
        not_to_mind="\n".join(typed.not_to_mind if typed else NOT_TO_MIND[stage]),
        endings=",".join(RETURNED),
        cautions=cautions,
        fault=fault,
        to=asked.to,
    )


def send(asked: Asked) -> Response:
    """What was sent is done: a reader asked or forgotten, a copy brought in, a remark ruled on."""
    form, folder = asked.form, asked.paper.folder
    typed: Reader | None = None
    try:
        if form.has("remark"):
            word = form.text("do")
            if word == "carry-out":
                carry_out_remark(asked.paper.opened, form.text("remark"))
                return asked.go(asked.to("readers", at="written"))
            ruling: Ruling = next((one for one in RULINGS if one == word), "")
            rule_on_remark(folder, form.text("remark"), ruling, form.text("why"))
            return asked.go(asked.to("readers", at="written"))
        if form.has("forget"):
            forget_reader(folder, form.text("forget"))
            return asked.go(asked.to("readers"))
        if form.has("whose"):
            return _take(asked)
        typed = Reader(
            name=form.text("name"),
            expert=form.has("expert"),
            stage=form.text("stage") if form.text("stage") in STAGES else "argument",
            asked=_lines(form.text("questions")),
            not_to_mind=_lines(form.text("not-mind")),
        )
        typed = replace(typed, due=read_day(form.text("due")))
        kind = "pdf" if form.text("kind") == "pdf" else "docx"
        done = ask_reader(asked.paper.opened, typed, kind, anyway=form.text("do") == "anyway")
        if done.path is None:
            return show(asked, status=409, cautions=done.cautions, typed=typed)
        return asked.go(asked.to("readers", at="who"))
    except DraftChangedOnDisk:
        fault = "Another program wrote to the file at the same moment; nothing was overwritten. Send it again."
        return show(asked, fault=fault, status=409, typed=typed)
    except FairhandError as error:
        return show(asked, fault=str(error), status=page_of(error)[0], typed=typed)


def _take(asked: Asked) -> Response:
    """A copy that came back."""
    form = asked.form
    file = next(iter(form.uploads("file")), None)
    if file is None:
        message = "Choose the file that came back."
        raise FairhandError(message)
    name = form.text("name") or form.text("whose")
    take_returned(asked.paper.folder, file.data, file.name, name, today=asked.papers.now().date())
    return asked.go(asked.to("readers", at="written"))


def _lines(text: str) -> tuple[str, ...]:
    return tuple(line.strip() for line in text.split("\n") if line.strip())


def copy(asked: Asked) -> Response:
    """The copy that was made for a reader, to be sent by the writer."""
    readers = read_register(read_text(asked.paper.folder, WHERE).text)[0]
    number = read_number(asked.name("number"), 0)
    if not 1 <= number <= len(readers):
        raise HTTPException(404)
    name = readers[number - 1].file
    place = asked.paper.folder / name
    ending = place.suffix.lstrip(".").lower()
    inside = place.resolve().is_relative_to(asked.paper.folder.resolve())
    if ending not in KINDS or not inside or not place.is_file():
        raise HTTPException(404)
    return send_copy(SetCopy(place.name, see_file(place, place.name).data, None, ()), ending)


ROUTES = (
    get("/paper/{slug}/readers", show),
    post("/paper/{slug}/readers", send),
    get("/paper/{slug}/readers/copy/{number}", copy),
)
