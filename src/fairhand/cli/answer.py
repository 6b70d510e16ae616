"""``fairhand answer``: what the writer says of something that the sheet asks."""

from __future__ import annotations

from pathlib import Path

import click

from fairhand.cli.places import PaperFirst, older_paper_option, paper_argument
from fairhand.cli.screen import say
from fairhand.errors import DeskError


@click.command("answer", cls=PaperFirst)
@paper_argument
@click.argument("ids", nargs=-1, required=True, metavar="ID...")
@older_paper_option
@click.option("--say", "words", default="", help="The answer in words (default: yes).")
@click.option("--set", "values", multiple=True, metavar="KEY=VALUE", help="Correct a value, as --set on=2027-03-01.")
@click.option("--waive", is_flag=True, help="It no longer holds.")
@click.option("--by", default="", help="Who said so.")
@click.option("--undo", is_flag=True, help="Take the answer back.")
def command(
    paper: Path, ids: tuple[str, ...], words: str, values: tuple[str, ...], waive: bool, by: str, undo: bool
) -> None:
    """Answer, correct or waive the requirement ID of PAPER's sheet; it is kept in paper.toml with who said so."""
    from fairhand.session.assignment.answering import answer_requirement, refuse_unasked

    written = dict(map(_read_value, values))
    words = words or ("" if written or waive else "yes")
    refuse_unasked(paper, ids)
    for requirement in ids:
        say(answer_requirement(paper, requirement, words=words, written=written, waive=waive, by=by, undo=undo))


def _read_value(said: str) -> tuple[str, str]:
    """One ``KEY=VALUE``.

    >>> _read_value("excludes = headings, references")
    ('excludes', 'headings, references')
    """
    key, found, value = said.partition("=")
    if not found or not key.strip():
        message = f"{said}: a value is set as KEY=VALUE, say on=2027-03-01"
        raise DeskError(message)
    return key.strip(), value.strip()
