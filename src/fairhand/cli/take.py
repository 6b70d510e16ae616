"""``fairhand take``: a draft from a word processor, or a list of sources from elsewhere."""

from __future__ import annotations

from pathlib import Path

import click

from fairhand.cli.places import PaperFirst, older_paper_option, paper_argument
from fairhand.cli.screen import say


@click.command("take", cls=PaperFirst)
@paper_argument
@click.argument("file", type=click.Path(path_type=Path))
@older_paper_option
@click.option("--refuse", is_flag=True, help="Refuse the tracked changes of a draft; without this they are accepted.")
@click.option("--replace", is_flag=True, help="Let the file's draft stand alone, whatever was changed here meanwhile.")
def command(paper: Path, file: Path, refuse: bool, replace: bool) -> None:
    """Bring FILE into PAPER: a draft (.docx, .odt), or a list of sources (.bib, .ris, .nbib, .json).

    Of a draft that comes again, what was changed here since stands, passage by passage, and its comments are kept with
    their places. The draft that was there is kept in the record; sources that are there already stay as they are.
    """
    from fairhand.session.drafting.taking import take_file

    for line in take_file(paper, file, refuse=refuse, replace=replace):
        say(line)
