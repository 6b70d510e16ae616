"""Hand-in: what the sheet asks of it, the writer's statements, what is handed in with its hashes, what came back."""

from __future__ import annotations

from pathlib import Path

from starlette.exceptions import HTTPException
from starlette.responses import Response

from fairhand.brief.telling import WAYS
from fairhand.errors import DraftChangedOnDisk, FairhandError
from fairhand.hand_in.account import Mark, Returned
from fairhand.hand_in.asked import FORMS, KINDS
from fairhand.readiness.told import tell
from fairhand.session.correction.final import tell_final
from fairhand.session.correction.learning import learn_from_comments
from fairhand.session.hand_in.handing_in import (
    TO_HAND_IN,
    HandIn,
    keep_receipt,
    look_at_hand_in,
    make_hand_in,
    read_hand_in,
    set_name,
    state,
)
from fairhand.session.hand_in.returned import (
    compare_estimates,
    keep_marked_copy,
    keep_returned,
    put_away,
    read_comments,
    tell_returned,
)
from fairhand.session.schedule.left_to_do import read_left
from fairhand.web.asked import Asked, get, post
from fairhand.web.error_pages import page_of
from fairhand.web.safety import POLICY_OF_FILE, write_policy

NAMED = {"": None, "without": True, "with": False}
"""What the form says of the name, and what is kept of it."""


def show(asked: Asked, *, fault: str = "", status: int = 200) -> Response:
    """All of the hand-in on one page, in the order in which it is done."""
    opened, folder = asked.paper.opened, asked.paper.folder
    stands = look_at_hand_in(opened)
    left = read_left(folder, tell(opened.verdict()), asked.papers.at)
    estimates, pace = compare_estimates(folder)
    came = stands.account.returned
    typed = asked.form
    return asked.page(
        "hand_in_page.html",
        status=status,
        title="Hand-in",
        step=_step(stands, str(left)),
        fault=fault,
        here=asked.to("hand-in"),
        stands=stands,
        ways=[f"{WAYS.get(way.by, way.by)}{f': {way.where}' if way.where else ''}" for way in stands.asked.ways],
        statements=_list_statements(stands),
        kinds=KINDS,
        typed=typed,
        forms=[*dict.fromkeys((stands.asked.form, *FORMS))],
        left=left,
        leaves=asked.request.app.state.working,
        handed=[
            (number, one, [name for name, _ in one.files if (folder / one.folder / TO_HAND_IN / name).is_file()])
            for number, one in reversed(list(enumerate(stands.account.handed)))
        ],
        came=came,
        told=tell_returned(came) if came else "",
        final=tell_final(folder),
        learnt=asked.query("learnt") if "learnt" in asked.request.query_params else None,
        criteria=_list_criteria(asked, came),
        estimates=estimates,
        pace=str(pace),
    )


def _step(stands: HandIn, left: str) -> str:
    handed = stands.account.handed
    if stands.account.returned is not None:
        return "It has come back: keep what was said of it, and put it away when you are done with it."
    if handed:
        if handed[-1].receipt:
            return "It is handed in, and its receipt is kept; when it comes back, keep what was said of it."
        return "It is made: hand it in, and keep what shows that it arrived."
    return left


def _list_statements(stands: HandIn) -> list[tuple[str, str, str]]:
    """Each kind of statement with the words of the sheet that ask for it, those that are asked for first."""
    asked = {one.kind: one.asks for one in stands.asked.statements}
    kinds = sorted(KINDS, key=lambda kind: kind not in asked)
    return [(kind, asked.get(kind, ""), stands.account.statements.get(kind, "")) for kind in kinds]


def _list_criteria(asked: Asked, came: Returned | None) -> list[tuple[str, str, str]]:
    """The criteria of the sheet, and those that were marked, each with what it weighs and its mark."""
    weights = {
        str(one.values.get("criterion")): f"{one.values.get('weight')} {one.values.get('unit') or ''}".strip()
        for one in asked.paper.opened.look().paper.requirements
        if one.kind == "rubric"
    }
    marks = {one.criterion: one.mark for one in came.marks} if came else {}
    return [(one, weights.get(one, ""), marks.get(one, "")) for one in dict.fromkeys((*weights, *marks))]


