"""``fairhand proof``: the proof marked in passes, and the marks gone through one after another."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import TYPE_CHECKING, TextIO, cast, get_args

import click

from fairhand.cli.places import paper_argument, typed
from fairhand.cli.screen import say
from fairhand.model.proof_mark import Medium

if TYPE_CHECKING:
    from fairhand.session.correction.passes import Marking

NUMBER = click.IntRange(1)


@click.command("proof")
@paper_argument
@click.option("--begin", type=click.Choice(get_args(Medium)), help="Begin a pass, and say in what form it is read.")
@click.option("--by", default="", help="With --begin: who reads; you, where it is left out.")
@click.option("--for", "lapse", default="", help="With --begin: the one thing that is looked for.")
@click.option("--mark", "marks", multiple=True, metavar="MARK", help='A mark, as 3.12 "recieve" / receive.')
@click.option(
    "--marks", "listed", type=click.File(encoding="utf-8"), help="A file of marks, one a line; - to type them."
)
@click.option("--take-back", type=NUMBER, metavar="N", help="Take a mark of the pass under way back.")
@click.option("--end", is_flag=True, help="End the pass.")
@click.option("--read-to", metavar="PAGE.LINE", help="With --end: the last line that was read; all, if left out.")
@click.option("--mend", type=NUMBER, metavar="N", help="Carry a mark out in the draft.")
@click.option("--mended", type=NUMBER, metavar="N", help="Say that you mended a mark by hand.")
@click.option("--stet", type=NUMBER, metavar="N", help="Let the words stand as they were.")
@click.option("--query", type=NUMBER, metavar="N", help="Leave a mark to be asked about.")
@click.option("--estimate", is_flag=True, help="Tell what the last two passes may both have missed.")
@click.option("--why", default="", help="Your reason, kept with your word.")
def command(
    paper: Path,
    begin: str | None,
    by: str,
    lapse: str,
    marks: tuple[str, ...],
    listed: TextIO | None,
    take_back: int | None,
    end: bool,
    read_to: str | None,
    mend: int | None,
    mended: int | None,
    stet: int | None,
    query: int | None,
    estimate: bool,
    why: str,
) -> None:
    """Mark the proof of PAPER in a pass, and go through the marks when the pass has ended.

    Print it first: fairhand print --proof. Marking changes nothing in the text. A mark gives page and line, the words,
    and what is asked: 3.12 "recieve" / receive; 3.14 "very" delete; 3.15 "note" insert of it.
    """
    from fairhand.desk.clock import now
    from fairhand.session.correction import passes
    from fairhand.session.correction import proof as work

    if begin:
        passes.begin_pass(paper, cast("Medium", begin), now(), by=by, lapse=lapse)
        say("A pass is begun. Marks change nothing in the text; end it when you have read.")
    said = "\n".join(marks) + ("\n" + "".join(listed) if listed else "")
    if said.strip():
        write_marks(paper, said)
    marking = passes.read_marking(paper)
    if take_back:
        work.take_mark_back(paper, work.name_marks(marking.shown, take_back).id)
    if end:
        end_pass(paper, read_to)
    for number, fate in ((mended, "mended"), (stet, "stet"), (query, "query")):
        if number:
            work.settle_mark(paper, work.name_marks(marking.shown, number).id, fate, why)  # type: ignore[arg-type]
    if mend:
        work.mend_mark(paper, work.name_marks(marking.shown, mend).id)
    if estimate:
        from fairhand.session.correction.estimating import estimate_unseen, tell_unseen

        say(tell_unseen(estimate_unseen(paper, passes.read_marking(paper))))
        return
    show_marking(paper, passes.read_marking(paper))


def write_marks(paper: Path, said: str) -> None:
    """The marks of a list stand in the pass under way; of those that cannot be placed it is said why."""
    from fairhand.desk.clock import now
    from fairhand.errors import FairhandError
    from fairhand.language.counts import count_of
    from fairhand.proof.written_marks import read_written
    from fairhand.session.correction import proof as work
    from fairhand.session.correction.passes import paper_as_read, read_marking
    from fairhand.session.opened import OpenPaper

    written, faults = read_written(said)
    told = [str(fault) for fault in faults]
    read = paper_as_read(OpenPaper(paper), read_marking(paper))
    proof, draft = work.read_proof(read), read.look().paper.draft
    placed = []
    for one in written:
        try:
            placed.append(work.place_written(one, proof, draft))
        except FairhandError as fault:
            told.append(str(fault))
    work.keep_marks(paper, placed, now())
    if told:
        lost = "; ".join(told)
        raise FairhandError(f"{count_of(len(placed), 'mark')} kept, {len(told)} not: {lost}")


def end_pass(paper: Path, read_to: str | None) -> None:
    """The pass has ended, and what was not read is said."""
    from fairhand.desk.clock import now
    from fairhand.proof.written_marks import read_place
    from fairhand.session.correction import passes
    from fairhand.session.correction import proof as work
    from fairhand.session.opened import OpenPaper

    place, proof = (0, 0), None
    if read_to:
        place = read_place(read_to)
        proof = work.read_proof(passes.paper_as_read(OpenPaper(paper), passes.read_marking(paper)))
    passes.end_pass(paper, now(), place, proof)


def show_marking(paper: Path, marking: Marking) -> None:
    """The passes, and the marks that are still to be gone through."""
    from fairhand.proof.telling import tell_mark, tell_pass, tell_step
    from fairhand.session.correction.proof import place_marks
    from fairhand.session.editing import DRAFT, read_text

    draft = read_text(paper, DRAFT).text
    if not draft.strip() and not marking.passes:
        say("There is no draft yet.")
        return
    say(tell_step(marking.passes, marking.marks))
    for one in marking.passes:
        say(tell_pass(one, marking.of(one)), 2, 4)
    places = place_marks([mark for _, mark in marking.open], draft)
    if marking.open:
        say()
    for number, mark in marking.open:
        found = places[mark.id]
        say(f"{number}. {tell_mark(mark, sure=found.sure if found else None)}", 2, 5)
    if marking.under_way:
        say(f"A mark: fairhand proof{typed(paper)} --mark '3.12 \"recieve\" / receive'; at the end of the pass: --end")
    elif marking.open:
        say(
            f"To go through them: fairhand proof{typed(paper)} --mend 1, or --mended, --stet or --query with its number"
        )
    sys.stdout.flush()
