"""``fairhand record``: how the paper came to be, what was saved, and when."""

from __future__ import annotations

from itertools import groupby
from pathlib import Path
from typing import TYPE_CHECKING

import click

from fairhand.cli.exit_codes import NOT_READY, READY
from fairhand.cli.screen import say, say_rows

if TYPE_CHECKING:
    from fairhand.record.document import Document

WHOLE = "the paper’s own record"


@click.command("record")
@click.argument("paper", type=click.Path(path_type=Path), default=".")
@click.option("--states", is_flag=True, help="List every saved state, not the sittings.")
@click.option("--file", "name", help="List only the states of this file, as draft.md.")
@click.option("--back", type=int, metavar="STATE", help="Write that state beside the present file.")
@click.option("--print", "print_", is_flag=True, help="Print the record with its hashes.")
@click.option(
    "--as", "kind", type=click.Choice(["pdf", "html"]), default="pdf", show_default=True, help="In which form."
)
@click.option("--to", type=click.Path(path_type=Path), help="Where to (default: fair/ in the paper's folder).")
@click.option(
    "--check",
    is_flag=False,
    flag_value=WHOLE,
    metavar="[FILE]",
    help="Check a printed record, on any machine; without FILE the paper's own, state by state.",
)
def command(
    paper: Path,
    *,
    states: bool,
    name: str | None,
    back: int | None,
    print_: bool,
    kind: str,
    to: Path | None,
    check: str | None,
) -> int:
    """Tell how PAPER came to be: each sitting with the words in and out by section, sources, notes and readers.

    It is made from the saved states of the paper's files; nothing is ever lost. --states lists them one by one.
    """
    from fairhand.desk.places import find_paper

    if check is not None and check != WHOLE and Path(check).is_file():
        return _check_printed(Path(check), None if paper == Path() else find_paper(paper))
    if check is not None and check != WHOLE:
        paper = Path(check)  # `--check PAPER`, the one word taken for the other
    folder = find_paper(paper)
    if back is not None:
        return _bring_back(folder, back)
    if check is not None:
        return _check_own(folder)
    if states or name:
        return _list_states(folder, name)
    from fairhand.desk.record import list_set_aside
    from fairhand.session.record.printed_record import print_record, tell_record

    if print_:
        say(
            f"Printed {print_record(folder, kind, to=to)}. It names no writer; who gets it may check it on any machine."
        )
        return READY
    show(tell_record(folder))
    for problem in list_set_aside(folder):
        say(f"Note. {problem}.")
    return READY


def show(document: Document) -> None:
    """The list of sittings, the latest day last."""
    from fairhand.record.telling import SHOWS_NOT, say_day, say_sitting, say_when, sum_up

    say(f"The record of “{document.title}”")
    say(sum_up(document.sittings))
    for day, sittings in groupby(document.sittings, key=lambda one: one.start.date()):
        say()
        say(say_day(day))
        say_rows((say_when(one), " ".join(say_sitting(one))) for one in sittings)
    say()
    say(SHOWS_NOT)


def _bring_back(folder: Path, seq: int) -> int:
    from fairhand.desk.paper_files import read_paper
    from fairhand.desk.record import bring_back

    files = read_paper(folder)
    _keep(folder)
    say(f"Brought back as {bring_back(folder, seq, time_zone=files.desk.time_zone)}.")
    return READY


def _check_own(folder: Path) -> int:
    from fairhand.desk.record import check_record

    _keep(folder)
    faults = check_record(folder)
    for fault in faults:
        say(f"{fault}.", 2, 4)
    if not faults:
        say("Every state is whole, and each is chained to the one before it.")
    return NOT_READY if faults else READY


def _check_printed(file: Path, folder: Path | None) -> int:
    from fairhand.session.hand_in.handing_in import read_upload
    from fairhand.session.record.printed_record import check_printed, compare_with_paper

    checked = check_printed(*read_upload(file))
    for fault in checked.faults:
        say(f"{fault[0].upper()}{fault[1:]}.", 2, 4)
    if not checked.faults:
        say(
            f"The record of “{checked.document.title}” is whole: its seal holds, each of its "
            f"{len(checked.document.links):,} states follows from the one before, and its page reads as it was printed."
        )
        if checked.note:
            say(f"Note. {checked.note}")
        say("It shows that nothing in it was changed since it was printed, and not who wrote, or when indeed.")
    if folder is not None:
        say(compare_with_paper(checked.document, folder))
    return NOT_READY if checked.faults else READY


def _list_states(folder: Path, name: str | None) -> int:
    from fairhand.desk.clock import find_zone
    from fairhand.desk.paper_files import read_paper
    from fairhand.desk.record import list_states
    from fairhand.session.versions import list_versions, tell_version

    _keep(folder)
    states = list_states(folder, name)
    if not states:
        say("Nothing was saved yet.")
    zone_name = read_paper(folder).desk.time_zone
    zone = find_zone(zone_name) if zone_name else None
    for state in states:
        at = state.at.astimezone(zone)
        click.echo(f"{state.seq:6}  {at:%Y-%m-%d %H:%M}  {state.size:9,} bytes  {state.name}, {state.how}")
    for version in list_versions(folder, name or ""):
        say(f"Note. {version.seen.name} is {tell_version(version)}. Look at both, and choose: fairhand open.")
    return READY


def _keep(folder: Path) -> None:
    from fairhand.desk.paper_files import read_paper
    from fairhand.session.saving import keep_record

    for problem in keep_record(read_paper(folder)):
        say(f"Note. {problem}.")
