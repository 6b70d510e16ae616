"""``fairhand add``: sources, whatever they come as."""

from __future__ import annotations

import sys
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import click

from fairhand.cli.exit_codes import NOT_READY
from fairhand.cli.places import PaperFirst, paper_argument, typed
from fairhand.cli.screen import say
from fairhand.cli.watching import watch

if TYPE_CHECKING:
    from fairhand.session.sources.adding import Added, Asked

_TOLD_WHOLE = 12
"""New sources whose fields are told one by one; of more, only what is missing is counted."""


@click.command("add", cls=PaperFirst)
@paper_argument
@click.argument("what", nargs=-1)
@click.option("--inbox", is_flag=True, help="Take in what waits in the paper's inbox.")
@click.option("--join", is_flag=True, help="Join what is the same work as a source that is there.")
@click.option("--join-to", metavar="ID", help="Join the source that WHAT names to this one.")
@click.option("--text-of", metavar="ID", help="Make the file the text of this source; the old one is set aside.")
@click.option("--remove", metavar="ID", help="Take this source off the list; its file and its notes stay.")
@click.option("--allow-outside", is_flag=True, help="Allow registries and pages elsewhere to be asked, from now on.")
def command(
    paper: Path,
    what: tuple[str, ...],
    inbox: bool,
    join: bool,
    join_to: str | None,
    text_of: str | None,
    remove: str | None,
    allow_outside: bool,
) -> int:
    """Add WHAT to the sources of PAPER: files and folders, lists of references, addresses, a DOI, ISBN or PMID.

    Files are PDF, EPUB, HTML, DOCX, ODT, text or photographs; lists are BibTeX, RIS, nbib or CSL-JSON. Without WHAT,
    what waits in the inbox is listed.
    """
    from fairhand.desk.inbox import list_inbox
    from fairhand.session.job import Job
    from fairhand.session.sources.adding import add_sources, sort_asked
    from fairhand.session.sources.joining import join_works

    if remove is not None:
        take_off(paper, remove)
        return 0
    if join_to is not None:
        for other in what:
            for line in join_works(paper, join_to, other):
                say(line)
        return 0
    if text_of is not None:
        give(paper, text_of, what)
        return 0
    waiting = list_inbox(paper)
    if not what and not inbox and not allow_outside:
        _tell_inbox(waiting)
        return 0
    asked = sort_asked([*what, *(map(str, waiting) if inbox else ())])
    _settle_outside(paper, asked, allowed=allow_outside)
    added = watch(Job(lambda job: add_sources(paper, asked, job))) if len(asked) else None
    if added is None:
        say("The inbox is empty." if inbox else "That is set down in desk.toml.")
        return 0
    _tell_added(paper, added)
    for double in added.doubles:
        if join or (
            sys.stdin.isatty() and click.confirm(f"{double.new} and {double.there} have {double.why}. Join them?")
        ):
            for line in join_works(paper, double.there, double.new):
                say(line)
        else:
            say(f"{double.new} and {double.there} have {double.why}. If they are one work: "
                f"fairhand add{typed(paper)} --join-to {double.there} {double.new}")  # fmt: skip
    if added.left:
        say(f"Stopped with {added.left:,} left; what was taken in stays. The same command goes on from there.")
    return NOT_READY if added.left or any(one.outcome == "refused" for one in added.taken) else 0


def give(paper: Path, source: str, what: Sequence[str]) -> None:
    """The one file that is named is the source's text, and what became of its notes is told."""
    from fairhand.desk.seen import see_file
    from fairhand.errors import FairhandError
    from fairhand.session.opened import OpenPaper
    from fairhand.session.sources.replacing import find_notes_again, give_text

    opened = OpenPaper(paper)
    entry = opened.look().entries.get(source)
    if entry is None or len(what) != 1:
        there = ", ".join(opened.look().entries) or "none yet"
        message = f"--text-of {source}: name one file, and a source of the list; there are: {there}"
        raise FairhandError(message)
    path = Path(what[0])
    if not path.is_file():
        message = f"{path}: there is no such file"
        raise FairhandError(message)
    aside = give_text(paper, entry, path.name, see_file(path, path.name).data)
    say(f"{path.name} is the text of {source} now." + (f" The old one stands in {aside}." if aside else ""))
    if told := find_notes_again(paper, source, opened.look().paper.texts.get(source)).told:
        say(told)


