"""``fairhand offcut``: passages cut from the draft and kept, and brought back."""

from __future__ import annotations

from pathlib import Path

import click

from fairhand.cli.places import paper_argument, typed
from fairhand.cli.screen import say


@click.command("offcut")
@paper_argument
@click.option("--lines", metavar="FROM-TO", help="Cut these lines of draft.md, counted from 1.")
@click.option("--words", help="Cut these words, as they stand in draft.md.")
@click.option("--why", default="", help="The reason, kept with what is cut.")
@click.option("--back", type=click.IntRange(1), metavar="NUMBER", help="Bring the offcut of that number back.")
def command(paper: Path, lines: str | None, words: str | None, why: str, back: int | None) -> None:
    """Show what was cut from the draft of PAPER, the last first; or cut a passage; or bring one back.

    What is cut is kept in offcuts.jsonl with its place and reason, and comes back to where it stood, whatever was
    edited around it.
    """
    from fairhand.desk.clock import now
    from fairhand.session.drafting.offcuts import cut_lines, cut_words

    if lines is not None:
        told(paper, cut_lines(paper, *read_lines(lines), why, now()).words)
    if words is not None:
        told(paper, cut_words(paper, words, why, now()).words)
    if back is not None:
        bring(paper, back)
    elif lines is None and words is None:
        show(paper)


def read_lines(lines: str) -> tuple[int, int]:
    """The first and the last line that are meant."""
    first, _, last = lines.partition("-")
    if not all(part.strip().isascii() and part.strip().isdigit() for part in (first, last or first)):
        message = f"{lines}: no lines of a draft; write them as 12-14, or 12"
        raise click.BadParameter(message, param_hint="--lines")
    return int(first), int(last or first)


def told(paper: Path, words: str) -> None:
    """What was cut, in its first words."""
    say(f"Cut, and kept in offcuts.jsonl: “{shorten(words)}”")
    say(f"Bring it back: fairhand offcut{typed(paper)} --back 1")


def shorten(words: str, most: int = 60) -> str:
    """The first words of a passage."""
    return words if len(words) <= most else f"{words[:most].rsplit(' ', 1)[0]} …"


def show(paper: Path) -> None:
    """Each offcut with its number, its reason and the line where it would stand again."""
    from fairhand.session.drafting.offcuts import list_offcuts, tell_return

    kept, problems = list_offcuts(paper)
    if not kept:
        say(f'Nothing is cut. Cut a passage: fairhand offcut{typed(paper)} --lines 12-14 --why "a digression"')
    for number, one in enumerate(kept, 1):
        say(f"{number}. {shorten(one.offcut.words, 240)}", 0, 3)
        if one.offcut.reason:
            say(one.offcut.reason, 3)
        say(tell_return(one), 3)
    for problem in problems:
        click.echo(f"Note. {problem}", err=True)


def bring(paper: Path, number: int) -> None:
    """The offcut of that number, as they are listed, stands in the draft again."""
    from fairhand.errors import FairhandError
    from fairhand.session.drafting.offcuts import bring_back, list_offcuts

    kept, _ = list_offcuts(paper)
    if number > len(kept):
        message = f"{number}: there are {len(kept)} offcuts; see them with `fairhand offcut`"
        raise FairhandError(message)
    one = kept[number - 1]
    back = bring_back(paper, one.offcut.name)
    say(f"It is back, at line {one.line} of draft.md, {back.how}.")
