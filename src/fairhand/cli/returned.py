"""``fairhand returned``: marks and comments of a paper that came back, and the paper put away."""

from __future__ import annotations

from pathlib import Path

import click

from fairhand.cli.places import paper_argument, typed
from fairhand.cli.screen import say, say_rows


@click.command("returned")
@paper_argument
@click.option("--mark", default="", help="The mark of the whole, as it was given.")
@click.option(
    "--by", "by_criterion", type=(str, str), multiple=True, metavar="CRITERION MARK", help="A mark by one criterion."
)
@click.option("--comment", "comments", multiple=True, help="Something that was said of it.")
@click.option(
    "--file",
    type=click.Path(path_type=Path, exists=True, dir_okay=False),
    help="The marked copy, kept with what was handed in; the comments in it (DOCX, ODT, PDF) are read.",
)
@click.option(
    "--put-away", is_flag=True, help="Put the whole paper away in done/ on the desk, and as an archive beside it."
)
def command(
    paper: Path,
    mark: str,
    by_criterion: tuple[tuple[str, str], ...],
    comments: tuple[str, ...],
    file: Path | None,
    *,
    put_away: bool,
) -> None:
    """Keep what came back of PAPER, hold the plan's estimates against what was, and put the paper away.

    Marks and comments are kept in hand-in.toml. The plans of the other papers reckon with what this one took.
    """
    from fairhand.hand_in.account import Mark
    from fairhand.session.hand_in.handing_in import read_hand_in, read_upload
    from fairhand.session.hand_in.returned import (
        compare_estimates,
        keep_marked_copy,
        keep_returned,
        read_comments,
        tell_returned,
    )
    from fairhand.session.hand_in.returned import put_away as put

    if file is not None:
        name, data = read_upload(file)
        say(f"Kept as {keep_marked_copy(paper, name, data)}.")
        comments += read_comments(name, data)
    if mark or by_criterion or comments:
        keep_returned(paper, mark=mark, marks=[Mark(*one) for one in by_criterion], comments=comments)
    returned = read_hand_in(paper).returned
    say(tell_returned(returned) if returned else "Nothing is said yet of what came back (--mark, --by, --comment).")
    if returned:
        say_rows((one.criterion, f"{one.mark}{f' {one.says}' if one.says else ''}") for one in returned.marks)
        for comment in returned.comments:
            say(comment, 2, 4)
        if returned.comments:
            say()
            command = f"fairhand lapses{typed(paper)} --returned"
            say(f"To learn your lapses from those that say what is wrong and what is right: {command}")
    estimates, pace = compare_estimates(paper)
    if estimates:
        say()
        say("What was planned, and what it took")
        for one in estimates:
            took = "not said" if one.took_minutes is None else f"{one.took_minutes} taken"
            say_rows([(one.step.replace("-", " "), f"{one.planned_minutes} minutes planned, {took}")])
    say(str(pace))
    if put_away:
        target, archive = put(paper)
        say()
        say(f"Put away as {target}, and as {archive}.")
