"""``fairhand lapses``: the errors that this writer tends to make, and where they stand in a draft."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, TextIO

import click

from fairhand.cli.places import paper_argument, typed
from fairhand.cli.screen import say

if TYPE_CHECKING:
    from fairhand.session.correction.lapses import LapseSeen


@click.command("lapses")
@paper_argument
@click.option("--wrong", default="", help="Words that you write by mistake, to be looked for from now on.")
@click.option("--right", default="", help="What you mean by them.")
@click.option("--check", default="", help="Or the name of a check whose findings you want to keep an eye on.")
@click.option("--name", default="", help="What you call it, if you like.")
@click.option("--from", "comments", type=click.File("r", encoding="utf-8"), help="Learn from remarks, one on a line.")
@click.option("--returned", is_flag=True, help="Learn from the comments of the paper that came back.")
@click.option("--only", default="", metavar="NAME", help="Go through the draft for this lapse alone.")
@click.option("--forget", default="", metavar="NAME", help="Look for this lapse no more.")
def command(
    paper: Path,
    wrong: str,
    right: str,
    check: str,
    name: str,
    comments: TextIO | None,
    returned: bool,
    only: str,
    forget: str,
) -> None:
    """Show your recurring errors, the most frequent first, and where they stand in PAPER's draft.

    They are kept in lapses.toml on the desk and go with you from paper to paper: count, last day, example.
    """
    from fairhand.errors import FairhandError
    from fairhand.language.counts import count_of
    from fairhand.model.lapse import Lapse
    from fairhand.session.correction.lapses import forget_lapse, keep_lapse, survey_lapses
    from fairhand.session.correction.learning import learn_from_comments
    from fairhand.session.opened import OpenPaper

    if right and not wrong.strip():
        message = "--right: say too what you write by mistake, with --wrong"
        raise FairhandError(message)
    if forget:
        forget_lapse(paper, forget)
    if wrong or check:
        called = name or (f"{wrong} for {right}" if wrong and right else wrong or check)
        keep_lapse(paper, Lapse(called, wrong=wrong, right=right, check=check))
    remarks = [line.strip() for line in comments if line.strip()] if comments else []
    if returned:
        from fairhand.session.hand_in.handing_in import read_hand_in

        came_back = read_hand_in(paper).returned
        if came_back is None or not came_back.comments:
            message = f"{paper.name}: no comments of a returned paper are kept; fairhand returned --file reads them in"
            raise FairhandError(message)
        remarks += came_back.comments
    if comments or returned:
        learnt = learn_from_comments(paper, remarks)
        many = count_of(len(remarks), "remark")
        say(f"Of {many} {len(learnt)} new name an error: a lapse from now on, or counted once more.")
    opened = OpenPaper(paper)
    seen, problems = survey_lapses(paper, opened.look(), opened.verdict().findings)
    if not seen and not only:
        say(f'No lapses yet. Write one down: fairhand lapses{typed(paper)} --wrong "…" --right "…"')
    show(seen, opened.look().paper.draft, only)
    for problem in problems:
        click.echo(f"Note. {problem}", err=True)


def show(seen: Sequence[LapseSeen], draft: str, only: str) -> None:
    """Each lapse with its count and day, and its places in the draft."""
    from fairhand.copyedit.in_place import quote_span
    from fairhand.errors import FairhandError
    from fairhand.language.counts import count_of
    from fairhand.model.span import line_at

    chosen = [one for one in seen if not only or one.lapse.name == only]
    if only and not chosen:
        message = f"{only}: no lapse has that name; there are {', '.join(one.lapse.name for one in seen) or 'none'}"
        raise FairhandError(message)
    for one in chosen:
        lapse = one.lapse
        say()
        last = f", last on {lapse.last}" if lapse.last else ""
        say(f"{lapse.name}: {count_of(lapse.count, 'time')}{last}")
        if lapse.example:
            say(f"as in “{lapse.example}”", 2, 4)
        if one.died_out:
            say("It stands in none of your last three drafts: it has died out.", 2)
        places = one.places if only else one.places[:3]
        for span in places:
            say(f"line {line_at(draft, span.start)}: {quote_span(draft, span)}", 2, 4)
        if len(places) < len(one.places):
            say(f"and {len(one.places) - len(places)} more (--only “{lapse.name}”)", 2)
        if not one.places and not one.died_out:
            say(f"{one.stands[:1].upper()}{one.stands[1:]}.", 2)
