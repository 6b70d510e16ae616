"""``fairhand desk``: the work in hand."""

from __future__ import annotations

import shlex
from pathlib import Path

import click

from fairhand.cli.screen import say, say_rows


@click.command("desk")
@click.argument("folder", type=click.Path(path_type=Path), default=".")
@click.option("--begin", is_flag=True, help="Begin a desk in FOLDER.")
@click.option("--name", default="", help="Your name, as it stands on a paper (with --begin).")
@click.option("--zone", default="", help="Your time zone, as Europe/London (with --begin).")
@click.option("--spelling", type=click.Choice(["US", "GB"]), default="US", help="American or British (with --begin).")
def command(folder: Path, begin: bool, name: str, zone: str, spelling: str) -> None:
    """Show the work in hand on the desk at FOLDER, in the order of the hours when it is due."""
    from fairhand.desk.clock import find_zone
    from fairhand.errors import NoPaperHere
    from fairhand.session.beginning import begin_desk
    from fairhand.session.hand_in.returned import work_done
    from fairhand.session.schedule.overview import work_in_hand

    there = "" if folder.absolute() == Path().absolute() else f" --desk {shlex.quote(str(folder))}"
    hint = f"fairhand new TITLE --brief FILE{there}"
    if begin:
        if zone and not find_zone(zone):
            raise click.BadParameter(f"{zone} is no time zone; write it as Europe/London", param_hint="--zone")
        say(f"{begin_desk(folder, name=name, zone=zone, spelling=spelling)} Begin a paper there: {hint}")
        return
    if not folder.is_dir():
        message = f"{folder}: there is no such folder; begin a desk there with fairhand desk --begin {folder}"
        raise NoPaperHere(message)
    rows = work_in_hand(folder)
    done = work_done(folder)
    if rows:
        say("Work in hand")
        say_rows((row.title, row.due) for row in rows)
    else:
        which = "in hand" if done else "on this desk yet"
        say(f"No paper is {which}. Begin one: {hint}")
    if done:
        say()
        say("Done")
        say_rows(
            (one.title, f"{one.mark or 'no mark kept'}, in {one.folder.parent.name}/{one.folder.name}") for one in done
        )
