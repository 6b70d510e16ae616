"""``fairhand support``: what carries each point, those that lack sources first, and when to stop looking."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import click

from fairhand.cli.places import paper_argument, typed
from fairhand.cli.screen import say, say_rows

if TYPE_CHECKING:
    from fairhand.session.research.support import Survey

PAIR = click.Tuple([str, str])


@click.command("support")
@paper_argument
@click.option("--two", type=PAIR, metavar="ID ID", help="Count these two sources as two, whatever is seen of them.")
@click.option("--one", type=PAIR, metavar="ID ID", help="Count these two sources as one.")
@click.option("--undecided", type=PAIR, metavar="ID ID", help="Take back what you said of these two.")
@click.option("--why", default="", help="Your reason, kept with your word.")
@click.option("--estimates", is_flag=True, help="Show how much has been found, it may be, where enough tells.")
def command(
    paper: Path,
    two: tuple[str, str] | None,
    one: tuple[str, str] | None,
    undecided: tuple[str, str] | None,
    why: str,
    estimates: bool,
) -> None:
    """Show what each point of PAPER rests on, holes first, and whether to stop looking or what to look for.

    Two sources count as two only if they are independent. What you say of a pair is kept in support.toml.
    """
    from fairhand.session.opened import OpenPaper
    from fairhand.session.research.notes_for import sources_noted
    from fairhand.session.research.noting import list_notes
    from fairhand.session.research.support import list_searches, survey_support, take_ruling_back, tell_estimates

    opened = OpenPaper(paper)
    for pair, independent in ((two, True), (one, False)):
        if pair:
            decide(paper, opened.look().entries, pair, why, independent=independent)
    if undecided:
        take_ruling_back(paper, frozenset(undecided))
    known = OpenPaper(paper).look()
    survey = survey_support(known)
    say(survey.sentence)
    notes = list_notes(paper)[0]
    show_points(survey, known.names, sources_noted(notes, "point"))
    show_pairs(paper, survey, known.names)
    if survey.rules:
        say()
        say("What the sheet asks of the sources, and which of those that carry a point meet it")
    for rule in survey.rules:
        say(f"{rule.asks}: {len(rule.carrying)}", 2, 4)
    if estimates and known.asks_for_sources:
        log, questions = list_searches(paper)[0], sources_noted(notes, "question")
        say()
        for line in tell_estimates(survey.points, log, questions) or ("Too little is known to estimate.",):
            say(line)
    for problem in known.paper.problems:
        if problem.where.startswith("support.toml"):
            click.echo(f"Note. {problem}", err=True)


def decide(paper: Path, there: Collection[str], pair: tuple[str, str], why: str, *, independent: bool) -> None:
    """The writer's word on a pair is kept, where both are on the list of sources."""
    from fairhand.errors import FairhandError
    from fairhand.model.ruling import Ruling
    from fairhand.session.research.support import rule_pair

    lost = [one for one in pair if one not in there]
    if lost or pair[0] == pair[1]:
        message = f"{', '.join(lost) or pair[0]}: name two sources by their ids in sources.json"
        raise FairhandError(message)
    rule_pair(paper, Ruling(*pair, independent=independent, why=" ".join(why.split())))


def show_points(survey: Survey, names: Mapping[str, str], noted: Mapping[str, Sequence[str]]) -> None:
    """Each point with its sources and their pages, and those that it has notes from and does not name."""
    from fairhand.session.research.support import pages_of, unnamed_of

    for one in survey.points:
        say()
        say(f"{one.point.id}. {one.point.text}")
        counted = f"{len(one.independent)} independent of {one.needed} needed"
        say(f"{'main' if one.point.weight == 'main' else 'optional'}: {counted}", 2)
        say_rows(((names[i], pages_of(one, i) and f"page {pages_of(one, i)}") for i in one.sources), 4)
        for lost in one.missing:
            say(f"{lost}: not on the list of sources", 4)
        for source in unnamed_of(one, noted):
            say(f"{names.get(source, source)}: noted for it, and not named by it", 4)


def show_pairs(paper: Path, survey: Survey, names: Mapping[str, str]) -> None:
    """The pairs that may be one witness, with what shows it, and the ids by which to decide."""
    from fairhand.readiness.naming import name_tie

    for heading, ties in (
        ("May count as one", survey.held),
        ("Count as two, by your word", survey.overruled),
        ("Cited in passing, and counted as two", survey.cited),
    ):
        if ties:
            say()
            say(heading)
        for tie in ties:
            ruled = " Confirmed by you." if tie.pair in survey.confirmed and tie.kind != "writer" else ""
            say(f"{name_tie(tie, names)}.{ruled} [{tie.first} {tie.second}]", 2, 4)
    if survey.held:
        command = f"fairhand support{typed(paper)} --two ID ID"
        say(f"Whether they are independent is your judgement: {command}, or --one ID ID", 2, 4)
