"""``fairhand notes``: what was noted, by source and page."""

from __future__ import annotations

from pathlib import Path

import click

from fairhand.cli.places import paper_argument, typed
from fairhand.cli.screen import say


@click.command("notes")
@paper_argument
@click.option("--source", default="", metavar="ID", help="Only those from this source.")
@click.option("--question", default="", metavar="ID", help="Only those that help to answer this question.")
@click.option("--point", default="", metavar="ID", help="Only those that are for this point.")
@click.option("--without-page", is_flag=True, help="Only those that lack a page, though their source has pages.")
def command(paper: Path, source: str, question: str, point: str, without_page: bool) -> None:
    """Show the notes of PAPER by source, in the order of its pages."""
    from fairhand.readiness.noted import tell_held
    from fairhand.session.opened import OpenPaper
    from fairhand.session.research.notes_for import lacks_page, list_served, notes_for, order_notes
    from fairhand.session.research.noting import list_notes

    known = OpenPaper(paper).look()
    taken, problems = list_notes(paper)
    served = list_served(known)
    notes = [
        one
        for one in notes_for(taken, question=question, point=point)
        if source in ("", one.source) and (not without_page or lacks_page(one, known))
    ]
    for at, group in enumerate(order_notes(notes, known)):
        if at:
            say()
        say(group.name)
        for note in group.notes:
            page = f"page {note.page}" if note.page else "no page yet" if lacks_page(note, known) else ""
            say(", ".join(one for one in (page, note.kind) if one) or "noted", 2)
            if note.quotation:
                say(f"“{note.quotation}”", 4)
                say(tell_held(known, note), 4)
            if note.remark:
                say(note.remark, 4)
            if told := served.tell(note):
                say(told, 4)
    if not notes:
        begin = f'Nothing is noted yet. Note something: fairhand note{typed(paper)} SOURCE "…" --page 12'
        say("No such note." if taken else begin)
    lacking = sum(lacks_page(one, known) for one in notes)
    if lacking:
        say()
        say(f"{lacking} without a page: a passage is cited with its page, so look it up while you know where it is.")
    for problem in problems:
        click.echo(f"Note. {problem}", err=True)