def take_off(paper: Path, source: str) -> None:
    """The source is not on the paper's list any more, and what is left of it is told."""
    from fairhand.errors import FairhandError
    from fairhand.session.opened import OpenPaper
    from fairhand.session.sources.entries import remove_record

    entries = OpenPaper(paper).look().entries
    if source not in entries:
        message = f"--remove {source}: no source has that id; there are: {', '.join(entries) or 'none yet'}"
        raise FairhandError(message)
    remove_record(paper, entries[source])
    say(f"{source} is off the list; its text and its notes stay in the folder, its record among the earlier states.")


def _tell_inbox(waiting: Sequence[Path]) -> None:
    if not waiting:
        say("Nothing waits in the inbox. Name what to add: a file, a folder, a list, an address, a DOI, ISBN or PMID.")
        return
    say(f"{len(waiting)} wait in the inbox; take them in with --inbox:")
    for path in waiting:
        say(path.name, 2, 4)


def _settle_outside(paper: Path, asked: Asked, *, allowed: bool) -> None:
    """Where something is to be asked elsewhere and the writer has not allowed it yet, it is asked plainly, once."""
    from fairhand.desk.paper_files import read_paper
    from fairhand.session.sources.looking_up import WHAT_LEAVES, allow_outside, refuse_outside

    files = read_paper(paper)
    if allowed:
        allow_outside(files)
    elif asked.needs_outside and not files.desk.outside:
        say(WHAT_LEAVES)
        if sys.stdin.isatty() and click.confirm("Allow it from now on? (desk.toml: outside = true)"):
            allow_outside(files)
        else:
            refuse_outside(files, (*asked.addresses, *map(str, asked.numbers))[0])


def _tell_added(paper: Path, added: Added) -> None:
    from fairhand.citing.described import list_missing, origins_of
    from fairhand.desk.paper_files import read_paper
    from fairhand.language.counts import count_of
    from fairhand.session.loading import load_entries

    for name, joined in added.joined:
        if joined.new:
            say(f"{count_of(len(joined.new), 'source')} of {name} joined the list: {', '.join(joined.new)}.")
        else:
            say(f"No source of {name} is new.")
        if joined.there:
            say(f"There already, and left as they are: {', '.join(joined.there)}.", 2, 4)
        for problem in joined.problems:
            say(f"{problem}.", 2, 4)
    entries = {entry.id: entry for entry in load_entries(read_paper(paper), [])}
    new = [one for one in added.taken if one.outcome == "new"]
    for one in new[:_TOLD_WHOLE]:
        entry = entries[one.id]
        say(f"{one.id}: {entry.title}")
        told: dict[str, list[str]] = {}
        for name, where in origins_of(entry.csl).items():
            told.setdefault(where, []).append(name)
        for where, names in told.items():
            say(f"{', '.join(names)}: from {where}", 4, 6)
        if missing := list_missing(entry):
            say(f"Not found, and yours to write: {', '.join(missing)}.", 4, 6)
        for fault in one.problems:
            say(f"{fault}.", 4, 6)
    if len(new) > _TOLD_WHOLE:
        bare = sum(1 for one in new if list_missing(entries[one.id]))
        say(f"… and {len(new) - _TOLD_WHOLE:,} more. In {bare:,} of all something is missing that only you can write.")
    there = [one.id for one in added.taken if one.outcome == "there"]
    if there:
        shown = ", ".join(there[:_TOLD_WHOLE]) + (" …" if len(there) > _TOLD_WHOLE else "")
        say(f"There already, and left as they are: {shown}.")
    for why in dict.fromkeys("; ".join(one.problems) for one in added.taken if one.outcome == "refused"):
        say(f"Not taken. {why}.")
