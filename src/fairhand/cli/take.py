"""``fairhand take``: a draft from a word processor, or a list of sources from elsewhere."""

from __future__ import annotations

from pathlib import Path

import click

from fairhand.cli.places import PaperFolder
from fairhand.cli.screen import say


@click.command("take")
@click.argument("file", type=click.Path(path_type=Path))
@click.option("--paper", type=PaperFolder(), default=".", help="The paper's folder (default: here).")
@click.option("--refuse", is_flag=True, help="Refuse the tracked changes of a DOCX; without this they are accepted.")
def command(file: Path, paper: Path, refuse: bool) -> None:
    """Bring FILE into the paper: a draft (.docx, .odt), or a list of sources (.bib, .ris, .nbib, .json).

    The draft that was there is kept in the record; sources that are there already stay as they are.
    """
    from fairhand.session.taking import take_file

    for line in take_file(paper, file, refuse=refuse):
        say(line)
