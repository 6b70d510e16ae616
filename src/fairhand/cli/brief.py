"""``fairhand brief``: what an assignment sheet asks."""

from __future__ import annotations

import datetime as dt
import json
from pathlib import Path

import click

from fairhand.cli.places import DAY, names_a_paper
from fairhand.cli.screen import say, say_rows
from fairhand.model.requirement import Brief


@click.command("brief")
@click.argument("file", type=click.Path(path_type=Path), default=".")
@click.option("--given", type=DAY, help="The day that the sheet was given out (2027-01-18).")
@click.option("--json", "as_json", is_flag=True, help="Print the requirements for other programs.")
def command(file: Path, given: dt.date | None, as_json: bool) -> None:
    """Show what the assignment sheet FILE, or the sheets of a paper's folder (default: here), ask."""
    from fairhand.brief.read import to_json
    from fairhand.desk.places import find_paper
    from fairhand.session.assignment.sheets import read_sheets

    if file.is_dir() or names_a_paper(str(file)):
        file = find_paper(file)
    brief, problems = read_sheets(file, given)
    if as_json:
        click.echo(json.dumps(to_json(brief), ensure_ascii=False, indent=1))
    else:
        show(brief)
    for problem in problems:
        click.echo(f"Note. {problem}", err=True)


def show(brief: Brief) -> None:
    """The requirements with the words that ask them, then what was not understood."""
    from fairhand.brief.telling import tell_requirement
    from fairhand.language.counts import count_of

    if brief.assignments:
        say(f"The sheet asks for {len(brief.assignments)} papers: {'; '.join(brief.assignments)}.")
        say()
    say(f"The sheet asks {count_of(len(brief.requirements), 'thing')}.")
    say()
    for requirement in brief.requirements:
        say_rows([(requirement.id, tell_requirement(requirement))])
        say(f"“{' '.join(requirement.evidence.split())}”", 6)
    for heading, lines in (
        ("To ask the teacher, or to look up", brief.questions),
        ("The sheets contradict each other", brief.conflicts),
        ("Not understood: read these yourself", brief.unread),
    ):
        if lines:
            say()
            say(heading)
            for line in lines:
                say(" ".join(line.split()), 2, 4)
