"""``fairhand note``: one thing read, written down with its source and page."""

from __future__ import annotations

from pathlib import Path

import click

from fairhand.cli.places import PaperFirst, paper_argument
from fairhand.cli.screen import say
from fairhand.model.note import KINDS


@click.command("note", cls=PaperFirst)
@paper_argument
@click.argument("source")
@click.argument("remark", default="")
@click.option("--page", default="", help="The page in the source, as it is printed there.")
@click.option("--quotation", default="", metavar="WORDS", help="Words of the source, exactly as they stand there.")
@click.option("--kind", type=click.Choice(KINDS), help="What the note is.")
@click.option("--question", default="", metavar="ID", help="The question that it helps to answer.")
@click.option("--point", default="", metavar="ID", help="The point that it is for.")
def command(
    paper: Path, source: str, remark: str, page: str, quotation: str, kind: str | None, question: str, point: str
) -> None:
    """Note something from SOURCE (its id in sources.json) for PAPER; REMARK is what you say of it."""
    from fairhand.desk.clock import now
    from fairhand.model.note import Note
    from fairhand.readiness.noted import tell_held
    from fairhand.session.opened import OpenPaper
    from fairhand.session.research.notes_for import list_served, refuse_strangers
    from fairhand.session.research.noting import keep_note

    known = OpenPaper(paper).look()
    note = Note("", source, page.strip(), quotation.strip(), remark=remark.strip(), kind=kind or "",
                question=question, point=point)  # fmt: skip
    refuse_strangers(note, known)
    kept = keep_note(paper, note, "", known.paper.texts, now(known.paper.desk.time_zone))
    say(f"Noted from {known.names[source]}{f', page {kept.page}' if kept.page else ''}.")
    if told := list_served(known).tell(kept):
        say(told)
    if held := tell_held(known, kept):
        say(held)
