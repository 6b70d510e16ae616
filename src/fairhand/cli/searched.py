"""``fairhand searched``: a search written down with what it gave, and the log of searches."""

from __future__ import annotations

from pathlib import Path

import click

from fairhand.cli.places import paper_argument, typed
from fairhand.cli.screen import say, say_rows


@click.command("searched")
@paper_argument
@click.option("--for", "words", help="The words you searched for; with --leads, whose references you followed.")
@click.option("--in", "place", default="", help="Where: a catalogue, a database, a library.")
@click.option("--hits", type=click.IntRange(0), help="How many it gave.")
@click.option("--kept", multiple=True, metavar="ID", help="A source that it led to, known before or not.")
@click.option("--leads", is_flag=True, help="It was no search: you followed a source's references.")
def command(paper: Path, words: str | None, place: str, hits: int | None, kept: tuple[str, ...], leads: bool) -> None:
    """Write down a search for PAPER, or show those written down; they are kept in searches.jsonl."""
    from fairhand.desk.clock import now
    from fairhand.evidence.searches import Search, tell_search
    from fairhand.session.research.support import list_searches, log_search

    if words is not None:
        log_search(paper, Search(words, place, hits, kept, "leads" if leads else "searching"), now())
    log, problems = list_searches(paper)
    if not log:
        command = f'fairhand searched{typed(paper)} --for "…" --in "…" --hits 12'
        say(f"No search is written down yet. Write one down: {command}")
    say_rows(((one.when[:10] or "undated", tell_search(one)) for one in log), 0)
    for problem in problems:
        click.echo(f"Note. {problem}", err=True)
