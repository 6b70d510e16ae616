"""``fairhand focus``: what the paper is about in one sentence, and the questions to read for."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import click

from fairhand.cli.places import paper_argument, typed
from fairhand.cli.screen import say, say_rows


@click.command("focus")
@paper_argument
@click.option("--set", "sentence", help="The focus, in one sentence.")
@click.option("--thesis/--no-thesis", "is_thesis", default=None, help="Call it the thesis, or take that back.")
@click.option("--audience", help="Whom the paper is for.")
@click.option("--ask", "asked", multiple=True, metavar="QUESTION", help="A question to read for.")
@click.option("--answered", multiple=True, metavar="ID", help="A question that is answered.")
@click.option("--open", "opened", multiple=True, metavar="ID", help="A question that is open again.")
def command(
    paper: Path,
    sentence: str | None,
    is_thesis: bool | None,
    audience: str | None,
    asked: tuple[str, ...],
    answered: tuple[str, ...],
    opened: tuple[str, ...],
) -> None:
    """Show or set what PAPER is about, and what there is to ask of it; both are kept in focus.toml."""
    from fairhand.model.focus import Question
    from fairhand.session.research.focus import keep_focus, keep_question, look_at_focus, set_state, state_of_focus

    before = look_at_focus(paper)[0]
    focus = replace(
        before,
        focus=before.focus if sentence is None else " ".join(sentence.split()),
        is_thesis=before.is_thesis if is_thesis is None else is_thesis,
        audience=before.audience if audience is None else " ".join(audience.split()),
    )
    if focus != before:
        keep_focus(paper, focus, state_of_focus(before))
    for text in asked:
        keep_question(paper, Question("", " ".join(text.split())))
    for question in answered:
        set_state(paper, question, "answered")
    for question in opened:
        set_state(paper, question, "open")
    show(paper)


def show(paper: Path) -> None:
    """The sentence, what there is to ask of it, and the questions with their state."""
    from fairhand.session.opened import OpenPaper
    from fairhand.session.research.focus import ask_of_focus, look_at_focus

    focus, problems = look_at_focus(paper)
    if focus.focus:
        say(f"{'The thesis' if focus.is_thesis else 'The focus'}: {focus.focus}")
    else:
        say(f'No focus yet. Write it in one sentence: fairhand focus{typed(paper)} --set "…"')
    if focus.audience:
        say(f"For: {focus.audience}")
    for query in ask_of_focus(focus, OpenPaper(paper).look().paper.requirements):
        say(f"To ask yourself: {query.asks}", 2, 4)
        say(f"({query.source})", 4)
    if focus.questions:
        say()
        say("Questions to read for")
        say_rows((one.id, f"{one.text} ({one.state})") for one in focus.questions)
    for problem in problems:
        click.echo(f"Note. {problem}", err=True)
