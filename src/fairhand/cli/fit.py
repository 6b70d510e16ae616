"""``fairhand fit``: the draft cast off, and brought to its length by whole passages."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from fairhand.cli.places import paper_argument, typed
from fairhand.cli.screen import say, say_rows

if TYPE_CHECKING:
    from fairhand.session.opened import OpenPaper


@click.command("fit")
@paper_argument
@click.option("--take", type=click.IntRange(1), metavar="NUMBER", help="Carry out the way of that number.")
@click.option("--move", type=click.IntRange(1), metavar="LINE", help="See what breaks if what stands there moves.")
@click.option("--before", type=click.IntRange(1), metavar="LINE", help="With --move: before what it is to stand.")
@click.option("--do", "make", is_flag=True, help="With --move: move it.")
def command(paper: Path, take: int | None, move: int | None, before: int | None, make: bool) -> None:
    """Cast off the draft of PAPER by the sheet's rule, section by section, and show the ways to the length asked.

    A paper that is too long: which passages to cut with the least loss, with what leans on them. One that is too short:
    which offcuts to bring back, and what is not argued yet. What is cut is kept among the offcuts.
    """
    from fairhand.session.opened import OpenPaper

    opened = OpenPaper(paper)
    if move is not None:
        show_move(paper, opened, move, before or 10**6, make=make)
        return
    if take is not None:
        carry(paper, opened, take)
        opened = OpenPaper(paper)
    show_cast(opened)
    show_ways(paper, opened)


def show_cast(opened: OpenPaper) -> None:
    """The whole, and each section."""
    from fairhand.session.drafting.cast_off import cast_off, tell_cast, tell_section

    cast = cast_off(opened)
    for line in tell_cast(cast):
        say(line)
    if not cast.sections:
        return
    say()
    say_rows(
        (f"{'  ' * max(0, one.level - 2)}{one.title or 'Before the first heading'}", tell_section(one))
        for one in cast.sections
    )


def show_ways(paper: Path, opened: OpenPaper) -> None:
    """The ways to the length that is asked, each with what it costs."""
    from fairhand.session.drafting.fitting import look_at_fit

    fit = look_at_fit(opened.look(), paper)
    say()
    say(fit.says)
    for number, way in enumerate(fit.ways, 1):
        say()
        how = f"fairhand fit{typed(paper)} --take {number}"
        say(f"{number}. {'Cut' if fit.words > 0 else 'Bring back'} {way.words:,} words ({how})")
        for one in way.passages:
            say(f"line {one.line}, {one.words:,} words, {one.why}: {one.begins}", 3, 5)
        for told in (*way.lost, *(f"To see to then. {one}" for one in way.broken)):
            say(told, 3, 5)
    for wanting in fit.wanting:
        say(wanting)


def carry(paper: Path, opened: OpenPaper, number: int) -> None:
    """One of the ways carried out."""
    from fairhand.desk.clock import now
    from fairhand.language.counts import count_of
    from fairhand.session.drafting.fitting import carry_out
    from fairhand.session.editing import state_of

    known = opened.look()
    done = carry_out(paper, known, number - 1, state_of(known.manuscript.text), now())
    say(f"Done, with {count_of(done, 'passage')}; what is cut is kept: fairhand offcut{typed(paper)}")
    say()


def show_move(paper: Path, opened: OpenPaper, line: int, before: int, *, make: bool) -> None:
    """What a move would break; then, where that is asked, the move."""
    from fairhand.session.drafting.moving import carry_move, look_at_move

    move = look_at_move(opened.look(), line, before)
    say(f"{'The section' if move.what.is_section else 'The passage'} at line {move.what.line}: {move.what.begins[:60]}")
    if not move.broken:
        say("Nothing is seen that would break.")
    for one in move.broken:
        say(one, 2, 4)
    if make:
        carry_move(paper, move)
        say("It is moved; the draft as it was is in the record.")
    else:
        say("Nothing was moved: --do moves it.")
