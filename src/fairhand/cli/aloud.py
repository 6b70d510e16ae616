"""``fairhand aloud``: how long the paper takes to be read aloud, and the reading as a file of sound."""

from __future__ import annotations

from pathlib import Path

import click

from fairhand.cli.places import paper_argument
from fairhand.cli.screen import say
from fairhand.proof.aloud import LEFT_OUT, PACE, LeftOut

CHOICES: tuple[LeftOut, ...] = ("citations", "notes", "headings")


@click.command("aloud")
@paper_argument
@click.option("--pace", type=click.IntRange(60, 400), default=PACE, show_default=True, help="Words a minute.")
@click.option("--read", type=click.Choice(CHOICES), multiple=True, help="Read these too: citations, notes.")
@click.option("--leave-out", type=click.Choice(CHOICES), multiple=True, help="Leave these out: headings.")
@click.option("--wav", is_flag=True, help="Write it as a WAV, with the times of its sentences beside it (WebVTT).")
@click.option("--to", type=click.Path(path_type=Path, dir_okay=False), help="Where to write it, with --wav.")
def command(
    paper: Path, pace: int, read: tuple[LeftOut, ...], leave_out: tuple[LeftOut, ...], wav: bool, to: Path | None
) -> None:
    """Tell how long PAPER takes to be read aloud; with --wav, have it read into a file, on this machine alone.

    In the page (fairhand open) the browser's own voices read it, and a key marks a place. The file wants an engine:
    pip install 'fairhand[speech]'.
    """
    from fairhand.language.counts import say_minutes
    from fairhand.session.correction.aloud import read_aloud, tell_time
    from fairhand.session.correction.spoken import speak_paper
    from fairhand.session.opened import OpenPaper

    opened = OpenPaper(paper)
    left_out = tuple(one for one in CHOICES if (one in LEFT_OUT and one not in read) or one in leave_out)
    if not opened.look().manuscript.text.strip():
        say("There is no draft yet.")
        return
    say(tell_time(read_aloud(opened), left_out, pace))
    if wav or to:
        made = speak_paper(opened, left_out, pace, to)
        say(
            f"Read into {made.wav} ({say_minutes(round(made.seconds / 60))}); its sentences by time: {made.times.name}."
        )
