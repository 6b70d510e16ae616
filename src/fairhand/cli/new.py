"""``fairhand new``: a paper begun from its sheet."""

from __future__ import annotations

import datetime as dt
import sys
from pathlib import Path

import click

from fairhand.cli.places import DAY
from fairhand.cli.screen import say


@click.command("new")
@click.argument("title")
@click.option(
    "--brief",
    "sheets",
    type=click.Path(path_type=Path),
    multiple=True,
    help="The assignment sheet; may be given again.",
)
@click.option("--course", default="", help="The course, by its folder's name or its title; made if it is new.")
@click.option("--given", type=DAY, help="The day that the sheet was given out (2027-01-18).")
@click.option("--desk", type=click.Path(path_type=Path), default=".", help="The desk's folder (default: here).")
def command(title: str, sheets: tuple[Path, ...], course: str, given: dt.date | None, desk: Path) -> None:
    """Begin a paper called TITLE on the desk, with its assignment sheet.

    Where the sheet asks for several papers, Fairhand offers to begin them all.
    """
    from fairhand.session.beginning import assignments_on, begin_paper

    if not title.strip():
        raise click.BadParameter("it is empty; give the paper a title, a working one will do", param_hint="TITLE")
    several = assignments_on(sheets, given)
    titles = [(title, "")]
    if len(several) > 1:
        say(f"The sheet asks for {len(several)} papers:")
        for number, name in enumerate(several, 1):
            say(f"{number}. {name}", 2, 5)
        asked = sys.stdin.isatty()
        if asked and click.confirm("Begin them all?", default=True):
            titles = [(f"{title}: {name}", name) for name in several]
        elif asked:
            number = click.prompt("Which one is this? (number)", type=click.IntRange(1, len(several)))
            titles = [(title, several[number - 1])]
        else:
            say('This paper takes the first. To take another, write its title into paper.toml: assignment = "…".')
            titles = [(title, several[0])]
    for name, assignment in titles:
        for line in begin_paper(desk, name, sheets, course=course, given=given, assignment=assignment).says:
            say(line)
