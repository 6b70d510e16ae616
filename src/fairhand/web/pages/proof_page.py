"""The proof: the paper as it will be read, line by line as it is printed, to be marked and not changed."""

from __future__ import annotations

from typing import get_args

from starlette.responses import Response

from fairhand.desk.seen import hash_bytes
from fairhand.errors import DraftChangedOnDisk, FairhandError
from fairhand.language.counts import count_of
from fairhand.model.proof_mark import Fate, Medium, ProofMark, ProofSign
from fairhand.model.span import Span
from fairhand.proof.marked_lines import cut_lines
from fairhand.proof.placing import Proofed
from fairhand.proof.telling import MEDIA, tell_pass, tell_step
from fairhand.proof.written_marks import TAKES_MATTER, read_place, read_written
from fairhand.session.correction.estimating import estimate_unseen, pair_passes, tell_unseen
from fairhand.session.correction.lapses import most_frequent, survey_lapses
from fairhand.session.correction.marked_proof import show_marks
from fairhand.session.correction.passes import Marking, begin_pass, end_pass, medium_asked, paper_as_read, read_marking
from fairhand.session.correction.proof import (
    anchor_mark,
    keep_marks,
    name_marks,
    place_written,
    read_proof,
    settle_mark,
    take_mark_back,
)
from fairhand.session.editing import DRAFT, likest_passage, mend_passage
from fairhand.web.asked import Asked, get, post
from fairhand.web.both import Versions, show_both
from fairhand.web.error_pages import page_of
from fairhand.web.forms import read_number

HERE = "proof"


def show(asked: Asked, *, fault: FairhandError | None = None) -> Response:
    """The proof with the marks of the pass under way, or, where none is, with those still to be gone through.

    Args:
        asked: The request.
        fault: Why what was sent could not be done; what was typed is then still in the form.
    """
    form, marking = asked.form, read_marking(asked.paper.folder)
    paper = paper_as_read(asked.paper.opened, marking)
    proof = read_proof(paper)
    chosen = read_number(form.text("number") or asked.query("mark"), 0)
    marks = show_marks(paper.look().manuscript, marking, proof, chosen)
    placed = {one.number: (one.mark, one.place) for one in marks if one.place is not None}
    lapses, _ = survey_lapses(asked.paper.folder, paper.look(), paper.verdict().findings)
    left = len(paper.look().manuscript.left_matter)
    return asked.page(
        "proof_page.html",
        status=page_of(fault)[0] if fault else 200,
        title="The proof",
        step=tell_step(marking.passes, marking.marks) if proof.lines else "There is no draft yet: write it first.",
        marking=marking,
        passes=[(one, tell_pass(one, marking.of(one))) for one in marking.passes],
        changed=paper is not asked.paper.opened,
        left=count_of(left, "aside or TK", "asides and TKs") if left else "",
        lapses=most_frequent(lapses),
        died_out=[one for one in lapses if one.died_out],
        unseen=_tell_unseen(asked, marking),
        pages=cut_lines(proof, placed),
        marks={one.number: one for one in marks},
        unplaced=[one for one in marks if one.place is None],
        chosen=chosen,
        media=[(medium, MEDIA[medium]) for medium in get_args(Medium)],
        asked_medium=medium_asked(paper.look().paper.requirements),
        signs=get_args(ProofSign),
        takes=sorted(TAKES_MATTER),
        proof_state=_state(proof),
        fault=f"{fault}." if fault else "",
        typed={
            name: form.matter(name) for name in ("written", "text", "why", "words", "by", "lapse") if form.has(name)
        },
    )


def _tell_unseen(asked: Asked, marking: Marking) -> str:
    """What two passes may both have missed; nothing where none can be held against each other, or one is under way."""
    if marking.under_way or pair_passes(marking) is None:
        return ""
    try:
        return tell_unseen(estimate_unseen(asked.paper.folder, marking))
    except FairhandError as fault:
        return f"{fault}."


def begin(asked: Asked) -> Response:
    """A pass is begun."""
    form = asked.form
    medium = form.text("medium")
    try:
        known: Medium = next((one for one in get_args(Medium) if one == medium), "page")
        begin_pass(asked.paper.folder, known, asked.papers.now(), by=form.text("by"), lapse=form.text("lapse"))
    except FairhandError as fault:
        return show(asked, fault=fault)
    return asked.go(asked.to(HERE))


def end(asked: Asked) -> Response:
    """The pass has ended; what was not read is kept with it."""
    said = asked.form.text("read_to")
    try:
        place = read_place(said) if said else (0, 0)
        proof = read_proof(paper_as_read(asked.paper.opened, read_marking(asked.paper.folder))) if said else None
        end_pass(asked.paper.folder, asked.papers.now(), place, proof)
    except FairhandError as fault:
        return show(asked, fault=fault)
    return asked.go(asked.to(HERE))


