"""``fairhand outline``: the reverse outline of the draft, and what is asked beside it."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import click

from fairhand.cli.places import paper_argument
from fairhand.cli.screen import say
from fairhand.language.counts import count_of

if TYPE_CHECKING:
    from fairhand.model.finding import Finding
    from fairhand.readiness.analysis import Analysis
    from fairhand.revision.outline_file import Correction
    from fairhand.session.drafting.outline import Outline, SideNote

ANSWER = click.Tuple([str, str])


@click.command("outline")
@paper_argument
@click.option("--of", "number", type=int, metavar="N", help="The paragraph that the options below correct.")
@click.option("--says", help="What it says, in your words.")
@click.option("--point", help="The id of the point that it serves; an empty one for none.")
@click.option("--question", help="The id of the question that it serves; an empty one for none.")
@click.option("--on-focus/--off-focus", "focus", default=None, help="Whether it serves the focus.")
@click.option("--tie", help="What ties it to the paragraph before.")
@click.option("--as-seen", is_flag=True, help="Take back all that you corrected of it.")
@click.option("--answer", type=ANSWER, metavar="NAME TEXT", help="Answer a question beside the outline; kept.")
def command(
    paper: Path,
    number: int | None,
    says: str | None,
    point: str | None,
    question: str | None,
    focus: bool | None,
    tie: str | None,
    as_seen: bool,
    answer: tuple[str, str] | None,
) -> None:
    """Show what each paragraph of PAPER says and does, and what to ask yourself of its argument.

    Each is told by its own key sentence, never by one that is written for it. What you correct is kept in
    outline.jsonl, and holds for the paragraph through later changes.
    """
    from fairhand.desk.clock import now
    from fairhand.session.drafting.outline import answer_asking, read_outline_of
    from fairhand.session.opened import OpenPaper

    opened = OpenPaper(paper)
    said = {"says": says, "point": point, "question": question, "focus": focus, "tie": tie}
    changes = {name: value for name, value in said.items() if value is not None}
    if changes or as_seen:
        correct(paper, opened.look(), number, changes, as_seen=as_seen)
    if answer:
        answer_asking(paper, answer[0], " ".join(answer[1].split()), now(opened.look().paper.desk.time_zone))
    known = opened.look()
    outline = read_outline_of(known, paper)
    show(known, outline, opened.verdict().findings)
    for problem in outline.problems:
        click.echo(f"Note. {problem}", err=True)


def correct(paper: Path, known: Analysis, number: int | None, changes: dict[str, str | bool], *, as_seen: bool) -> None:
    """The writer's word on a paragraph is kept."""
    from dataclasses import replace

    from fairhand.errors import FairhandError
    from fairhand.revision.outline_file import Correction
    from fairhand.session.drafting.outline import correct_paragraph, read_outline_of

    notes = read_outline_of(known, paper).notes
    if number is None or not 1 <= number <= len(notes):
        message = (
            f"--of: name the paragraph by its number, 1 to {len(notes)}" if notes else "draft.md: no paragraph yet"
        )
        raise FairhandError(message)
    points = {one.id for one in known.paper.points.points}
    questions = {one.id for one in known.paper.focus.questions}
    for name, ids in (("point", points), ("question", questions)):
        if changes.get(name) and changes[name] not in ids:
            message = f"--{name}: there is no {name} {changes[name]}; there are {', '.join(sorted(ids)) or 'none'}"
            raise FairhandError(message)

    def change(before: Correction) -> Correction:
        return replace(Correction("") if as_seen else before, **changes)  # type: ignore[arg-type]

    correct_paragraph(paper, known, notes[number - 1].paragraph, change)


def show(known: Analysis, outline: Outline, findings: Sequence[Finding]) -> None:
    """The outline, paragraph by paragraph, then the questions."""
    from fairhand.session.drafting.outline import tell_standing

    if not outline.notes:
        say("The draft has no paragraph yet.")
        return
    section = ""
    for note in outline.notes:
        here = known.argument.body[note.outlined.paragraph].section
        if here != section:
            say()
            say(here)
            section = here
        show_note(note)
    say()
    say("Ask yourself; what is seen is no verdict")
    for asking, answered in outline.askings:
        say()
        say(f"{asking.name}  {asking.asks}", 2, 4)
        for seen in asking.sees or ("Nothing was seen.",):
            say(seen, 4, 6)
        if answered:
            say(f"You: {answered}", 4, 6)
    for lost in outline.lost:
        say()
        say(f"Of a paragraph that has gone you said: {lost.says or lost.tie or 'what it serves'}.", 2, 4)
    say()
    say(tell_standing(findings, outline))


def show_note(note: SideNote) -> None:
    """What a paragraph says, and what it does."""
    mine = note.said
    say()
    says = f"{note.says}{' (yours)' if 'says' in mine else ''}"
    say(f"{note.number:>3}  {says}", 0, 5)
    told = [f"line {note.line}", count_of(note.words, "word"), *note.cites]
    say("; ".join(told), 5, 7)
    does = [note.does]
    does += [f"tie: {note.tie}"] if note.tie else []
    say("; ".join(does), 5, 7)
