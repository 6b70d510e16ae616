"""``fairhand hand-in``: what the sheet asks of the hand-in, and what is handed in with its hashes."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from fairhand.cli.exit_codes import NOT_READY, READY
from fairhand.cli.places import paper_argument, typed
from fairhand.cli.screen import say, say_rows, title
from fairhand.errors import MatterLeft

if TYPE_CHECKING:
    from collections.abc import Mapping

    from fairhand.session.hand_in.handing_in import HandIn

FORMS = ("pdf", "docx", "odt", "html", "md")
KINDS = ("tools", "help", "originality")


@click.command("hand-in")
@paper_argument
@click.option(
    "--state",
    "stated",
    type=(click.Choice(KINDS), str),
    multiple=True,
    metavar="KIND WORDS",
    help="Your own words for a statement: tools, help or originality; empty words take it back.",
)
@click.option(
    "--anonymous/--named", default=None, help="Leave your name out, or let it stand, whatever the sheet says."
)
@click.option("--called", metavar="WORDS", help="What stands in place of your name, as a candidate number.")
@click.option("--make", is_flag=True, help="Make what is handed in, with its hashes, in a folder of its own in fair/.")
@click.option("--as", "form", type=click.Choice(FORMS), help="The kind of file (default: what the sheet asks for).")
@click.option("--zip", "as_zip", is_flag=True, help="Everything as one archive.")
@click.option(
    "--anyway", is_flag=True, help="Make it although asides or TKs are left, or your name stands in the text."
)
@click.option("--receipt", metavar="WORDS|FILE", help="Keep what shows that it arrived.")
@click.option("--check", type=click.Path(path_type=Path, exists=True, dir_okay=False), help="Was this file handed in?")
def command(
    paper: Path,
    stated: tuple[tuple[str, str], ...],
    *,
    anonymous: bool | None,
    called: str | None,
    make: bool,
    form: str | None,
    as_zip: bool,
    anyway: bool,
    receipt: str | None,
    check: Path | None,
) -> int:
    """Show what the sheet asks of the hand-in of PAPER and what is still to be done; with --make, make it.

    Statements are yours to write: nothing is filled in for you. They are kept in hand-in.toml, as is each hand-in.
    """
    from fairhand.session.hand_in.handing_in import look_at_hand_in, make_hand_in, read_hand_in, set_name, state
    from fairhand.session.kept import told_verdict
    from fairhand.session.opened import OpenPaper

    if check is not None:
        return _check(paper, check)
    for kind, words in stated:
        state(paper, kind, words)
    if anonymous is not None or called is not None:
        before = read_hand_in(paper)
        set_name(
            paper,
            anonymous=before.anonymous if anonymous is None else anonymous,
            called=before.called if called is None else called,
        )
    if receipt is not None:
        _keep(paper, receipt)
        return READY
    told = told_verdict(paper)
    opened = OpenPaper(paper)
    stands = look_at_hand_in(opened)
    if not make:
        _show(paper, stands, told)
        return READY if told["verdict"] == "ready" and not stands.missing and not stands.named_at else NOT_READY
    try:
        made = make_hand_in(opened, told, form=form or "", as_zip=as_zip, anyway=anyway)
    except MatterLeft as left:
        message = f"{left}, or make it without them (--anyway)"
        raise MatterLeft(message) from left
    say(f"Made in {made.folder}:")
    for file in made.files:
        say(file.name, 2)
    say(f"hashes.txt beside them says what they are, byte for byte. {made.words:,} words, by {stands.words_by}.")
    for note in (*made.notes, *_tell_missing(stands)):
        say(f"Note. {note}", 2)
    _tell_ways(stands)
    say(f"When it has arrived: fairhand hand-in{typed(paper)} --receipt WORDS (or a file)")
    return READY


def _check(paper: Path, file: Path) -> int:
    from fairhand.session.hand_in.handing_in import read_upload, was_handed_in

    when = was_handed_in(paper, read_upload(file)[1])
    say(
        f"{file.name} is, byte for byte, what was handed in on {when}."
        if when
        else f"{file.name} was not handed in so."
    )
    return READY if when else NOT_READY


def _keep(paper: Path, receipt: str) -> None:
    from fairhand.session.hand_in.handing_in import keep_receipt, read_upload

    path = Path(receipt)
    try:
        is_file = path.is_file()
    except OSError:  # words longer than a file's name
        is_file = False
    kept = keep_receipt(paper, file=read_upload(path)) if is_file else keep_receipt(paper, receipt)
    say(f"Kept: {kept}")
    say(f"The plan has the paper as handed in (fairhand done{typed(paper)} hand-in --undo takes that back).")


def _show(paper: Path, stands: HandIn, told: Mapping[str, Any]) -> None:
    from fairhand.cli.ready import say_todos
    from fairhand.hand_in.asked import KINDS as ABOUT
    from fairhand.session.correction.final import tell_final
    from fairhand.session.schedule.left_to_do import read_left

    asked = stands.asked
    title(told["title"], "Hand-in")
    say()
    forms = ", or ".join(asked.forms) or f"{asked.form} (the sheet names no kind of file)"
    say(f"As {forms}, named {stands.file_name}.", 2, 4)
    _tell_ways(stands)
    if told["has_draft"]:
        say(f"{stands.words:,} words to declare, counted by {stands.words_by}.", 2, 4)
    if asked.wants_count:
        say("The sheet wants the number stated in the paper.", 2, 4)
    if stands.anonymous:
        why = f"the sheet: “{asked.anonymous}”" if asked.anonymous else "you said so"
        called = f"; “{stands.account.called}” stands in its place" if stands.account.called else ""
        say(f"Without your name ({why}){called}.", 2, 4)
    for line in stands.named_at:
        say(f"Your name stands in draft.md, line {line}.", 4, 6)
    if asked.statements or stands.account.statements:
        say()
        say(f"Statements, in your own words (fairhand hand-in{typed(paper)} --state KIND WORDS)")
        words = {one.kind: one.asks for one in asked.statements}
        for kind in (*words, *(one for one in stands.account.statements if one not in words)):
            say_rows([(kind, f"{ABOUT[kind]}.{f' The sheet: “{words[kind]}”' if kind in words else ''}")])
            say(stands.account.statements.get(kind) or "Not written yet.", 6)
            if kind == "tools":
                say(f"What looked through this paper here: fairhand copy-edit{typed(paper)} --used", 6)
    for one in stands.account.handed:
        say()
        say(
            f"Handed in {one.when}: {one.folder}. {f'Receipt: {one.receipt}' if one.receipt else 'No receipt yet.'}",
            2,
            4,
        )
    say()
    say(tell_final(paper))
    left = read_left(paper, told)
    say(str(left))
    say_todos(left)
    for problem in stands.problems:
        say(f"Note. {problem}", 2, 4)


def _tell_ways(stands: HandIn) -> None:
    from fairhand.brief.telling import WAYS

    for way in stands.asked.ways:
        say(f"To be handed in {WAYS.get(way.by, way.by)}{f': {way.where}' if way.where else ''}.", 2, 4)


def _tell_missing(stands: HandIn) -> list[str]:
    return [f"The sheet asks for a statement ({kind}), and it is not written yet." for kind in stands.missing]
