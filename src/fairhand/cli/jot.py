"""``fairhand jot``: the head emptied from the terminal, and what was jotted down sorted when that is asked."""

from __future__ import annotations

import sys
import threading
from pathlib import Path

import click

from fairhand.cli.places import paper_argument, typed
from fairhand.cli.screen import say


@click.command("jot")
@paper_argument
@click.option("--minutes", type=click.IntRange(1, 600), help="Say so when so many minutes are over.")
@click.option("--sort", "sort", is_flag=True, help="Show the jottings grouped by meaning.")
@click.option("--wording", is_flag=True, help="Show them as questions, to find out, doubtful and known.")
def command(paper: Path, minutes: int | None, sort: bool, wording: bool) -> None:
    """Write down whatever comes to mind for PAPER, a line each; each line is kept in jottings.md as it is ended."""
    if sort:
        show_groups(paper)
    elif wording:
        show_wordings(paper)
    else:
        take_lines(paper, minutes)


def take_lines(paper: Path, minutes: int | None) -> None:
    """Each line of the input is a jotting, until the input ends."""
    from fairhand.session.research.jottings import add_jotting

    if sys.stdin.isatty():
        say("Write whatever comes to mind, a line each; end with Ctrl-D on a line of its own.")
    over = f"{minutes} minutes are over. Write on, or end with Ctrl-D."
    timer = threading.Timer(60 * (minutes or 0), click.echo, [over], {"err": True})
    timer.daemon = True
    if minutes:
        timer.start()
    kept = 0
    for line in sys.stdin:
        if line.strip():
            add_jotting(paper, line)
            kept += 1
    timer.cancel()
    say(f"{kept} jotting{'' if kept == 1 else 's'} kept in jottings.md.")


def show_groups(paper: Path) -> None:
    """Each group by its phrase, then what stands apart."""
    from fairhand.session.research.jottings import look_at_groups

    found = look_at_groups(paper)
    parts = [(group.phrase, group.jottings) for group in found.arrangement.groups]
    parts += [("Apart", found.arrangement.apart)] if found.arrangement.apart else []
    if not parts:
        say(f"Nothing is jotted down yet. Begin: fairhand jot{typed(paper)}")
    for heading, jottings in parts:
        say(heading)
        for one in jottings:
            say(one.words, 2, 4)
        say()
    if parts and not found.by_meaning:
        say("Grouped by the words that they share: no sentence encoder is installed.")
    for problem in found.problems:
        click.echo(f"Note. {problem}", err=True)


def show_wordings(paper: Path) -> None:
    """The jottings by what their wording says of their certainty."""
    from fairhand.jottings.wording import WORDINGS, tell_wording
    from fairhand.session.research.jottings import list_jottings

    jottings = list_jottings(paper)
    for wording, heading in WORDINGS.items():
        own = [one.words for one in jottings if tell_wording(one.words) == wording]
        if own:
            say(heading)
            for words in own:
                say(words, 2, 4)
            say()