def send(asked: Asked) -> Response:
    """A statement, the name, what is to be made, a receipt, or what came back; the page again where it cannot be."""
    try:
        return asked.go(_do(asked))
    except DraftChangedOnDisk:
        fault = "Another program wrote to the file at the same moment; nothing was overwritten. Send it again."
        return show(asked, fault=fault, status=409)
    except FairhandError as error:
        return show(asked, fault=f"{error}.", status=page_of(error)[0])


def _do(asked: Asked) -> str:
    """Does what was sent, and gives the address to go on to."""
    form, folder = asked.form, asked.paper.folder
    match form.text("do"):
        case "state":
            state(folder, form.text("kind"), form.text("words"))
            return asked.to("hand-in", at="statements")
        case "name":
            set_name(folder, anonymous=NAMED.get(form.text("named")), called=form.text("called"))
            return asked.to("hand-in", at="name")
        case "make":
            told = tell(asked.paper.opened.verdict())
            make_hand_in(
                asked.paper.opened,
                told,
                form=form.text("form"),
                as_zip=form.has("zip"),
                anyway=form.has("anyway"),
                at=asked.papers.at,
            )
            return asked.to("hand-in", at="handed")
        case "receipt":
            file = next(iter(form.uploads("file")), None)
            if file is None and not form.text("words"):
                message = "A receipt needs words, or a file: what shows that it arrived"
                raise FairhandError(message)
            keep_receipt(folder, form.text("words"), (file.name, file.data) if file else None, asked.papers.at)
            return asked.to("hand-in", at="handed")
        case "returned":
            _keep_returned(asked)
            return asked.to("hand-in", at="returned")
        case "lapses":
            came = read_hand_in(folder).returned
            learnt = learn_from_comments(folder, came.comments if came else ())
            return asked.to("hand-in", at="returned", learnt=", ".join(one.name for one in learnt))
        case "put-away":
            put_away(folder)
            return "/"
    message = "This form says nothing that can be done; go back, and send it again"
    raise FairhandError(message)


def _keep_returned(asked: Asked) -> None:
    form, folder = asked.form, asked.paper.folder
    named = zip(
        (*form.texts("criterion"), form.text("other")), (*form.texts("got"), form.text("other-got")), strict=False
    )
    read: list[str] = []
    for file in form.uploads("file"):
        keep_marked_copy(folder, file.name, file.data)
        read += read_comments(file.name, file.data)
    keep_returned(
        folder,
        mark=form.text("mark"),
        marks=[Mark(criterion, got) for criterion, got in named if criterion and got],
        comments=[*form.text("comments").split("\n"), *read],
        at=asked.papers.at,
    )


def hand_out(asked: Asked) -> Response:
    """One file of what was handed in, as it was."""
    number, name = asked.name("number"), asked.name("name")
    handed = read_hand_in(asked.paper.folder).handed
    if not (number.isascii() and number.isdigit() and len(number) < 6 and int(number) < len(handed)):
        raise HTTPException(404)
    one = handed[int(number)]
    path: Path = asked.paper.folder / one.folder / TO_HAND_IN / name
    within = path.resolve().is_relative_to(asked.paper.folder.resolve())
    if name not in {known for known, _ in one.files} or not within or not path.is_file():
        raise HTTPException(404)
    from urllib.parse import quote

    headers = {
        "content-disposition": f"attachment; filename*=UTF-8''{quote(name, safe='')}",
        "content-security-policy": write_policy(POLICY_OF_FILE),
    }
    return Response(path.read_bytes(), media_type="application/octet-stream", headers=headers)


ROUTES = (
    get("/paper/{slug}/hand-in", show),
    post("/paper/{slug}/hand-in", send),
    get("/paper/{slug}/hand-in/{number}/{name}", hand_out),
)
