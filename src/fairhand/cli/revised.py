"""``fairhand revised``: what was revised between two states of the draft, in argument, in wording and in order."""

from __future__ import annotations

from pathlib import Path

import click

from fairhand.cli.places import paper_argument
from fairhand.cli.screen import say

FATES = {"edited": "Changed", "moved": "Moved", "split": "Split", "joined": "Joined", "new": "New", "gone": "Gone"}


@click.command("revised")
@paper_argument
@click.option("--since", type=int, metavar="STATE", help="The earlier state (default: the first that is kept).")
@click.option("--until", type=int, metavar="STATE", help="The later state (default: the present).")
@click.option("--file", "name", default="draft.md", show_default=True, help="The file, where no state is named.")
@click.option("--short", is_flag=True, help="Only how much was revised in what.")
def command(paper: Path, since: int | None, until: int | None, name: str, short: bool) -> None:
    """Show what was revised in the draft of PAPER, passage by passage; fairhand record lists the states.

    A sentence that is new or gone is revised in argument; whether a changed one is, is reckoned from its words.
    """
    from fairhand.errors import NoSuchState
    from fairhand.proof.revised import list_sentences, tell_revisions, tell_signs
    from fairhand.readiness.told import mark_differences
    from fairhand.session.record.states import first_state, look_at

    if since is None:
        first = first_state(paper, name)
        if first is None:
            message = f"{name}: no state of it is kept yet in {paper.name}; write it, or see fairhand record"
            raise NoSuchState(message)
        since = first.seq
    earlier = look_at(paper, since, until)
    where = f"state {until}" if until else "the present"
    told = tell_revisions(list_sentences(earlier.differs))
    say(f"{earlier.state.name}, from state {since} of {earlier.at:%Y-%m-%d %H:%M} to {where}.")
    say(f"Revised {told}." if told else "No sentence was revised.")
    for one in () if short else earlier.differs:
        say()
        what = "; ".join(filter(None, (tell_revisions(one.revisions), tell_signs(one.revisions))))
        say(f"{FATES[one.fate]}{f', {what}' if what else ''}")
        if one.then:
            say(f"then  {mark_differences(one.then, one.then_differs)}", 2, 8)
        if one.now:
            say(f"now   {mark_differences(one.now, one.now_differs)}", 2, 8)
