"""``fairhand record``: what was saved, and when."""

from __future__ import annotations

from pathlib import Path

import click

from fairhand.cli.exit_codes import NOT_READY
from fairhand.cli.places import paper_argument
from fairhand.cli.screen import say


@click.command("record")
@paper_argument
@click.option("--file", "name", help="Only the states of this file, as draft.md.")
@click.option("--back", type=int, metavar="STATE", help="Write that state beside the present file.")
@click.option("--check", is_flag=True, help="Check the record: every state whole, and chained to the one before.")
def command(paper: Path, name: str | None, back: int | None, check: bool) -> int:
    """List the saved states of the files of PAPER; nothing is ever lost."""
    from fairhand.desk.clock import find_zone
    from fairhand.desk.paper_files import read_paper
    from fairhand.desk.record import bring_back, check_record, list_states
    from fairhand.session.saving import keep_record

    files = read_paper(paper)
    for problem in keep_record(files):
        say(f"Note. {problem}.")
    if back is not None:
        say(f"Brought back as {bring_back(paper, back, time_zone=files.desk.time_zone)}.")
        return 0
    if check:
        faults = check_record(paper)
        for fault in faults:
            say(f"{fault}.", 2, 4)
        if not faults:
            say("Every state is whole, and each is chained to the one before it.")
        return NOT_READY if faults else 0
    states = list_states(paper, name)
    if not states:
        say("Nothing was saved yet.")
    zone = find_zone(files.desk.time_zone) if files.desk.time_zone else None
    for state in states:
        at = state.at.astimezone(zone)
        click.echo(f"{state.seq:6}  {at:%Y-%m-%d %H:%M}  {state.size:9,} bytes  {state.name}, {state.how}")
    return 0
