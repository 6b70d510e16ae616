"""``fairhand find``: where the sources speak of something."""

from __future__ import annotations

from pathlib import Path

import click

from fairhand.cli.places import PaperFirst, paper_argument
from fairhand.cli.screen import say
from fairhand.cli.watching import watch
from fairhand.errors import FairhandError


@click.command("find", cls=PaperFirst)
@paper_argument
@click.argument("words", nargs=-1, metavar="[WORDS]...")
@click.option("--ask", is_flag=True, help="WORDS ask a question: show what may answer it, the likeliest first.")
@click.option("--question", metavar="N", help="The same for a question of the paper's focus, by its number or its id.")
@click.option("--most", type=click.IntRange(1, 200), default=10, help="How many passages to show (default: 10).")
def command(paper: Path, words: tuple[str, ...], ask: bool, question: str | None, most: int) -> None:
    """Find WORDS in the sources of PAPER, each passage with its page.

    A page has all of the words, in any form. Quotation marks hold a phrase together ('"tide mill"'), an asterisk ends
    the beginning of a word (moor*). A word that stands nowhere is taken for the nearest.
    """
    from fairhand.session.job import Job
    from fairhand.session.opened import OpenPaper
    from fairhand.session.research.indexing import MANY, index_sources
    from fairhand.session.research.searching import count_unindexed, find_question, open_search

    asked = find_question(paper, question).text if question else " ".join(words)
    if not asked.strip():
        message = "Nothing to look for was given: write the words after the paper's folder."
        raise FairhandError(message)
    opened = OpenPaper(paper)
    known = opened.look()
    if count_unindexed(opened.source_texts) >= MANY:
        watch(Job(lambda job: index_sources(paper, job)))
    with open_search(opened.source_texts) as search:
        found = search.answer(asked, most) if question or ask else search.find(asked, most)
    if question:
        say(asked)
    if found.told:
        say(found.told)
    if not found.passages:
        say("Nothing was found in the texts at hand.")
    for one in found.passages:
        name = known.names.get(one.source, one.source)
        say(f"{name}, page {one.label}" if one.label else name)
        say(" ".join(f"{one.before} ⸢{one.sentence.strip()}⸣ {one.after}".split()), 4)
    if found.more:
        say(f"There is more: ask with --most {2 * most}, or for something rarer.")
