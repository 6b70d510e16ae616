"""``fairhand leads``: what the sources' reference lists point to, the most needed first."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from fairhand.cli.places import paper_argument
from fairhand.cli.screen import say

if TYPE_CHECKING:
    from collections.abc import Mapping

    from fairhand.session.opened import OpenPaper
    from fairhand.session.research.leads import LeadsFound


@click.command("leads")
@paper_argument
@click.option("--take", metavar="LEAD", help="Make this lead a source of the paper.")
@click.option("--aside", metavar="LEAD", help="Put this lead aside.")
@click.option("--back", metavar="LEAD", help="Bring back a lead that was put aside.")
@click.option("--why", default="", help="Your reason for putting it aside, kept with it.")
@click.option("--only", metavar="SOURCE", help="Mark a source as read for its references only.")
@click.option("--whole", metavar="SOURCE", help="Take that mark off again.")
@click.option("--most", type=click.IntRange(1, 1000), default=12, help="How many leads to show (default: 12).")
@click.option("--words", is_flag=True, help="Show each reference as it stands in its source.")
def command(
    paper: Path,
    take: str | None,
    aside: str | None,
    back: str | None,
    why: str,
    only: str | None,
    whole: str | None,
    most: int,
    words: bool,
) -> None:
    """Show what the reference lists of PAPER's sources point to and the paper has not got, the most needed first.

    A lead comes first where several sources point to it, where its title speaks of an open question, or where the
    sheet still asks for such a work. It is read off the reference by a model: look at its words before you rely on it.
    """
    from fairhand.session.opened import OpenPaper
    from fairhand.session.research.leads import list_leads

    opened = OpenPaper(paper)
    for source, mark in ((only, True), (whole, False)):
        if source:
            mark_source(opened, source, mark)
    found = list_leads(opened)
    if take or aside or back:
        decide(opened, found, take, aside, back, why)
        return
    show(found, opened.look().names, most, words=words)
    for problem in found.problems:
        click.echo(f"Note. {problem}", err=True)


def mark_source(opened: OpenPaper, source: str, mark: bool) -> None:
    """The source is marked as read for its references only, or as read whole."""
    from fairhand.errors import FairhandError
    from fairhand.session.research.lead_choices import read_for_references

    entry = opened.look().entries.get(source)
    if entry is None:
        message = f"{source}: no source has that id in sources.json"
        raise FairhandError(message)
    read_for_references(opened.folder, entry, only=mark)
    say(f"{opened.look().names[source]} is read {'for its references only' if mark else 'whole'}.")


def decide(
    opened: OpenPaper, found: LeadsFound, take: str | None, aside: str | None, back: str | None, why: str
) -> None:
    """A lead is taken, put aside or brought back."""
    from fairhand.desk.clock import now
    from fairhand.session.research.lead_choices import bring_back, put_aside
    from fairhand.session.research.leads import follow_lead

    at = now(opened.look().paper.desk.time_zone)
    if take:
        id_ = follow_lead(opened, found.find(take), at)
        say(f"{id_} is a source now; look at what its reference says of it, and get its text.")
    if aside:
        put_aside(opened.folder, found.find(aside), why, at)
        say(f"{aside} is put aside.")
    if back:
        bring_back(opened.folder, found.find(back), at)
        say(f"{back} is among the leads again.")


def show(found: LeadsFound, names: Mapping[str, str], most: int, *, words: bool) -> None:
    """The leads with their reasons, and what was put aside."""
    from fairhand.leads.telling import tell_found, tell_kind, tell_lead, tell_pointers

    say(tell_found(len(found.leads), found.mined))
    for one in found.leads[:most]:
        say()
        say(f"{tell_lead(one.lead)} [{one.lead.entry.id}]", 0, 4)
        for reason in one.reasons:
            say(f"{reason[0].upper()}{reason[1:]}{'' if reason[-1] in '.?!”' else '.'}", 4)
        say(f"{tell_kind(one.lead)}. In {tell_pointers(one.lead, names)}.", 4)
        if words:
            for pointer in one.lead.pointers:
                say(f"“{pointer.raw}”", 4, 6)
    if len(found.leads) > most:
        say()
        say(f"There are {len(found.leads) - most} more: --most {len(found.leads)} shows them all.")
    if found.aside:
        say()
        say("Put aside")
    for lead, aside in found.aside:
        say(f"{tell_lead(lead)} [{lead.entry.id}]{f': {aside.why}' if aside.why else ''}", 2, 4)
