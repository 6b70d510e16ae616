"""``fairhand readers``: first readers, the copies they get, and what they wrote."""

from __future__ import annotations

import datetime as dt
from pathlib import Path
from typing import TYPE_CHECKING, cast

import click

from fairhand.cli.exit_codes import NOT_READY
from fairhand.cli.places import DAY, paper_argument
from fairhand.cli.screen import say

if TYPE_CHECKING:
    from fairhand.readers.gathering import ReaderRemark, Ruling
    from fairhand.session.correction.remarks import Survey

FILE = click.Path(path_type=Path, exists=True, dir_okay=False)


@click.command("readers")
@paper_argument
@click.option("--ask", metavar="NAME", help="Make the copy for this reader, and write the reader down.")
@click.option("--due", type=DAY, metavar="DAY", help="With --ask: the day by which it is wanted back.")
@click.option("--expert", is_flag=True, help="With --ask: the reader knows the matter.")
@click.option(
    "--for",
    "stage",
    type=click.Choice(("argument", "language", "whole")),
    default="argument",
    show_default=True,
    help="With --ask: what the reader is to look at.",
)
@click.option("--question", "questions", multiple=True, help="With --ask: a question, in place of those offered.")
@click.option("--not-mind", multiple=True, help="With --ask: what need not be looked at.")
@click.option("--as", "kind", type=click.Choice(("docx", "pdf")), default="docx", show_default=True, help="The copy.")
@click.option("--anyway", is_flag=True, help="With --ask: although something speaks against it.")
@click.option("--back", type=FILE, metavar="FILE", help="Bring in what a reader wrote into FILE.")
@click.option("--from", "whose", default="", metavar="NAME", help="With --back: whose it is.")
@click.option("--take", metavar="REMARK", help="You followed this remark.")
@click.option("--carry-out", metavar="REMARK", help="Carry this change out in the draft, and take it so.")
@click.option("--leave", metavar="REMARK", help="You do not follow it; say --why.")
@click.option("--keep", metavar="REMARK", help="You keep it for later.")
@click.option("--open", "reopen", metavar="REMARK", help="You take your word on it back.")
@click.option("--why", default="", help="Your reason.")
@click.option("--forget", metavar="NAME", help="Take a reader out of the register again.")
@click.option("--all", "everything", is_flag=True, help="Show the remarks that you have ruled on too.")
def command(
    paper: Path,
    ask: str | None,
    due: dt.date | None,
    expert: bool,
    stage: str,
    questions: tuple[str, ...],
    not_mind: tuple[str, ...],
    kind: str,
    anyway: bool,
    back: Path | None,
    whose: str,
    take: str | None,
    carry_out: str | None,
    leave: str | None,
    keep: str | None,
    reopen: str | None,
    why: str,
    forget: str | None,
    everything: bool,
) -> int:
    """Show who reads PAPER and what they wrote, at its place in the draft; ask a reader; bring a copy back.

    A fresh eye is fresh once: one reader after another, each once for a version. Read the course's policy on help
    from readers first.
    """
    from fairhand.language.counts import open_with
    from fairhand.readers.asking import NOT_TO_MIND, offer_questions
    from fairhand.readers.register import Reader
    from fairhand.session.correction.readers import ask_reader, forget_reader
    from fairhand.session.correction.remarks import survey_readers
    from fairhand.session.opened import OpenPaper

    if forget:
        say(f"{forget_reader(paper, forget).name} is taken out; the register’s earlier states have it still.")
        return 0
    if ask is not None:
        asked = questions or offer_questions(stage, expert=expert)
        wanted = Reader(ask, expert, stage, due=due, asked=asked, not_to_mind=not_mind or NOT_TO_MIND[stage])
        opened = OpenPaper(paper)
        show_policy(survey_readers(opened))
        done = ask_reader(opened, wanted, kind, anyway=anyway)
        for caution in done.cautions:
            say(caution)
        if done.path is None:
            say("Nothing was made. If it shall be all the same: --anyway.")
            return NOT_READY
        if done.left:
            left = open_with(done.left, "aside or TK is", "asides or TKs are")
            say(f"{left} left out of it: tell the reader what is missing.")
        say(f"The copy for {done.reader.name} is {done.path}: send it yourself; nothing leaves this machine by itself.")
        return 0
    if back is not None:
        take_back(paper, back, whose)
    if carry_out:
        from fairhand.session.correction.remarks import carry_out_remark

        say(f"{carry_out_remark(OpenPaper(paper), carry_out).id[:6]}: carried out in draft.md, and taken.")
        return 0
    rulings = {"taken": take, "left": leave, "kept": keep, "": reopen}
    for ruling, named in rulings.items():
        if named:
            from fairhand.session.correction.remarks import rule_on_remark

            ruled = rule_on_remark(paper, named, cast("Ruling", ruling), why)
            say(f"{ruled.id[:6]}: {ruling or 'open'}{f', {ruled.why}' if ruled.why else ''}.")
    if not any(rulings.values()):
        show_survey(survey_readers(OpenPaper(paper)), everything=everything)
    return 0


def take_back(paper: Path, file: Path, whose: str) -> None:
    """A copy comes back, and what came with it is counted."""
    from fairhand.desk.clock import now
    from fairhand.language.counts import count_of
    from fairhand.session.correction.remarks import take_returned

    came = take_returned(paper, file.read_bytes(), file.name, whose, today=now().date())
    there = f", {came.there} that had come before" if came.there else ""
    say(f"{count_of(came.new, 'remark')} of {came.reader.name}{there}. The file is kept: {came.path.name}.")
    if came.forms:
        say(f"{count_of(came.forms, 'change')} of type and layout alone left out: the sheet sets those.")
    say()


def show_policy(survey: Survey) -> None:
    """What the sheet says of help from others."""
    from fairhand.readers.asking import say_policy

    for line in say_policy(survey.policy):
        say(line)


def show_survey(survey: Survey, *, everything: bool) -> None:
    """The register, then what was written, in the order of the draft."""
    from fairhand.readers.telling import tell_reader

    say(survey.sentence)
    if not survey.readers:
        show_policy(survey)
    for reader in survey.readers:
        say(tell_reader(reader, survey.version), 2, 4)
    for passage in survey.passages:
        these = [one for one in passage.placed if everything or not one.remark.ruling]
        if not these:
            continue
        say()
        say(" ".join(passage.span.of(survey.draft).split()))
        if passage.stumbled:
            say(f"{' and '.join(passage.readers)} both wrote here.", 2)
        for one in these:
            say(
                tell_remark(one.remark, passage.span.of(survey.draft))
                + ("" if one.sure else " (the place is uncertain)"),
                2,
                4,
            )
    lost = [one for one in survey.unplaced if everything or not one.ruling]
    if lost:
        say()
        say("Without a place in the draft as it now is")
    for remark in lost:
        say(tell_remark(remark), 2, 4)
    for problem in survey.problems:
        click.echo(f"Note. {problem}", err=True)


def tell_remark(remark: ReaderRemark, above: str = "") -> str:
    """A remark in one line, with the number by which it is ruled on."""
    from fairhand.readers.telling import tell_what, tell_who

    word = f" [{remark.ruling}{f': {remark.why}' if remark.why else ''}]" if remark.ruling else ""
    return f"{remark.id[:6]}  {tell_who(remark)}: {tell_what(remark, above)}{word}"
