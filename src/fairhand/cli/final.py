"""``fairhand final``: the answer after the final reading."""

from __future__ import annotations

from pathlib import Path

import click

from fairhand.cli.places import paper_argument
from fairhand.cli.screen import say


@click.command("final")
@paper_argument
@click.option("--fit", is_flag=True, help="You read it from start to end, and it is fit to hand in.")
@click.option("--not-fit", "why", metavar="WHY", help="You read it, and it is not: why.")
def command(paper: Path, fit: bool, why: str | None) -> None:
    """Say, after the final reading of PAPER, whether it is fit to hand in; without an answer, show the last one.

    Print the fair copy, or read it in the page: once, from start to end, in one sitting.
    """
    from fairhand.desk.clock import now
    from fairhand.errors import FairhandError
    from fairhand.session.correction.final import answer_final, read_copy, tell_final
    from fairhand.session.opened import OpenPaper

    if fit and why is not None:
        message = "--fit and --not-fit: it is one or the other"
        raise FairhandError(message)
    if fit or why is not None:
        say(answer_final(paper, now(), fit=fit, why=why or ""))
    else:
        say(tell_final(paper, read_copy(OpenPaper(paper))))