def mark(asked: Asked) -> Response:
    """Marks set on words that were chosen, or written down by their lines; the draft is not touched."""
    form, folder = asked.form, asked.paper.folder
    try:
        if form.has("take_back"):
            marking = read_marking(folder)
            gone = name_marks(marking.shown, read_number(form.text("take_back"), 0))
            take_mark_back(folder, gone.id)
            return asked.go(asked.to(HERE, at=_line_id(gone)))
        paper = paper_as_read(asked.paper.opened, read_marking(folder))
        proof, draft = read_proof(paper), paper.look().paper.draft
        made = [_chosen(asked, proof, draft)] if form.text("start") else _written(form.matter("written"), proof, draft)
        keep_marks(folder, made, asked.papers.now())
    except FairhandError as fault:
        return show(asked, fault=fault)
    return asked.go(asked.to(HERE, at=_line_id(made[-1]) if made else "mark"))


def settle(asked: Asked) -> Response:
    """A mark mended, let stand, left as a query, or opened again; then the next one."""
    form, folder = asked.form, asked.paper.folder
    number = read_number(form.text("number"), 0)
    fate: Fate = next((one for one in get_args(Fate) if one == form.text("do")), "open")
    try:
        one = name_marks(read_marking(folder).shown, number)
        if form.has("was"):
            was, typed = form.matter("was"), form.matter("text").strip("\n")
            which, many = read_number(form.text("which"), 0), read_number(form.text("many"), 1) or 1
            try:
                if read_marking(folder).under_way is None:  # otherwise the settling below refuses it
                    mend_passage(folder, was, typed, (which, many))
            except DraftChangedOnDisk:
                present, (which, many) = likest_passage(folder, was, which)
                more: dict[str, str | int] = {"which": which, "many": many, "number": number, "do": fate}
                return show_both(asked, Versions(DRAFT, typed, present, present, seen_field="was", more=more))
        settle_mark(folder, one.id, fate, form.text("why"))
    except FairhandError as fault:
        return show(asked, fault=fault)
    following = next((n for n, _ in read_marking(folder).open if n > number), 0)
    following = following or next((n for n, _ in read_marking(folder).open), 0)
    return asked.go(asked.to(HERE, at=f"mark-{following}", mark=following) if following else asked.to(HERE))


def back(asked: Asked) -> Response:
    """The way to the page, for who asks a form's address."""
    return asked.go(asked.to(HERE))


def _chosen(asked: Asked, proof: Proofed, draft: str) -> ProofMark:
    """A mark on words that were chosen in the page."""
    form = asked.form
    start, stop = (read_number(form.text(name), 0) for name in ("start", "stop"))
    if form.text("state") != _state(proof) or not 0 <= start < stop <= len(proof.text):
        message = f"{DRAFT}: it was changed meanwhile, and the proof is set anew; choose the words again"
        raise DraftChangedOnDisk(message)
    span = Span(start, stop)
    words = span.of(proof.text)
    span = Span(start + len(words) - len(words.lstrip()), stop - len(words) + len(words.rstrip()))
    sign = next((one for one in get_args(ProofSign) if one == form.text("sign")), None)
    if sign is None or not len(span):
        message = "Choose words of the proof, and a sign."
        raise FairhandError(message)
    return anchor_mark(ProofMark("", "", sign, "", words=" ".join(form.text("words").split())), span, proof, draft)


def _written(said: str, proof: Proofed, draft: str) -> list[ProofMark]:
    """Marks written down by their lines: all of them or none, so that nothing is entered twice."""
    written, faults = read_written(said)
    if faults:
        raise FairhandError(str(faults[0]).rstrip("."))
    if not written:
        message = 'Write a mark as 3.12 "recieve" / receive: page, line, the words, and what is asked'
        raise FairhandError(message)
    return [place_written(one, proof, draft) for one in written]


def _line_id(one: ProofMark) -> str:
    return f"l-{one.page}-{one.line}"


def _state(proof: Proofed) -> str:
    """A hash of what the proof says, by which a form sent from an older one is told."""
    return hash_bytes(proof.text.encode("utf-8", "replace"))[:16]


ROUTES = (
    get("/paper/{slug}/proof", show),
    get("/paper/{slug}/proof/{act}", back),
    post("/paper/{slug}/proof/begin", begin),
    post("/paper/{slug}/proof/end", end),
    post("/paper/{slug}/proof/mark", mark),
    post("/paper/{slug}/proof/settle", settle),
)
