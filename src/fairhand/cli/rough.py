"""``fairhand rough``: the rough draft from the terminal."""

from __future__ import annotations

from pathlib import Path

import click

from fairhand.cli.places import paper_argument, typed
from fairhand.cli.screen import say


@click.command("rough")
@paper_argument
@click.option("--points", "set_out", is_flag=True, help="Set out the points at its end, in order, to write under.")
@click.option("--sheet", is_flag=True, help="Show the questions, points and notes, each as it is put into the text.")
@click.option("--begin", is_flag=True, help="Begin the draft from it; the rough draft stays.")
@click.option("--over", is_flag=True, help="With --begin: a draft that is there gives way, and stays in the record.")
def command(paper: Path, set_out: bool, sheet: bool, begin: bool, over: bool) -> None:
    """Show how far the rough draft of PAPER is (rough.md, in any editor), or begin the draft from it."""
    from fairhand.errors import DraftChangedOnDisk
    from fairhand.language.counts import count_of
    from fairhand.planning.points import WHERE, read_points
    from fairhand.session.drafting.rough import ROUGH, add_at_end, begin_draft, count_rough, lay_out_points
    from fairhand.session.editing import read_text

    if sheet:
        show_sheet(paper)
        return
    if set_out:
        add_at_end(paper, lay_out_points(read_points(read_text(paper, WHERE).text)[0]))
    if begin:
        try:
            begin_draft(paper, over=over)
        except DraftChangedOnDisk as there:
            message = f"{there} (--over)"
            raise DraftChangedOnDisk(message) from there
        say(f"The draft is begun: draft.md holds what {ROUGH} holds, and {ROUGH} stays.")
        return
    text = read_text(paper, ROUGH).text
    if not text.strip():
        say(f"Nothing is written yet. Write {ROUGH} in any editor, badly: it is handed in to nobody.")
        return
    say(
        f"{ROUGH}: {count_of(count_rough(text), 'word')}. Begin the draft from it: fairhand rough{typed(paper)} --begin"
    )


def show_sheet(paper: Path) -> None:
    """What is at hand, each thing with its citation in the style's in-text form."""
    from fairhand.session.drafting.at_hand import list_at_hand
    from fairhand.session.opened import OpenPaper

    for heading, found in list_at_hand(OpenPaper(paper).look(), paper):
        say(heading)
        for one in found:
            say(one.puts, 2, 4)
        say()
