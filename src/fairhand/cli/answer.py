"""``fairhand answer``: what the writer says of something that the sheet asks."""

from __future__ import annotations

from pathlib import Path

import click

from fairhand.cli.places import PaperFolder
from fairhand.cli.screen import say


@click.command("answer")
@click.argument("ids", nargs=-1, required=True, metavar="ID...")
@click.option("--paper", type=PaperFolder(), default=".", help="The paper's folder (default: here).")
@click.option("--say", "words", default="", help="The answer in words.")
@click.option("--set", "values", multiple=True, metavar="KEY=VALUE", help="Correct a value, as --set on=2027-03-01.")
@click.option("--waive", is_flag=True, help="It no longer holds.")
@click.option("--by", default="", help="Who said so.")
@click.option("--undo", is_flag=True, help="Take the answer back.")
def command(
    ids: tuple[str, ...], paper: Path, words: str, values: tuple[str, ...], waive: bool, by: str, undo: bool
) -> None:
    """Answer, correct or waive the requirement ID of the paper's sheet; it is kept in paper.toml with who said so."""
    from fairhand.session.answering import answer_requirement

    for requirement in ids:
        say(answer_requirement(paper, requirement, words=words, values=values, waive=waive, by=by, undo=undo))
