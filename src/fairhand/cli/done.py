"""``fairhand done``: a step of the plan has ended."""

from __future__ import annotations

import sys
from pathlib import Path

import click

from fairhand.cli.places import PaperFolder
from fairhand.cli.screen import say


@click.command("done")
@click.argument("words", nargs=-1, required=True, metavar="[PAPER] STEP")
@click.option(
    "--minutes", type=click.IntRange(0, 100_000), help="How long it took; asked, with the planned time filled in."
)
@click.option("--left", type=click.IntRange(1, 100_000), help="It is not done yet: so many minutes of it are left.")
@click.option("--leave-out", is_flag=True, help="The paper goes without it.")
@click.option("--undo", is_flag=True, help="Take back what was said of it.")
@click.option(
    "--desk", type=click.Path(path_type=Path, file_okay=False), default=".", help="The desk, or a paper on it."
)
def command(
    words: tuple[str, ...], minutes: int | None, left: int | None, leave_out: bool, undo: bool, desk: Path
) -> None:
    """Say that a STEP of PAPER is done, as the plan names it: harbour-seals draft, or harbour-seals/draft.

    The plan goes on from there.

    How long steps took is kept in the paper's time.jsonl, and your pace is learnt from it.
    """
    from fairhand.planning.plan_words import say_now
    from fairhand.session.schedule.plan import plan_desk
    from fairhand.session.schedule.steps_done import end_step, find_said, find_step, take_back

    step = words[-1]
    if len(words) == 2:
        desk = PaperFolder().convert(words[0], None, None)
        step = step if "/" in step else f"{desk.name}/{step}"
    elif len(words) > 2:
        raise click.UsageError(f"Got unexpected extra argument ({' '.join(words[2:])})")
    if undo:
        say(take_back(*find_said(desk, step)))
    else:
        asked = find_step(desk, step)
        if minutes is None and not (leave_out or left) and sys.stdin.isatty():
            minutes = click.prompt(
                "How many minutes did it take?", default=asked.planned_minutes, type=click.IntRange(0)
            )
        say(end_step(asked, minutes, left_minutes=left or 0, leave_out=leave_out))
    say(f"Now. {say_now(plan_desk(desk))}")
